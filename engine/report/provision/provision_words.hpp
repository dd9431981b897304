// Words of a kit that JSON and page share.
#pragma once

#include <string>

#include "bide/study/questions/provision.hpp"

namespace bide::report {

std::string cause_words(system::Limit limit);  // "cold"; "no result" for a future without one
// "2031-06-24": the day, in UTC, on which the time asked for ends.
std::string last_day_utc(const study::Provision& provision);

}  // namespace bide::report
