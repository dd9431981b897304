// The summary on the terminal: the answer first, then its basis.
//
// Inputs: an outcome, its timeline and scenario. Output: plain text, no colour, no line wider than the
// options say (40 to 80 columns); with `utf8` off every byte is ASCII.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bide/outcome/outcome.hpp"
#include "bide/study/questions/levers.hpp"
#include "bide/study/questions/unmeasured.hpp"

namespace bide::report {

struct WrittenFile {
  std::string what, path;  // "timeline", "out/timeline.csv"
};

struct TerminalOptions {
  bool utf8 = true;
  int width = 80;  // of a line, terminal columns; limited to [40, 80]
  std::vector<WrittenFile> files;
  bool drawn = false;  // a future that was drawn: it has no file to ask about
  bool full = false;   // all the rest as well: figures, charts, events, evidence, assumptions, cautions
  study::RangeMembers members;               // the same scenario over what is not measured; may be empty
  std::optional<study::LeversTried> levers;  // what would buy time, where it was tried
};

// The summary of one run.
// @param outcome  of the timeline
// @param timeline the run
// @param scenario that was run
// @param options  width, letters, names of files written
std::string terminal_summary(const outcome::Outcome& outcome, const timeline::Timeline& timeline,
                             const scenario::ValidScenario& scenario, const TerminalOptions& options);

// One line with the answer, as a range over the members where there are any, and the standing notice.
std::string quiet_line(const outcome::Outcome& outcome, const scenario::ValidScenario& scenario,
                       const TerminalOptions& options);

}  // namespace bide::report
