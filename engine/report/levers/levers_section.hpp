// Changes that would gain time, as a section of a page: hours able and alive for each, those that cost time,
// those withheld and those that make no sense.
#pragma once

#include "bide/report/html/page.hpp"
#include "bide/study/questions/levers.hpp"

namespace bide::report::pages {

html::Section levers_section(const study::LeversTried& levers);

}  // namespace bide::report::pages
