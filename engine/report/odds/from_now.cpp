#include "bide/report/odds/from_now.hpp"

#include "bide/core/units.hpp"

namespace bide::report {

study::OddsAnswer from_now(study::OddsAnswer m) {
  const double now_h = m.known.now_h.value_or(0);
  const auto move = [now_h](std::optional<double>& h) {
    if (h) *h -= now_h;
  };
  m.started_h_ago = now_h;
  m.scenario.start_unix_s += now_h * hour_s;
  move(m.known.alive_at_h);
  move(m.known.now_h);
  study::Odds& odds = m.odds;
  odds.horizon_h -= now_h;
  for (auto* windows : {&odds.able, &odds.alive})
    for (study::Window& window : *windows)
      for (study::QuantileByRank& each : window.until)
        for (std::optional<double>* h : {&each.time, &each.low, &each.high}) move(*h);
  move(odds.aboard.water_out_middle_h);
  for (study::AtTime& each : odds.times) each.at_h -= now_h;
  for (study::CausesBy& each : odds.causes) each.by_h -= now_h;
  if (m.launch)
    for (auto& way : m.launch->reached) move(way.first_able_h), move(way.last_alive_h);
  std::erase_if(odds.causes, [](const study::CausesBy& each) { return each.by_h <= 0; });
  return m;
}

}  // namespace bide::report
