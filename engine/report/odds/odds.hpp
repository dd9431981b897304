// The endurance window of a crew in words, as a table against time, and as JSON.
//
// Inputs: the odds and the scenario behind them. Output as for a run: plain text within the page, CSV with
// the notice in comment lines, ASCII JSON. Ranges come before single numbers; the late tail is shown as
// plainly as the early one.
#pragma once

#include <string>

#include "bide/report/document/document.hpp"
#include "bide/report/words/text.hpp"
#include "bide/study/questions/ask_odds.hpp"

namespace bide::report {

inline constexpr const char* odds_format = "bide odds 1";

// Help of one future: the statement, the hours drawn from it, and the hours followed.
struct HelpDrawn {
  const scenario::Rescue& rescue;
  double needed_h = 0, horizon_h = 0;
};

// The odds as one line, as CSV and as JSON.
// @param letters what may be printed
std::string odds_line(const study::OddsAnswer& material, Letters letters);  // for --quiet
// When help comes in one future, for below the summary of its run.
document::Section help_section(const HelpDrawn& drawn, const study::Help& help);
std::string odds_csv(const study::OddsAnswer& material);
std::string odds_json(const study::OddsAnswer& material);
std::string odds_schema();

}  // namespace bide::report
