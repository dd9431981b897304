// Changes that would gain time, as a section of a page: hours able and alive for each, those that cost time,
// those withheld and those that do not apply.
#pragma once

#include <optional>

#include "bide/report/document/document.hpp"
#include "bide/study/questions/levers.hpp"

namespace bide::report::pages {

// The largest gains; empty where nothing gains.
std::optional<document::Chart> levers_picture(const study::LeversTried& levers);

// @param all_on_paper the table too, and what gains nothing
document::Section levers_section(const study::LeversTried& levers, bool all_on_paper);

}  // namespace bide::report::pages
