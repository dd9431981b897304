// Runs several scenarios over all processors.
//
// Each run is the one that simulate() makes, so its bits depend neither on threads nor on the other runs.
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

// Runs every scenario; each reads its own weather file.
// @param scenarios none null
// @return in the order given: the run, or what is wrong with the weather, or why the run failed
std::vector<RunResult> run_all(const std::vector<const scenario::ValidScenario*>& scenarios);

}  // namespace bide::study
