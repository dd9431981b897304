// What a chart shows, as numbers in words.
#pragma once

#include <string>
#include <vector>

#include "bide/report/document/document.hpp"

namespace bide::report::document {

// Table of every value of a chart: a row for each x (or category), a column for each series.
Table values_of(const Chart& chart);

// One value: "2.5", "2.5 (2 to 3)", "2 to 8 or later".
std::string value_of(const Point& point, Kind kind);

// "time, h"; the name alone without a unit.
std::string with_unit(const std::string& name, const std::string& unit);

// Twelve figures: far more than a drawing shows, and few enough that equal places stay equal.
double rounded(double value);

// Stacked bars, made of spans.
// @param parts  names, from the first drawn to the last
// @param values values[i][k] is the size of part i in category k, at least 0
std::vector<Series> stack(const std::vector<std::string>& parts,
                          const std::vector<std::vector<double>>& values);

}  // namespace bide::report::document
