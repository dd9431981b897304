// The page of a study: the spread of its figures, and the inputs they depend on.
#pragma once

#include "bide/report/document/document.hpp"
#include "bide/study/questions/summary.hpp"

namespace bide::report::pages {

document::Page study_page(const study::Study& study, const study::Summary& summary);

}  // namespace bide::report::pages
