// Comparison of scenarios as text, JSON and CSV.
//
// Inputs: the runs: each scenario with its own stores, with those of the first, and at both ends of the
// unmeasured ranges. Every sentence is made from the results; none is assumed.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bide/outcome/compare.hpp"
#include "bide/report/words/text.hpp"
#include "bide/study/questions/common_futures.hpp"

namespace bide::report {

inline constexpr const char* comparison_format = "bide comparison 1";

// One scenario as it was run.
struct Compared {
  const scenario::ValidScenario* scenario = nullptr;
  const timeline::Timeline* timeline = nullptr;
  outcome::Figures figures;
};

// One option of the comparison.
struct Option {
  std::string label;  // the file, with the values put in
  Compared own;
  std::optional<Compared> equal;  // with the stores of the first option
  std::string equal_refused;      // why there is none, where it is not a valid scenario
  std::vector<outcome::Figures>
      ends;  // own stores, at the lowest and the highest heat loss; empty without a raft
  // Own stores, against the first option under common futures.
  std::optional<study::PairedFutures> futures = {};
};

struct Comparison {
  std::vector<Option> options;
  bool same_stores = false;  // all carry the same; `equal` is empty then
  std::string no_futures;    // why there are no common futures; empty where there are
};

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
