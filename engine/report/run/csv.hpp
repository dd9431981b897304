// The timeline as comma-separated text.
//
// Output: comment lines that start with "# " (one case, the notice, what it is), then a header and one row
// per output time, RFC 4180 with LF line ends for the comments' sake readable by anything that skips "#".
// Units are the ends of the column names; persons' columns start with person_a_, person_b_... Numbers have
// six significant digits and a point whatever the locale; a value that is not finite is an empty field. A
// column the run does not have (a cabin without a raft) is left out.
#pragma once

#include <string>

#include "bide/scenario/validate.hpp"
#include "bide/timeline/series.hpp"

namespace bide::report {

std::string timeline_csv(const timeline::Timeline& timeline, const scenario::ValidScenario& scenario);

}  // namespace bide::report
