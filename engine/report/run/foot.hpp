// Which run a page is of.
#pragma once

#include <string>

#include "bide/scenario/validate.hpp"

namespace bide::report::pages {

// "four.json, start 2031-02-03T18:00Z, weather seed 3": which run this is, for the foot of a page.
std::string foot_of(const scenario::ValidScenario& scenario);

}  // namespace bide::report::pages
