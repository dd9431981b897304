// Cautions about inputs that are allowed but unusual: outside what was measured, unusual pairings, shut
// openings.
#pragma once

#include "bide/scenario/validate.hpp"

namespace bide::scenario {

// Cautions of a resolved scenario.
Diagnostics cautions_of(const ValidScenario& valid);

}  // namespace bide::scenario
