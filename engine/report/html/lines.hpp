// Curves against time, thinned for a page.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "bide/report/html/page.hpp"

namespace bide::report::pages {

struct Curve {
  std::string name;
  const std::vector<double>* time_s;
  const std::vector<double>* values;
  double until_s;  // not drawn beyond
};

// Output times that a chart is drawn at: evenly few of each curve, and its own ends and extremes.
std::set<double> drawn_times(const std::vector<Curve>& curves);

// A line for each curve, against hours.
std::vector<html::Series> lines(const std::vector<Curve>& curves);

}  // namespace bide::report::pages
