// What would buy more time, as a section of a page: hours of able and alive for each change, what costs time,
// what is withheld and what makes no sense.
#pragma once

#include "bide/report/html/page.hpp"
#include "bide/study/questions/levers.hpp"

namespace bide::report::pages {

html::Section levers_section(const study::LeversTried& levers);

}  // namespace bide::report::pages
