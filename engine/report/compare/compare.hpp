// Comparison of scenarios as text, JSON and CSV.
//
// Inputs: the runs: each scenario with its own stores, with those of the first, and at both ends of the
// unmeasured ranges. Every sentence is made from the results; none is assumed.
#pragma once

#include <string>
#include <vector>

#include "bide/report/words/text.hpp"
#include "bide/study/questions/compare.hpp"

namespace bide::report {

inline constexpr const char* comparison_format = "bide comparison 1";

using study::Compared;
using study::Comparison;
using study::Option;

// The sentence that says the runs are single cases, and whether there are common futures.
std::string one_case_each(const Comparison& comparison);

// Differences of each option from the first, in whole sentences: one list for each option after the first.
std::vector<std::vector<std::string>> conclusions(const Comparison& comparison);

// The comparison as plain text.
// @param letters what may be printed
// @param width   of a line, terminal columns; limited to [40, 80]
std::string comparison_text(const Comparison& comparison, Letters letters, int width);
// The same as JSON and as CSV.
std::string comparison_json(const Comparison& comparison);
std::string comparison_csv(const Comparison& comparison);

}  // namespace bide::report
