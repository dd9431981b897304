// A comparison for other programs: JSON and CSV.
#include <fmt/format.h>

#include <iterator>

#include "bide/core/csv.hpp"
#include "bide/core/notice.hpp"
#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/compare/compare.hpp"
#include "bide/report/compare/compare_futures.hpp"
#include "bide/report/run/range.hpp"
#include "bide/report/words/made_by.hpp"
#include "bide/report/words/text.hpp"
#include "bide/report/words/words.hpp"
#include "bide/scenario/differences.hpp"

namespace bide::report {
using outcome::Figures;

std::string comparison_csv(const Comparison& comparison) {
  fmt::memory_buffer out;
  const auto to = std::back_inserter(out);
  fmt::format_to(to, "# {}\n# {}\n# {}\n# {}\n", one_case_each(comparison), standing_notice, standing_advice,
                 made_by_line());
  fmt::format_to(to,
                 "# An empty time is not reached within horizon_h. Earliest and latest are the ends of the "
                 "range, told of own stores.\n");
  fmt::format_to(
      to,
      "option,label,stores,horizon_h,able_first_h,able_half_h,able_last_h,alive_first_h,alive_half_h,"
      "alive_last_h,able_first_earliest_h,able_first_latest_h,alive_first_earliest_h,alive_first_latest_h,"
      "able_ended_by,coldest_inside_degC,coldest_inside_h,lowest_core_degC,worst_water_deficit_"
      "pct,"
      "co2_above_5000_ppm_h,stores_out,futures,able_longer_than_option_1_in,able_shorter_than_option_1_in,"
      "able_median_difference_h\n");
  const auto time = [&](const std::optional<double>& at_s) {
    if (at_s)
      fmt::format_to(to, ",{:.6g}", *at_s / hour_s);
    else
      out.push_back(',');
  };
  const auto row = [&](std::size_t number, const Option& option, const char* stores, const Figures& f) {
    fmt::format_to(to, "{},{},{},{:.6g}", number, csv_cell(plain(option.label, Letters::utf8, 400)), stores,
                   f.horizon_s / hour_s);
    for (const outcome::CrewTimes* times : {&f.able, &f.alive}) {
      time(times->first_s);
      time(times->half_s);
      time(times->last_s);
    }
    const bool own = &f == &option.own.figures;
    for (const study::CrewState state : {&outcome::Endurance::able, &outcome::Endurance::alive}) {
      const bool ranged = own && !option.members.empty();
      const study::TimeRange range =
          ranged ? study::range_over(f.*state, option.members, state, &outcome::CrewTimes::first_s)
                 : study::TimeRange{};
      time(range.earliest_s);
      time(range.latest_s);
    }
    fmt::format_to(to, ",{},{},{},{:.6g},{:.6g},{},", outcome::short_cause(f.able_limit),
                   f.coldest_inside ? fmt::format("{:.6g}", f.coldest_inside->degC) : "",
                   f.coldest_inside ? fmt::format("{:.6g}", f.coldest_inside->time_s / hour_s) : "",
                   f.lowest_core_degC, f.worst_water_deficit_pct,
                   f.in_raft ? fmt::format("{:.6g}", f.foul_air_h) : "");
    std::string stores_out;
    for (const outcome::StoreOutcome& store : f.stores)
      if (store.state == outcome::StoreState::runs_out)
        stores_out +=
            fmt::format("{}{} {:.6g} h", stores_out.empty() ? "" : "; ", store.name, store.at_s / hour_s);
    fmt::format_to(to, "{}", csv_cell(plain(stores_out)));
    if (own && option.futures) {
      const study::Paired& able = option.futures->able;
      fmt::format_to(to, ",{},{},{},{:.6g}\n", able.samples, able.second_longer.count,
                     able.first_longer.count, able.median_difference);
    } else {
      fmt::format_to(to, ",,,,\n");
    }
  };
  for (std::size_t i = 0; i < comparison.options.size(); ++i) {
    const Option& option = comparison.options[i];
    row(i + 1, option, "own", option.own.figures);
    if (option.equal) row(i + 1, option, "of option 1", option.equal->figures);
  }
  return fmt::to_string(out);
}

}  // namespace bide::report
