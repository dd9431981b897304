#include <fmt/format.h>

#include "bide/core/notice.hpp"
#include "bide/report/odds/odds.hpp"
#include "bide/report/words/made_by.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {

std::string odds_csv(const study::OddsAnswer& m) {
  std::string out = fmt::format("# {} possible futures, not a forecast\n# {}\n# {}\n# {}\n", m.odds.futures,
                                standing_notice, standing_advice, made_by_line());
  if (m.started_h_ago)
    out += fmt::format("# time_h counts from now, {}\n", iso_minute(m.scenario.start_unix_s));
  out +=
      "time_h,all_able,all_able_low,all_able_high,some_able,some_able_low,some_able_high,all_alive,all_alive_"
      "low,"
      "all_alive_high,some_alive,some_alive_low,some_alive_high\n";
  for (const study::AtTime& t : m.odds.times) {
    out += fmt::format("{:.6g}", t.at_h);
    for (const study::Chance* c : {&t.all_able, &t.some_able, &t.all_alive, &t.some_alive})
      out += fmt::format(",{:.6g},{:.6g},{:.6g}", c->share, c->interval.low, c->interval.high);
    out += '\n';
  }
  return out;
}

}  // namespace bide::report
