// The defaults of a scenario that move its result most, for those who check it.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "bide/scenario/validate.hpp"

namespace bide::scenario {

struct DefaultInForce {
  struct Value {
    std::string pointer, value;  // as it stands in the file
  };
  std::vector<Value> values;  // one, or one for each person whose entry was filled in
  std::string sentence;       // what the field is
};

// The defaults in force, those that matter first; what nothing in this scenario uses, as the minutes in the
// water of people who step aboard, is left out. Which ones matter is judgement: rain, openings and what keeps
// heat and water come before details; a default that is not listed here comes after them, in file order.
// @param most at most so many
std::vector<DefaultInForce> first_defaults(const ValidScenario& valid, std::size_t most);

}  // namespace bide::scenario
