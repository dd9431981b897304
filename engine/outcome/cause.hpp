// Names of limits in plain words.
#pragma once

#include <string>
#include <string_view>

#include "bide/scenario/scenario.hpp"

namespace bide::outcome {

// "cold" for able_core_low, "water loss" for lethal_water_deficit; the name itself with blanks for
// underscores when it is of no known kind; empty for an empty name.
std::string short_cause(std::string_view limit);

// A clause with the limit's value: "cold: core temperature below 33 C".
std::string plain_cause(std::string_view limit, const scenario::Limits& limits);

}  // namespace bide::outcome
