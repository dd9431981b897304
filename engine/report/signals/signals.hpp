// Readiness and signals of a scenario in words: what is due before departure, which signals work and for how
// long, and from how far each light is seen.
//
// Inputs: a validated scenario. Nothing here is about a search: ranges are for a watcher who looks that way.
#pragma once

#include <string>
#include <vector>

#include "bide/scenario/validate.hpp"

namespace bide::report {

// What is due, then what is in order, then what is not known. Empty without "readiness".
std::vector<std::string> readiness_lines(const scenario::ValidScenario& scenario);

// Numbers, burning time, the plan, cold cells, ranges. Empty where no signal and no light is aboard.
std::vector<std::string> signal_lines(const scenario::ValidScenario& scenario);

}  // namespace bide::report
