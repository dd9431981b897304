// Runs several scenarios over all processors.
//
// Each run is the one that simulate() makes, so its bits depend neither on threads nor on the other runs.
#pragma once

#include <functional>
#include <variant>
#include <vector>

#include "bide/outcome/outcome.hpp"
#include "bide/study/ensemble/progress.hpp"
#include "bide/study/ensemble/refusal.hpp"

namespace bide::study {

struct Run {
  timeline::Timeline timeline;
  outcome::Outcome outcome;
};
using RunResult = std::variant<Run, Refusal>;

// Runs one scenario; reads its weather file.
// @param scenario as validated
// @param progress told the share of the time simulated, 0 to 1; may be empty
// @return the run, or what is wrong with the weather, or why the run failed
RunResult run_one(const scenario::ValidScenario& scenario,
                  const std::function<void(double fraction)>& progress = {});

// Runs every scenario; each reads its own weather file.
// @param scenarios none null
// @param look      see Look
// @return in the order given: each as run_one() gives it
std::vector<RunResult> run_all(const std::vector<const scenario::ValidScenario*>& scenarios,
                               const Look& look = {});

}  // namespace bide::study
