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

struct Option {
  std::string label;  // the file, with what was put in
  Compared own;
  std::optional<Compared> equal;  // with the stores of the first option
  std::string equal_refused;      // why not, when that makes no scenario
  std::vector<outcome::Figures>
      ends;  // own stores, at the lowest and the highest heat loss; empty without a raft
  // Own stores, against the first option under common futures.
  std::optional<study::PairedFutures> futures = {};
};

struct Comparison {
  std::vector<Option> options;
  bool same_stores = false;  // all carry the same already; `equal` is empty then
  std::string no_futures;    // why there are no common futures; empty where there are
};

// What the runs are: single cases, and beside them common futures where there are any.
std::string one_case_each(const Comparison& comparison);

// What sets each option apart from the first, in whole sentences, one list for each option after the first.
std::vector<std::vector<std::string>> conclusions(const Comparison& comparison);

std::string comparison_text(const Comparison& comparison, Letters letters, int width);
std::string comparison_json(const Comparison& comparison);
std::string comparison_csv(const Comparison& comparison);

}  // namespace bide::report
