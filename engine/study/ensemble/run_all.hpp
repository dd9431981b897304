// Several scenarios run over all processors, results in the order given.
//
// Each run is the one that `simulate()` makes, so its bits depend neither on threads nor on the other runs.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "bide/outcome/outcome.hpp"
#include "bide/timeline/balance.hpp"

namespace bide::study {

struct Run {
  timeline::Timeline timeline;
  outcome::Outcome outcome;
};
using RunResult = std::variant<Run, scenario::Diagnostics, timeline::Failure>;

// Every pointer leads to a scenario; weather files are read once for each.
std::vector<RunResult> run_all(const std::vector<const scenario::ValidScenario*>& scenarios);

}  // namespace bide::study
