// Linear interpolation between tabulated points.
//
// States: none. Inputs: abscissae that ascend strictly, one ordinate each. Validity: outside the table the
// nearest end value is returned. Source: none, this is arithmetic.
#pragma once

#include <algorithm>
#include <cstddef>
#include <span>

namespace bide {

// Index of the interval that holds `at`.
// @param x  abscissae, strictly ascending, at least two
// @param at where to look, in the unit of x; outside the table the first or the last interval is returned
// @return i with x[i] <= at < x[i + 1], in [0, size - 2]
inline std::size_t interval_of(std::span<const double> x, double at) {
  const auto above = std::upper_bound(x.begin() + 1, x.end() - 1, at);
  return static_cast<std::size_t>(above - x.begin()) - 1;
}

// Value of the table at `at`.
// @param x  abscissae, strictly ascending, at least one
// @param y  ordinates, as many as x
// @param at in the unit of x; outside the table the nearest end value is returned
// @return in the unit of y
inline double interpolate_linear(std::span<const double> x, std::span<const double> y, double at) {
  if (x.size() == 1 || at <= x.front()) return y.front();
  if (at >= x.back()) return y.back();
  const std::size_t i = interval_of(x, at);
  return y[i] + (y[i + 1] - y[i]) * ((at - x[i]) / (x[i + 1] - x[i]));
}

}  // namespace bide
