// Curves against time, thinned for a page.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "bide/report/document/document.hpp"

namespace bide::report::pages {

// One curve to be drawn; the lists must outlive it and be of equal length.
struct Curve {
  std::string name;
  const std::vector<double>* time_s;  // ascending
  const std::vector<double>* values;
  double until_s;  // not drawn beyond
};

// The times at which a chart is drawn: about 150 of each curve at most, evenly spaced, with its end and
// extremes.
// @return s, ascending
std::set<double> drawn_times(const std::vector<Curve>& curves);

// A line for each curve; x is the time in h.
std::vector<document::Series> lines(const std::vector<Curve>& curves);

}  // namespace bide::report::pages
