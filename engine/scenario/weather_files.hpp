// Which files of weather a scenario may use.
#pragma once

#include <string>
#include <vector>

#include "bide/scenario/validate.hpp"

namespace bide::scenario {

// @param scenario as validated
// @return their names as they are written, relative to ValidScenario::folder; of those that are drawn, all
std::vector<std::string> weather_files(const ValidScenario& scenario);

}  // namespace bide::scenario
