// What a result is of and what made it, as attributes of a table or a file of arrays.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "bide/scenario/validate.hpp"

namespace bide::report {

using Attributes = std::vector<std::pair<std::string, std::string>>;

// Names of CF 1.10 and ACDD 1.3 where they have one for it. Nothing in them changes from day to day.
// @param scenario whose results they are; its weather file is read
Attributes attributes_of(const scenario::ValidScenario& scenario);

}  // namespace bide::report
