// Scenarios over what is not known of any scenario: canopy heat loss, leakage, the law of shivering and the
// model's own error; of who is in the water without a lifejacket, for how long cold arms swim. Inputs
// that the file states are not varied.
//
// Inputs: validated scenarios. Output: the same few members every time, spread evenly over all ranges at
// once, without the scenario as it is; none where it states them all. Member k stands at the same places in
// every scenario, so two scenarios are compared member by member. They run in lanes over all processors.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <variant>
#include <vector>

#include "bide/outcome/compare.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/study/ensemble/progress.hpp"
#include "bide/study/ensemble/refusal.hpp"

namespace bide::study {

// How long a crew lasts in one member, and the foulest air.
struct RangeMember : outcome::Endurance {
  double highest_co2_ppm = 0;  // 0: no cabin
};
using RangeMembers = std::vector<RangeMember>;

// One crew: a scenario for each raft it is in, none null.
using CrewScenarios = std::vector<const scenario::ValidScenario*>;

// What nobody has measured of any scenario.
enum class Unmeasured { canopy_heat, leakage, shivering, model_error, swimming };
// In what the members of a scenario differ, each once.
std::vector<Unmeasured> unmeasured_of(const scenario::ValidScenario& scenario);

// Runs the members of one scenario.
// @param scenario a validated scenario
// @param look     see Look
// @return each member, or why one has no result
std::variant<RangeMembers, Refusal> run_unmeasured(const scenario::ValidScenario& scenario,
                                                   const Look& look = {});
// The members of several crews, run together, so that like ones share lanes.
// @param crews each with one scenario or more
// @param look  see Look
// @return for each crew its members, in the order given
std::variant<std::vector<RangeMembers>, Refusal> run_unmeasured(const std::vector<CrewScenarios>& crews,
                                                                const Look& look = {});
// The same for one version of each crew that the caller makes.
// @param version makes the version of a scenario
// @param look    see Look
// @return for each crew one member
std::variant<RangeMembers, Refusal> run_version(
    const std::vector<CrewScenarios>& crews,
    const std::function<scenario::Validated(const scenario::ValidScenario&)>& version, const Look& look = {});

// Earliest and latest of a time over several runs; empty: beyond the horizon.
struct TimeRange {
  std::optional<double> earliest_s, latest_s;
};
// @param times_s s since the start; empty: beyond the horizon
TimeRange range_of(const std::vector<std::optional<double>>& times_s);

using CrewState = outcome::CrewTimes outcome::Endurance::*;    // able or alive
using CrewTime = std::optional<double> outcome::CrewTimes::*;  // first, half or last
// A time of a crew over the scenario as it is and its members.
// @param central the scenario as it is
// @param members may be none
TimeRange range_over(const outcome::CrewTimes& central, std::span<const RangeMember> members, CrewState state,
                     CrewTime which);
// The run in which the first person's ability ends earliest: the scenario as it is, or a member.
// @param central the scenario as it is
// @param members may be none
const outcome::Endurance& earliest(const outcome::Endurance& central, std::span<const RangeMember> members);

}  // namespace bide::study
