// Limits in plain words.
#pragma once

#include <string>

#include "bide/scenario/scenario.hpp"
#include "bide/system/limits.hpp"

namespace bide::outcome {

// "cold" for able_core_low, "water loss" for lethal_water_deficit; empty for none.
std::string short_cause(system::Limit limit);

// A clause with the limit's value for a person: "cold: core temperature below 33 °C".
std::string plain_cause(system::Limit limit, const scenario::Limits& limits, const scenario::Person& person);

}  // namespace bide::outcome
