// Numbers read off a column of values against time, taken as straight lines between output times.
//
// Inputs: times in s, rising, as long as the values. Validity: exact for piecewise linear columns; a spike
// between two output times is not seen.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace bide::outcome {

// Hours from the start to `until_s` during which the column lies above (below) `level`.
double hours_above(const std::vector<double>& time_s, const std::vector<double>& values, double level,
                   double until_s);
double hours_below(const std::vector<double>& time_s, const std::vector<double>& values, double level,
                   double until_s);

struct Extreme {
  double value = 0, time_s = 0;
};
// Over output times up to `until_s`; nothing when there are none or all are not finite.
std::optional<Extreme> lowest(const std::vector<double>& time_s, const std::vector<double>& values,
                              double until_s);
std::optional<Extreme> highest(const std::vector<double>& time_s, const std::vector<double>& values,
                               double until_s);

// The column at `at_s`; nothing for an empty column.
std::optional<double> value_at(const std::vector<double>& time_s, const std::vector<double>& values,
                               double at_s);

// When the first, at least half, and all of the crew have reached something; empty when they have not.
struct CrewTimes {
  std::optional<double> first_s, median_s, last_s;
  int reached = 0, persons = 0;
};
CrewTimes crew_times(std::vector<std::optional<double>> times_s);

}  // namespace bide::outcome
