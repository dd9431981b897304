// Every input in force of a scenario, for listings.
#pragma once

#include <string>
#include <vector>

#include "bide/scenario/validate.hpp"

namespace bide::report {

struct InputInForce {
  std::string words, value, unit;  // "raft: floor area", "1.5", "m2"
  bool stated = false;             // else a default
  std::string pointer;             // in the file
};
std::vector<InputInForce> inputs_in_force(const scenario::ValidScenario& scenario);

}  // namespace bide::report
