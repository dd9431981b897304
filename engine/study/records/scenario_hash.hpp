// Which scenario a result is of.
#pragma once

#include <cstdint>

#include "bide/scenario/validate.hpp"

namespace bide::study {

// Stands for all that a scenario says, what varies in it too, and for its weather file. The name of the file
// and the way it is set out do not count.
// @param scenario as validated; its weather file is read
std::uint64_t scenario_hash(const scenario::ValidScenario& scenario);

}  // namespace bide::study
