// The levers where trying them all takes a second or two.
//
// Inputs: a validated scenario. Whether it is tried depends on the scenario alone, not on the machine: the
// same input gives the same answer.
#pragma once

#include <optional>

#include "bide/study/questions/levers.hpp"

namespace bide::study {

// Tries every lever of a scenario with few person-hours.
// @param scenario a validated scenario
// @return the levers; none where it would take longer, or where a run has no result
std::optional<LeversTried> try_levers_quickly(const scenario::ValidScenario& scenario);

}  // namespace bide::study
