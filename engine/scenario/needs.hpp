// What single people need beside the common stores: their own medicine, an inhaler, reading glasses, food
// that they can eat.
//
// States: none. Inputs: a scenario. Only what is stated is counted: how long doses last, never how many to
// take. The rest is told for the packing list; the run does not depend on any of it. Source: of reading
// glasses constants/crew_needs.hpp; inhalers and allergies common practice, no source.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bide/scenario/validate.hpp"

namespace bide::scenario {

struct Need {
  std::string words;              // a sentence, without its full stop
  std::optional<double> lasts_h;  // of medicine: h from the start; empty for the rest
  int doses_lacking = 0;          // of medicine: whole doses more for the time asked about
};

// @param scenario as validated
// @param until_h  h from the start that things shall last, above 0
// @return by person; reading glasses last, once for all who need them
std::vector<Need> needs_of(const ValidScenario& scenario, double until_h);

}  // namespace bide::scenario
