// The levels of the limits, from a scenario.
#pragma once

#include "bide/system/limits.hpp"

namespace bide::system {

// @param stated what the scenario says
// @return the levels for a person of no particular kind, in the units of the quantities
Levels<double> common_levels(const scenario::Limits& stated);

}  // namespace bide::system
