// The defaults of a scenario that move its result most, for those who check it.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "bide/scenario/validate.hpp"

namespace bide::scenario {

struct DefaultInForce {
  std::string pointer;   // with "*" for everybody whose entry was filled in
  std::string value;     // with its unit; of the first person concerned
  std::string sentence;  // what the field is
};

// The defaults in force, those that matter first. Which ones do is judgement: rain, openings and what keeps
// heat and water come before details; a default that is not listed here comes after them, in file order.
// @param most at most so many
std::vector<DefaultInForce> first_defaults(const ValidScenario& valid, std::size_t most);

}  // namespace bide::scenario
