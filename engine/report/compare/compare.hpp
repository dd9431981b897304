// Comparison of scenarios as text, JSON and CSV.
//
// Inputs: the runs: each scenario with its own stores, with those of the first, and over what nobody has
// measured. Every sentence is made from the results; none is assumed.
#pragma once

#include <string>
#include <vector>

#include "bide/report/words/answer.hpp"
#include "bide/report/words/text.hpp"
#include "bide/study/questions/compare.hpp"

namespace bide::report {

inline constexpr const char* comparison_format = "bide comparison 1";

using study::Compared;
using study::Comparison;
using study::Option;

// "each option: 17 runs of one case over..."
std::string runs_of_each(const Comparison& comparison);
// The same as a sentence, and whether there are common futures.
std::string one_case_each(const Comparison& comparison);

// Differences of an option from the first, in whole sentences.
struct Conclusion {
  std::vector<std::string> brief;    // who is ahead; which is warmer inside, and mostly by what
  std::vector<std::string> verdict;  // who is ahead; able until; alive until
  std::vector<std::string> warmth;   // inside, and of each body, why
  std::vector<std::string> others;   // water, air, the same with equal stores
};
// One for each option after the first.
std::vector<Conclusion> conclusions(const Comparison& comparison);
std::vector<std::string> all_of(const Conclusion& conclusion);

// What holds for all options: what buys most, the first hour, how sure, what is not in it.
Answer comparison_answer(const Comparison& comparison);

// The comparison as plain text.
// @param letters what may be printed
// @param width   of a line, terminal columns; limited to [40, 80]
// @param full    inputs that differ, equal stores, all sentences and cautions as well
std::string comparison_text(const Comparison& comparison, Letters letters, int width, bool full);
// The same as JSON and as CSV.
std::string comparison_json(const Comparison& comparison);
std::string comparison_schema();
std::string comparison_csv(const Comparison& comparison);

}  // namespace bide::report
