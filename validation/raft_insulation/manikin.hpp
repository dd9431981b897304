// The manikin of the raft trial: conditions in README.md beside this file.
#pragma once

#include "validation/support/raft_trial.hpp"

namespace bide::validation {

// Skin to surroundings over the second hour, m2 K/W. `depth_m` is the water around the seated person;
// `clothing` multiplies the insulation of all its clothing.
double manikin_insulation_m2K_W(const RaftTrial& trial, double depth_m = 0, double clothing = trial_clothing,
                                const system::Fitted<double>& fitted = {});

}  // namespace bide::validation
