// Inputs that differ between several scenarios.
//
// States: none. Inputs: validated scenarios. Output: resolved values as text, one entry per scenario, in file
// order. Names and settings are no inputs and are left out, as is what is uncertain (a single run leaves it
// aside).
#pragma once

#include <string>
#include <vector>

#include "bide/scenario/validate.hpp"

namespace bide::scenario {

struct InForce {
  std::string value;       // "none" where the scenario has no such field
  bool filled_in = false;  // a default, not stated
};
struct Difference {
  std::string pointer;  // of an item aboard: its title
  std::string unit;
  std::vector<InForce> values;  // one per scenario
};

std::vector<Difference> differences(const std::vector<const ValidScenario*>& scenarios);

// The same for what is aboard, packs multiplied out.
std::vector<Difference> differences_aboard(const std::vector<const ValidScenario*>& scenarios);

}  // namespace bide::scenario
