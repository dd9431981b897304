// Scenarios beside each other: each run as it is, with the stores of the first, over what nobody has
// measured, and under common futures.
//
// Inputs: two validated scenarios or more. Runs go over all processors; the answer depends on nothing but the
// scenarios and the question.
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "bide/outcome/compare.hpp"
#include "bide/scenario/variations.hpp"
#include "bide/study/ensemble/refusal.hpp"
#include "bide/study/questions/common_futures.hpp"
#include "bide/study/questions/levers.hpp"
#include "bide/study/questions/unmeasured.hpp"

namespace bide::study {

// One scenario as it was run.
struct Compared {
  const scenario::ValidScenario* scenario = nullptr;
  const timeline::Timeline* timeline = nullptr;
  outcome::Figures figures;
};

struct Option {
  std::string label;  // the file, with what was put in
  std::vector<scenario::Version::PutIn> put_in;
  Compared own;
  std::optional<Compared> equal;  // with the stores of the first option
  std::string equal_refused;      // why not, when that makes no scenario
  RangeMembers members;           // own stores, over what nobody has measured
  // Own stores, against the first option under common futures.
  std::optional<PairedFutures> futures = {};
  std::optional<LeversTried> levers = {};  // where they were tried
};

struct Comparison {
  std::vector<Option> options;
  bool same_stores = false;               // all carry the same already; `equal` is empty then
  std::string no_futures;                 // why there are no common futures; empty where there are
  std::shared_ptr<const void> kept = {};  // what the pointers of the options lead to
};

struct CompareQuestion {
  std::uint64_t futures = 200;  // common ones, where every scenario has `uncertain`; 0 for none
  std::uint64_t seed = 1;
};

// Compares scenarios with the first of them.
// @param scenarios at least one
// @param question  common futures
// @param progress  told the share of the common futures drawn, 0 to 1; may be empty
// @return one option for each scenario, in order, or why a run has no result
std::variant<Comparison, Refusal> compare(std::vector<scenario::Version> scenarios,
                                          const CompareQuestion& question,
                                          const std::function<void(double fraction)>& progress = {});

}  // namespace bide::study
