// The endurance window of a crew in words, as a table against time, and as JSON.
//
// Inputs: the odds and the scenario behind them. Output as for a run: plain text within the page, CSV with
// the notice in comment lines, ASCII JSON. Ranges come before single numbers; the late tail is shown as
// plainly as the early one.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "bide/report/words/text.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/study/questions/nested.hpp"
#include "bide/study/questions/odds.hpp"
#include "bide/study/statistics/narrowing.hpp"

namespace bide::report {

inline constexpr const char* odds_format = "bide odds 1";

struct FailedSample {
  std::uint64_t index = 0;
  std::string reason;
};

// Expected variance reduction, if this input were known, of the time until which the first person is able.
struct Unknown {
  std::string name;
  study::FactorKind kind = study::FactorKind::variety;
  study::Narrowing narrowing;
};

// All that a report on odds is made from.
struct OddsMaterial {
  const scenario::ValidScenario& scenario;
  std::uint64_t seed = 0, samples = 0;
  std::vector<FailedSample> failed;
  study::KnownSoFar known;
  study::Odds odds;
  std::vector<Unknown> unknowns;  // largest expected variance reduction first
  std::optional<study::NestedBands> nested;
};

// Help of one future: the statement, the hours drawn from it, and the hours followed.
struct HelpDrawn {
  const scenario::Rescue& rescue;
  double needed_h = 0, horizon_h = 0;
};

// The odds as plain text, as one line, as CSV and as JSON.
// @param width   of a line, terminal columns; limited to [40, 80]
// @param letters what may be printed
std::string odds_text(const OddsMaterial& material, int width, Letters letters);
std::string odds_line(const OddsMaterial& material, Letters letters);  // for --quiet
// When help comes in one future, printed below the summary of its run.
std::string help_text(const HelpDrawn& drawn, const study::Help& help, int width, Letters letters);
std::string odds_csv(const OddsMaterial& material);
std::string odds_json(const OddsMaterial& material);

}  // namespace bide::report
