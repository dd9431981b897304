// Comparison of scenarios: its sentences, JSON and CSV.
//
// Inputs: the runs: each scenario with its own stores, with those of the first, and over what nobody has
// measured. Every sentence is made from the results; none is assumed.
#pragma once

#include <string>
#include <vector>

#include "bide/report/words/answer.hpp"
#include "bide/study/questions/compare.hpp"

namespace bide::report {

inline constexpr const char* comparison_format = "bide comparison 1";

using study::Compared;
using study::Comparison;
using study::Option;

// "each option: 17 runs of one case that differ in..."
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

// Odds, what buys most, the first hour, how sure, what is not in it; by option where they differ.
Answer comparison_answer(const Comparison& comparison);

// The comparison as JSON and as CSV.
std::string comparison_json(const Comparison& comparison);
std::string comparison_schema();
std::string comparison_csv(const Comparison& comparison);

}  // namespace bide::report
