// One scenario over what is not known of any scenario: canopy heat loss, leakage, the law of shivering and
// the model's own error. Inputs that the file states are not varied.
//
// Inputs: a validated scenario. Output: the same few members every time, spread evenly over all ranges at
// once, without the scenario as it is; none where it states them all. They run in lanes over all processors.
#pragma once

#include <optional>
#include <variant>
#include <vector>

#include "bide/scenario/validate.hpp"
#include "bide/study/ensemble/refusal.hpp"
#include "bide/study/questions/future.hpp"

namespace bide::study {

// Runs the members.
// @param scenario a validated scenario
// @return when people are able and alive in each, or why one has no result
std::variant<std::vector<Future>, Refusal> run_unmeasured(const scenario::ValidScenario& scenario);

// Earliest and latest of a time over several runs; empty: beyond the horizon.
struct TimeRange {
  std::optional<double> earliest_s, latest_s;
};
// A member's hours as seconds; empty: beyond the horizon.
std::optional<double> until_s(float hours, double horizon_s);
// @param times_s s since the start; empty: beyond the horizon
TimeRange range_of(const std::vector<std::optional<double>>& times_s);

}  // namespace bide::study
