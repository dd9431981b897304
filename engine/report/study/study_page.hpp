// The page of a study: how its figures spread, and what each depends on.
#pragma once

#include "bide/report/html/page.hpp"
#include "bide/study/questions/summary.hpp"

namespace bide::report::pages {

html::Page study_page(const study::Study& study, const study::Summary& summary);

}  // namespace bide::report::pages
