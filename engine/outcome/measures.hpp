// Numbers read off a column of values against time, taken as straight lines between output times.
//
// Inputs: times in s, rising, as long as the values. Validity: exact for piecewise linear columns; a spike
// between two output times is not seen.
#pragma once

#include <optional>
#include <vector>

namespace bide::outcome {

using Column = std::vector<double>;

// Hours from the start to `until_s` during which the column lies above (below) `level`.
// @param time_s  s, rising
// @param level   in the unit of the values
// @param until_s s, at least the first time
double hours_above(const Column& time_s, const Column& values, double level, double until_s);
double hours_below(const Column& time_s, const Column& values, double level, double until_s);

struct Extreme {
  double value = 0, time_s = 0;
};
// Over output times after `after_s` and up to `until_s`; nothing when there are none or all are not finite.
// @param time_s           s, rising
// @param until_s, after_s s; after_s from_start_s: from the start on
inline constexpr double from_start_s = -1;
std::optional<Extreme> lowest(const Column& time_s, const Column& values, double until_s,
                              double after_s = from_start_s);
std::optional<Extreme> highest(const Column& time_s, const Column& values, double until_s,
                               double after_s = from_start_s);

// Mean of the column over the output times after `after_s` and up to `until_s`, weighed by time; nothing when
// these are fewer than two. Over the same times as lowest() and highest().
// @param time_s           s, rising
// @param until_s, after_s s, as lowest()
std::optional<double> mean(const Column& time_s, const Column& values, double until_s,
                           double after_s = from_start_s);

// The column at `at_s`; nothing for an empty column.
// @param time_s s, rising
// @param at_s   s
std::optional<double> value_at(const Column& time_s, const Column& values, double at_s);

// When the first, at least half ("half of the crew": two of four, two of three) and all of the crew have
// reached something; empty when they have not.
struct CrewTimes {
  std::optional<double> first_s, half_s, last_s;
  int reached = 0, persons = 0;
};
CrewTimes crew_times(std::vector<std::optional<double>> times_s);

}  // namespace bide::outcome
