// What each practical change buys, as text and JSON.
//
// Inputs: the levers as they were tried. Gains are against the scenario as it is; a lever that costs time
// stands apart, one that is withheld or makes no sense says why. Whatever closes openings carries its carbon
// dioxide.
#pragma once

#include <string>

#include "bide/report/words/text.hpp"
#include "bide/study/questions/levers.hpp"

namespace bide::report {

inline constexpr const char* levers_format = "bide levers 1";

std::string levers_text(const study::LeversTried& levers, const scenario::ValidScenario& scenario,
                        Letters letters, int width);
std::string levers_json(const study::LeversTried& levers, const scenario::ValidScenario& scenario);

}  // namespace bide::report
