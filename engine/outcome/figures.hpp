// What is read off the columns of one simulation, be it a single run or one lane of an ensemble.
//
// States: none. Inputs: columns against time, and fates. Validity: output times only, as in measures.hpp.
#pragma once

#include <optional>

#include "bide/outcome/measures.hpp"
#include "bide/timeline/series.hpp"

namespace bide::outcome {

// All as long as the time axis. Ability is that for a hand task, 0 to 1.
struct PersonColumns {
  const Column &core_degC, &finger_degC, &water_deficit_pct, &osmolality_mOsm_kg, &shivering_W, &task_ability;
};
struct PersonFigures {
  // While alive:
  double lowest_core_degC = 0, highest_core_degC = 0, lowest_finger_degC = 0;
  double worst_water_deficit_pct = 0, worst_osmolality_mOsm_kg = 0;
  double shivering_h = 0;
  double hands_h = 0;  // while able: hours in which a hand task is possible
};
// @param end_s figures stop here at the latest, s since the start
PersonFigures person_figures(const Column& time_s, const PersonColumns& columns, const timeline::Fate& fate,
                             double end_s);

struct CabinColumns {
  const Column &inside_air_degC, &co2_ppm;
};
struct CabinFigures {
  // After boarding: until then, and at that moment, the air inside is that outside.
  std::optional<Extreme> coldest_inside_degC, warmest_inside_degC, highest_co2_ppm;
  std::optional<double> mean_inside_degC;
  double co2_above_5000_ppm_h = 0, co2_above_15000_ppm_h = 0, co2_above_30000_ppm_h = 0;
};
// @param boarded_s when everybody is aboard, s since the start
// @param end_s figures stop here, s since the start
CabinFigures cabin_figures(const Column& time_s, const CabinColumns& columns, double boarded_s, double end_s);

enum class StoreState { none_aboard, runs_out, lasts };
struct StoreFigures {
  StoreState state = StoreState::none_aboard;
  double at_s = 0;  // when it first runs out
  double at_start = 0, left = 0;
};
StoreFigures store_figures(const Column& time_s, const Column& left);

}  // namespace bide::outcome
