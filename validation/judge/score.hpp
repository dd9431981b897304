// How well values forecast a measurement, and whether one way of forecasting is better than another over
// studies.
//
// A forecast is a weighted set of values, each with the measurement's own scatter about it: a normal
// distribution whose standard deviation is half of the row's interval. A study counts as two rows at most.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "bide/study/statistics/bootstrap.hpp"
#include "validation/judge/conditions.hpp"

namespace bide::validation {

// Values with weights; weights sum to 1.
struct Forecast {
  std::vector<double> values, weights;
};
Forecast single(double value);

// One row under one forecast. Coverage and width are of rows with two sides alone.
struct RowScore {
  double error = 0;  // of the weighted mean, in half-intervals
  bool two_sided = false;
  bool in_half = false, in_nine_tenths = false;  // the published value, in the middle 50 and 90 %
  double width = 0;                              // of the middle 90 %, over the row's interval
};
// @param scatter standard deviation of the measurement's own scatter, in half-intervals, at least 0
RowScore score(const JudgedRow& row, const Forecast& forecast, double scatter);

// Error and coverage without the width, which costs most.
RowScore coverage(const JudgedRow& row, const Forecast& forecast, double scatter);

// Scores of a candidate, by row; empty where it makes no forecast.
using Scores = std::vector<std::optional<RowScore>>;

// min(rows, 2) / rows of its study, by row.
std::vector<double> study_weights(const std::vector<JudgedRow>& rows);

struct Summary {
  std::size_t rows = 0, two_sided = 0;
  double error = 0;                                   // weighted mean
  double in_half = 0, in_nine_tenths = 0, width = 0;  // shares and mean of the rows with two sides, weighted
};
// Over the rows for which `take` is true.
Summary summarise(const std::vector<JudgedRow>& rows, const Scores& scores, const std::vector<bool>& take);

// Weighted mean error of the second candidate less that of the first, over the rows that both forecast, and
// the middle 90 % of it over studies drawn again.
struct Difference {
  std::size_t rows = 0, studies = 0;
  double first = 0, second = 0;  // weighted mean errors
  double mean = 0;
  study::Interval interval;
};
Difference difference(const std::vector<JudgedRow>& rows, const Scores& first, const Scores& second,
                      std::uint64_t seed);

}  // namespace bide::validation
