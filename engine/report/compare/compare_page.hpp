// The page of a comparison: what differs, the figures side by side, what sets the options apart, the odds
// under common futures, and both stays drawn over each other.
#pragma once

#include "bide/report/compare/compare.hpp"
#include "bide/report/html/page.hpp"

namespace bide::report::pages {

html::Page compare_page(const Comparison& comparison);

}  // namespace bide::report::pages
