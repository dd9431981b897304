// Result of one simulation of an ensemble: a fixed number of figures, whatever its length.
//
// States: none. Units: in every name; times are seconds since the scenario's start. Figures of a person cover
// the time while that person lives, figures of the cabin and stores the time until the last person dies. They
// are read at output times, as in the report, except for the times of limits, which are located inside steps.
#pragma once

#include <array>
#include <cstdint>
#include <limits>
#include <string>
#include <vector>

#include "bide/outcome/figures.hpp"
#include "bide/study/ensemble/balances.hpp"

namespace bide::study {

// Not reached within the time simulated.
inline constexpr double beyond_horizon = std::numeric_limits<double>::infinity();

// The figure does not exist for this simulation.
inline constexpr double not_there = std::numeric_limits<double>::quiet_NaN();

struct PersonResult : outcome::PersonFigures {
  double able_until_s = beyond_horizon, alive_until_s = beyond_horizon, unconscious_s = beyond_horizon;
  system::Limit able_cause = system::Limit::none, alive_cause = system::Limit::none;
  system::Limit next_cause = system::Limit::none;  // the nearest limit not yet reached
  double next_margin_fraction = 0;                 // of the margin to it, what is left
  double cold_feet_h = 0;
  Balance<double> balance{};  // up to the last output time that the person lived to see
};

struct SampleResult {
  std::uint64_t index = 0;
  std::string failure;  // why there is no result; empty when there is one
  std::vector<PersonResult> persons;
  double horizon_s = 0;
  // not_there without a raft.
  double coldest_inside_degC = not_there, warmest_inside_degC = not_there;
  double highest_co2_ppm = not_there, co2_above_5000_ppm_h = not_there;
  double co2_above_15000_ppm_h = not_there, co2_above_30000_ppm_h = not_there;
  double mean_inside_degC = not_there;
  double water_out_s = beyond_horizon, food_out_s = beyond_horizon;  // 0: none aboard
  double water_left_L = 0;
  // By limit: when the first of the living came near it; only those limits that end something.
  std::array<double, system::level_count> near_s = [] {
    std::array<double, system::level_count> none{};
    none.fill(beyond_horizon);
    return none;
  }();
  // When they were asked for; none without a raft, not_there if that is after the last person has died.
  double flares_left = not_there, lamp_left_h = not_there, beacon_left_h = not_there;
};

}  // namespace bide::study
