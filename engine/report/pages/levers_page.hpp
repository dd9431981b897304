// The page of levers alone: the scenario as it is, and what would buy more time.
#pragma once

#include "report/html/page.hpp"
#include "scenario/validate.hpp"
#include "study/levers.hpp"

namespace bide::report::pages {

html::Page levers_page(const study::LeversTried& levers, const scenario::ValidScenario& scenario);

}  // namespace bide::report::pages
