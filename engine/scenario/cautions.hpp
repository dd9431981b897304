// What is allowed and yet worth saying: outside what was measured, unusual pairings, shut openings.
#pragma once

#include "bide/scenario/validate.hpp"

namespace bide::scenario {

// Of a resolved scenario.
Diagnostics cautions_of(const ValidScenario& valid);

}  // namespace bide::scenario
