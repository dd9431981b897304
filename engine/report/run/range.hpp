// Until when, over a run and its members: the same scenario over what is not known.
#pragma once

#include <string>

#include "bide/outcome/outcome.hpp"
#include "bide/report/run/material.hpp"
#include "bide/report/words/answer.hpp"
#include "bide/study/questions/unmeasured.hpp"

namespace bide::report {

// The late end: "41 h", "after 5 d".
std::string latest_words(const study::TimeRange& range, double horizon_s);
// "14 h to 41 h", "14 h to after 5 d", "not reached within 5 d".
std::string range_words(const study::TimeRange& range, double horizon_s);
inline constexpr const char* runs_of_a_range = "runs of one case that differ in what nobody has measured";
// What the members are, and what they differ in. @param members may be none
std::string what_the_range_is(std::size_t members, const scenario::ValidScenario& scenario);

// The answer of a run with its range over the members.
// @param buys what would buy time, or how to ask
Answer run_answer(const Material& material, const study::RangeMembers& members, const std::string& buys);

}  // namespace bide::report
