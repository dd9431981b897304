// The summary on the terminal.
//
// Inputs: an outcome, its timeline and scenario. Output: plain text, no colour, no line wider than the
// options say (40 to 80 columns); with `utf8` off every byte is ASCII.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bide/outcome/outcome.hpp"
#include "bide/report/document/document.hpp"
#include "bide/study/questions/levers.hpp"
#include "bide/study/questions/unmeasured.hpp"

namespace bide::report {

struct TerminalOptions {
  bool utf8 = true;
  int width = 80;                            // of a line, terminal columns; limited to [40, 80]
  bool drawn = false;                        // a future that was drawn: it has no file to ask about
  bool full = false;                         // every section of the page, not the answer alone
  std::vector<document::Section> also = {};  // after it in any case: files written, help
  study::RangeMembers members;               // the same scenario over what is not measured; may be empty
  std::optional<study::LeversTried> levers;  // what would buy time, where it was tried
};

// The page of one run as text.
// @param outcome  of the timeline
// @param timeline the run
// @param scenario that was run
std::string terminal_summary(const outcome::Outcome& outcome, const timeline::Timeline& timeline,
                             const scenario::ValidScenario& scenario, const TerminalOptions& options);

// One line with the answer, as a range over the members where there are any, and the standing notice.
std::string quiet_line(const outcome::Outcome& outcome, const scenario::ValidScenario& scenario,
                       const TerminalOptions& options);

}  // namespace bide::report
