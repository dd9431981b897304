// Times as people say them: "9h", "90min", "2d", or an instant in UTC.
#pragma once

#include <optional>
#include <string_view>

namespace bide::scenario {

// A length of time: a number at least 0 and its unit, min, h or d.
// @return h; empty for any other text
std::optional<double> parse_hours(std::string_view text);

// An instant: a length of time before now, or as parse_time_utc (core/time_utc.hpp).
// @param now_unix_s s since 1970
// @return s since 1970; empty for any other text
std::optional<double> parse_moment(std::string_view text, double now_unix_s);

}  // namespace bide::scenario
