// Parts that the results of several questions share.
#pragma once

#include <optional>
#include <string>

#include "bide/core/units.hpp"
#include "bide/report/json/shape.hpp"
#include "bide/report/run/range.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/study/questions/unmeasured.hpp"

namespace bide::report {

// Hours of a time in seconds that may lie beyond the horizon.
// @param at_s s since the start
inline std::optional<double> hours_of(const std::optional<double>& at_s) {
  return at_s ? std::optional(*at_s / hour_s) : std::nullopt;
}

// What is doubtful in a scenario.
Shape<scenario::Diagnostic> caution_shape();

// The range of a single run, for able and alive, of the first person, half of the crew and the last.
struct RunRange {
  const outcome::CrewTimes *able, *alive;
  const study::RangeMembers* members;
  double horizon_s;
};
inline constexpr const char* range_sentence =
    "range over what nobody has measured and the model's own error; null where the file states all of it";

// None without members.
// @param horizon_s s since the start
std::optional<RunRange> range_of(const outcome::CrewTimes& able, const outcome::CrewTimes& alive,
                                 const study::RangeMembers& members, double horizon_s);
Shape<RunRange> range_shape();

}  // namespace bide::report
