// A foot immersed alone, which no scenario has.
#pragma once

#include "bide/system/compiled.hpp"

namespace bide::validation::hands {

// Mean temperature of the toes of a foot in still water, from one minute of the immersion to another, degC.
// Conditions: README.md of this topic.
double toe_in_still_water_degC(const system::Compiled<double>& compiled, double water_degC, double from_min,
                               double to_min);

}  // namespace bide::validation::hands
