// Small charts of one column against time, in text.
//
// Inputs: a column and its times; values that are not finite leave a gap. Output: lines of at most `width`
// columns, filled from the lower bound of the scale, in block elements or in plain ASCII.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bide/report/words/text.hpp"

namespace bide::report {

// What stands for the many values that fall into one column of the chart.
enum class Bin { mean, lowest, highest };

struct Chart {
  std::string title, unit;
  std::vector<double> values;
  double least_span = 1;  // of the scale: smaller changes are not blown up
  Bin bin = Bin::mean;
  bool from_zero = false;
};

struct ChartArea {
  int width = 80;
  int rows = 3;
  Letters letters = Letters::utf8;
  double horizon_s = 0;
};

std::vector<std::string> draw(const Chart& chart, const std::vector<double>& time_s, const ChartArea& area);

// The time axis below charts of the same area: a line of ticks and a line of labels.
std::vector<std::string> draw_axis(const ChartArea& area);

}  // namespace bide::report
