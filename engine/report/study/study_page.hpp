// The page of a study: the spread of its figures, and the inputs they depend on.
#pragma once

#include "bide/report/html/page.hpp"
#include "bide/study/questions/summary.hpp"

namespace bide::report::pages {

html::Page study_page(const study::Study& study, const study::Summary& summary);

}  // namespace bide::report::pages
