// The timeline as comma-separated text.
//
// Output: comment lines that start with "# " (one case, the notice, the contents), then a header and one row
// per output time, as in RFC 4180 but with LF line ends; any reader that skips "#" can read it. Column names
// end in their unit; persons' columns start with person_a_, person_b_... Numbers have six significant digits
// and a decimal point in every locale; a value that is not finite is an empty field. A column that the run
// does not have (the cabin without a raft) is left out.
#pragma once

#include <string>

#include "bide/scenario/validate.hpp"
#include "bide/timeline/series.hpp"

namespace bide::report {

std::string timeline_csv(const timeline::Timeline& timeline, const scenario::ValidScenario& scenario);

}  // namespace bide::report
