// The page of a comparison: inputs that differ, figures side by side, conclusions, the odds under common
// futures, and charts of all options.
#pragma once

#include "bide/report/compare/compare.hpp"
#include "bide/report/document/document.hpp"

namespace bide::report::pages {

document::Page compare_page(const Comparison& comparison);

}  // namespace bide::report::pages
