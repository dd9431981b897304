// The least kit that meets a target, as text and JSON.
//
// The answer comes first: the kit and what it weighs, or that there is none and what ends it. Shares are
// those of the futures drawn, with the exact lower bound beside them.
#pragma once

#include <string>

#include "bide/report/words/text.hpp"
#include "bide/study/questions/provision.hpp"

namespace bide::report {

inline constexpr const char* provision_format = "bide provision 1";

// @param width of a line, terminal columns; limited to [40, 80]
std::string provision_text(const study::Provision& provision, Letters letters, int width);
std::string provision_json(const study::Provision& provision);
std::string provision_schema();

// What ended futures, in a few words.
// @param limit none: the futures have no result
std::string ended_by_words(system::Limit limit);
// Day at whose end the target is met, as 2031-02-10.
std::string last_day_utc(const study::Provision& provision);

}  // namespace bide::report
