#include <fmt/format.h>

#include "bide/core/units.hpp"
#include "bide/report/run/run_parts.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {
namespace {

std::string hours_or_never(double value_h) {
  return value_h > 0 ? duration(value_h * hour_s) : "never";
}

std::string extreme(const Material& m, const outcome::Extreme& of) {
  const int zone_h = zone_hours(m.scenario.scenario.position.longitude_deg);
  return fmt::format("{}, {}", temperature(of.value),
                     both_clocks(m.timeline.start_unix_s, of.time_s, zone_h));
}

}  // namespace

document::Table cabin_table(const Material& m) {
  const outcome::CabinOutcome& cabin = m.outcome.cabin;
  document::Table out{"Inside, and signals", {{"", false}, {"", false}}, {}};
  out.on_paper = false;
  const auto add = [&out](std::string what, std::string says) {
    out.rows.push_back({std::move(what), std::move(says)});
  };
  if (cabin.coldest_inside_degC) add("coldest inside", extreme(m, *cabin.coldest_inside_degC));
  if (cabin.warmest_inside_degC) add("warmest inside", extreme(m, *cabin.warmest_inside_degC));
  if (m.timeline.in_raft) {
    add("CO2 above 5,000 ppm", hours_or_never(cabin.co2_above_5000_ppm_h));
    add("CO2 above 15,000 ppm", hours_or_never(cabin.co2_above_15000_ppm_h));
    add("CO2 above 30,000 ppm", hours_or_never(cabin.co2_above_30000_ppm_h));
  }
  if (cabin.condensate_L_day) {
    constexpr double a_few_drops_L = 0.001;
    const double daily_L = *cabin.condensate_L_day;
    add("condensate under the canopy",
        (daily_L < a_few_drops_L ? "less than 0.001" : two_figures(daily_L)) + " L a day");
  }
  const outcome::SignalsLeft& left = m.outcome.signals;
  add("signals left at " + horizon(m.outcome.horizon_s),
      fmt::format("{:.0f} flares, lamp {} h, beacon {} h", left.flares, two_figures(left.lamp_h),
                  two_figures(left.beacon_h)));
  return out;
}

}  // namespace bide::report::pages
