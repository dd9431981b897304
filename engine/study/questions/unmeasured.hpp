// One scenario over its unmeasured inputs: canopy heat loss and leakage at both ends of their ranges,
// shivering that gives out and shivering that never tires. Inputs that the file states are not varied.
//
// Inputs: a validated scenario. Output: the runs at every combination of those ends, without the scenario as
// it is; none where it states them all. Runs go over all processors.
#pragma once

#include <variant>
#include <vector>

#include "bide/study/ensemble/run_all.hpp"

namespace bide::study {

// Runs the scenario at every combination.
// @param scenario a validated scenario
// @return the runs, or why one has no result
std::variant<std::vector<Run>, Refusal> run_unmeasured(const scenario::ValidScenario& scenario);

// Earliest and latest of a time over several runs; empty: beyond the horizon.
struct TimeRange {
  std::optional<double> earliest_s, latest_s;
};
// @param times_s s since the start; empty: beyond the horizon
TimeRange range_of(const std::vector<std::optional<double>>& times_s);

}  // namespace bide::study
