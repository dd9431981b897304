// The sixteen-person raft of the trials of 2007 to 2009, as a scenario: indoors, shut, no wind, waves or sun.
#pragma once

#include "validation/support/rest.hpp"

namespace bide::validation {

struct RaftTrial {
  double duration_h = 2;
  double air_degC = 5, sea_degC = 5;
  int persons = 1;
  double height_m = 1.75, mass_kg = 75;
  bool inflated = true, foam = false, wet = false, aid = false, on_lifejacket = false;
};
std::string scenario_of(const RaftTrial& trial, double output_interval_min);

// What the trial's people and manikin wore is not published: temperate_sailing with all of its insulation
// multiplied by one number, which gives the manikin's 0.236 m2 K/W on the inflated floor with dry clothing.
inline constexpr double trial_clothing = 0.7601;
void dress_for_trial(system::Compiled<double>& compiled, double clothing = trial_clothing);

}  // namespace bide::validation
