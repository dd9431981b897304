// A valid scenario made ready to march, or what is wrong with it that only the model can see.
//
// States: none. Inputs: a validated scenario and its weather. Refused before anything is run: people who fill
// the cabin, more time events than a run may have, and people who are dead before it begins. Source: none.
#pragma once

#include <variant>

#include "bide/system/compiled.hpp"

namespace bide::system {

// @param scenario a validated scenario
// @param weather  of this scenario
// @return as compile() makes it, or every reason against it with its place in the file
std::variant<Compiled<double>, scenario::Diagnostics> make_ready(const scenario::ValidScenario& scenario,
                                                                 const weather::Record& weather);

}  // namespace bide::system
