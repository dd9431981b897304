#include "bide/outcome/figures.hpp"

#include <algorithm>

#include "bide/constants/evidence.hpp"

namespace bide::outcome {
namespace {

constexpr double hand_task_possible = 0.5;  // of full ability: the middle of the sourced finger range

double value_or(const std::optional<Extreme>& extreme, double otherwise) {
  return extreme ? extreme->value : otherwise;
}

}  // namespace

PersonFigures person_figures(const Column& time_s, const PersonColumns& columns, const timeline::Fate& fate,
                             double end_s) {
  const double able_s = fate.able_until_s.value_or(end_s), alive_s = fate.alive_until_s.value_or(end_s);
  PersonFigures out;
  out.lowest_core_degC = value_or(lowest(time_s, columns.core_degC, alive_s), columns.core_degC.front());
  out.highest_core_degC = value_or(highest(time_s, columns.core_degC, alive_s), columns.core_degC.front());
  out.lowest_finger_degC = value_or(lowest(time_s, columns.finger_degC, alive_s), 0);
  out.worst_water_deficit_pct = value_or(highest(time_s, columns.water_deficit_pct, alive_s), 0);
  out.worst_osmolality_mOsm_kg = value_or(highest(time_s, columns.osmolality_mOsm_kg, alive_s), 0);
  out.shivering_h = hours_above(time_s, columns.shivering_W, constants::shivering_counted_W, alive_s);
  out.hands_h = hours_above(time_s, columns.task_ability, hand_task_possible, able_s);
  return out;
}

CabinFigures cabin_figures(const Column& time_s, const CabinColumns& columns, double boarded_s,
                           double end_s) {
  CabinFigures out;
  out.coldest_inside_degC = lowest(time_s, columns.inside_air_degC, end_s, boarded_s);
  out.warmest_inside_degC = highest(time_s, columns.inside_air_degC, end_s, boarded_s);
  out.highest_co2_ppm = highest(time_s, columns.co2_ppm, end_s, boarded_s);
  out.mean_inside_degC = mean(time_s, columns.inside_air_degC, end_s, boarded_s);
  out.co2_above_5000_ppm_h = hours_above(time_s, columns.co2_ppm, constants::co2_workday_ppm, end_s);
  out.co2_above_15000_ppm_h = hours_above(time_s, columns.co2_ppm, constants::co2_headache_ppm, end_s);
  out.co2_above_30000_ppm_h = hours_above(time_s, columns.co2_ppm, constants::co2_short_term_ppm, end_s);
  return out;
}

StoreFigures store_figures(const Column& time_s, const Column& left) {
  StoreFigures out;
  if (left.empty()) return out;
  out.at_start = left.front();
  out.left = left.back();
  const auto some = std::find_if(left.begin(), left.end(), [](double v) { return v > 0; });
  if (some == left.end()) return out;
  const auto none = std::find_if(some, left.end(), [](double v) { return v <= 0; });
  out.state = none == left.end() ? StoreState::lasts : StoreState::runs_out;
  if (none != left.end()) out.at_s = time_s[static_cast<std::size_t>(none - left.begin())];
  return out;
}

}  // namespace bide::outcome
