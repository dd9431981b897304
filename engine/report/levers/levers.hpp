// Gain of each practical change: the answer, and JSON.
//
// Inputs: the levers as they were tried. Gains are against the scenario as it is. Levers that cost time are
// listed apart; for one that is withheld or does not apply the reason is given. Carbon dioxide is given with
// every lever that closes openings.
#pragma once

#include <string>

#include "bide/report/words/answer.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/study/questions/levers.hpp"

namespace bide::report {

inline constexpr const char* levers_format = "bide levers 1";

// The answer of the scenario as it is, with what buys most.
Answer levers_answer(const study::LeversTried& levers, const scenario::ValidScenario& scenario);
std::string levers_json(const study::LeversTried& levers, const scenario::ValidScenario& scenario);
std::string levers_schema();

}  // namespace bide::report
