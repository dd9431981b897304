// Whether people come into the water, whose first minutes cost lives that the model does not compute.
//
// Inputs: a scenario. Source: constants/first_minutes.hpp.
#pragma once

#include "bide/scenario/scenario.hpp"

namespace bide::scenario {

// As written.
bool enter_water(const Scenario& scenario);

// In some future of its part "uncertain", or as written.
bool may_enter_water(const Scenario& scenario);

}  // namespace bide::scenario
