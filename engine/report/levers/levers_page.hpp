// The page of levers: the scenario as it is, and changes that would gain time.
#pragma once

#include "bide/report/document/document.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/study/questions/levers.hpp"

namespace bide::report::pages {

document::Page levers_page(const study::LeversTried& levers, const scenario::ValidScenario& scenario);

}  // namespace bide::report::pages
