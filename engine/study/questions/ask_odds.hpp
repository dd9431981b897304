// The odds of a scenario: its futures are drawn and run, and read off given what is known so far.
//
// Inputs: a validated scenario with `uncertain`. Same scenario, seed and number of futures: same answer,
// whatever the threads. Memory does not grow with the number of futures.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "bide/outcome/compare.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/study/ensemble/ensemble.hpp"
#include "bide/study/ensemble/progress.hpp"
#include "bide/study/ensemble/refusal.hpp"
#include "bide/study/questions/launch_odds.hpp"
#include "bide/study/questions/levers.hpp"
#include "bide/study/questions/nested_bands.hpp"
#include "bide/study/questions/odds.hpp"
#include "bide/study/sampling/factor_kind.hpp"
#include "bide/study/statistics/variance_reduction.hpp"

namespace bide::study {

struct OddsQuestion {
  std::uint64_t futures = 1000;  // at least 1
  std::uint64_t seed = 1;
  KnownSoFar known;  // in place of what the scenario says is known, each by itself; hours within the horizon
  int threads = 0;   // 0: one to a core
  std::vector<double> at_h;  // hours of the table against time; empty: twelve equal parts
  bool nested = true;        // whether to part chance and ignorance, which doubles the work
  // Told the odds of the first 64, 256, 1024... futures while the rest are run; may be empty. Nothing is told
  // while none of them agrees with what is known.
  std::function<void(const Odds&)> so_far;
  // Told every future that has a result, in order, those too that what is known rules out; may be empty.
  VisitFuture each = {};
};

struct FailedSample {
  std::uint64_t index = 0;
  std::string reason;
};

// By how much the variance of the first person's able until would fall if this input were known.
struct Unknown {
  std::string name;
  FactorKind kind = FactorKind::aleatory;
  VarianceReduction reduction;
};

struct OddsAnswer {
  scenario::ValidScenario scenario;
  std::uint64_t seed = 0, samples = 0;
  std::vector<FailedSample> failed;
  KnownSoFar known;
  Odds odds;
  std::vector<Unknown> unknowns;            // largest reduction of variance first
  std::optional<NestedBands> nested;        // empty: only one kind of uncertainty, or too few futures
  std::optional<LaunchOdds> launch = {};    // empty: no launch is drawn
  std::optional<SignalsLeft> signals = {};  // empty: in no future does help come while somebody is alive
  // The scenario as it is written, without what is uncertain; empty where that run has no result.
  std::optional<outcome::Figures> as_written = {};
  // Where it stands, all times here count from now, so many hours after the start (report::from_now).
  std::optional<double> started_h_ago = {};
  std::optional<LeversTried> levers = {};  // on the scenario as it is written, where they were tried

  // More than one in a hundred samples has no result: the answer is not to be relied on.
  bool too_many_failed() const;
};

// What is being run: the futures themselves, then cases under one truth for the nested bands.
enum class OddsPart { futures, nested };
using ToldOddsProgress = std::function<void(OddsPart, const Progress&)>;

// Draws the futures of a scenario and reads the odds off them.
// @param scenario as validated
// @param question how many futures, and what is known
// @param progress may be empty
// @return the odds; refused when nothing is uncertain, when what is known contradicts itself or lies beyond
//         the horizon, when no sample has a result, and when no future agrees with what is known
std::variant<OddsAnswer, Refusal> ask_odds(const scenario::ValidScenario& scenario,
                                           const OddsQuestion& question,
                                           const ToldOddsProgress& progress = {});

// What came of some of the samples, in their order: for whoever shares them out. Sample k is the same in any
// part.
struct SomeFutures {
  std::vector<Future> futures;
  std::vector<FailedSample> failed;
};
// Draws the futures of a range of samples; refused where ask_odds() would be before it draws.
// @param range numbers of the samples, from 0
std::variant<SomeFutures, Refusal> draw_some(const scenario::ValidScenario& scenario,
                                             const OddsQuestion& question, SampleRange range);
// The answer of ask_odds() from futures that were drawn in parts.
// @param question `futures` is the number of all samples that were drawn
// @param futures  of all samples, in their order
std::variant<OddsAnswer, Refusal> odds_from(const scenario::ValidScenario& scenario,
                                            const OddsQuestion& question, SomeFutures futures);

}  // namespace bide::study
