// From a question to a scenario, from a refusal or a page to JSON.
#pragma once

#include <optional>
#include <variant>
#include <vector>

#include "answers.hpp"
#include "bide/report/document/document.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/study/ensemble/run_all.hpp"
#include "bide/study/questions/unmeasured.hpp"

namespace bide::browser {

Json refused(const scenario::Diagnostics& reasons);
Json listed(const scenario::Diagnostics& reasons);

// The scenario in a question's "scenario" (the text of a file) and "name"; its weather file lies where the
// page put it.
scenario::Validated scenario_in(const Json& question);
// Those in its "scenarios", at least one.
std::variant<std::vector<scenario::ValidScenario>, scenario::Diagnostics> scenarios_in(const Json& question);

// A scenario with its run and the same over what is not known; the last one is kept, because a page asks for
// parts of it one after another.
struct Ran {
  scenario::ValidScenario scenario;
  study::Run run;
  std::optional<study::RangeMembers> members = {};
};
// @param with_range whether the members are needed
// @return null when refused; `wrong` then says why
const Ran* run_in(const Json& question, bool with_range, Json& wrong);

// h; null lies beyond the horizon.
Json hours(const std::optional<double>& time_s);

// Leaves a line of its answers out, such as one that asks for a command of the program.
// @param asks what the line answers: "Buys most"
void leave_out(report::document::Page& page, const std::string& asks);
// Title, lead and sections as HTML; "own_page" marks the sheets that are made for paper.
Json sections_of(const report::document::Page& page);

}  // namespace bide::browser
