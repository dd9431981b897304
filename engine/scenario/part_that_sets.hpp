// Which part of "uncertain" sets a field.
#pragma once

#include <functional>
#include <string>

#include "bide/scenario/uncertain.hpp"

namespace bide::scenario {

// @param uncertain the part "uncertain" of a scenario
// @param sought    whether a JSON pointer is one of those sought
// @return the pointer of the first of inputs, groups and alternatives that sets such a field; empty if none
// does
std::string part_that_sets(const Uncertain& uncertain, const std::function<bool(const std::string&)>& sought);

}  // namespace bide::scenario
