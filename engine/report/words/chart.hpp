// Small text charts of one column against time.
//
// Inputs: a column and its times; values that are not finite leave a gap. Output: lines of at most `width`
// columns, filled from the lower bound of the scale, in block elements or in plain ASCII.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bide/report/words/text.hpp"

namespace bide::report {

// Which value is drawn where several fall into one column of the chart.
enum class Bin { mean, lowest, highest };

struct Chart {
  std::string title, unit;
  std::vector<double> values;  // in that unit
  double least_span = 1;       // of the scale, above 0: smaller changes are not magnified
  Bin bin = Bin::mean;
  bool from_zero = false;  // the scale begins at 0
};

struct ChartArea {
  int width = 80;  // terminal columns
  int rows = 3;    // lines of the plot
  Letters letters = Letters::utf8;
  double horizon_s = 0;  // end of the time axis, above 0
};

// Draws a chart.
// @param chart  title, unit and values
// @param time_s of each value, s since the scenario's start, ascending
// @param area   size of the chart
// @return its lines
std::vector<std::string> draw(const Chart& chart, const std::vector<double>& time_s, const ChartArea& area);

// The time axis below charts of the same area: a line of ticks and a line of labels.
std::vector<std::string> draw_axis(const ChartArea& area);

}  // namespace bide::report
