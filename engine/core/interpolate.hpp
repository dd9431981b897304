// Straight lines between tabulated points.
//
// States: none. Inputs: abscissae that ascend strictly, one ordinate each. Validity: outside the table the
// end value is held. Source: none, this is arithmetic.
#pragma once

#include <algorithm>
#include <cstddef>
#include <span>

namespace bide {

// Index i of the interval with x[i] <= at < x[i + 1], held within [0, size - 2]; needs two points.
inline std::size_t interval_of(std::span<const double> x, double at) {
  const auto above = std::upper_bound(x.begin() + 1, x.end() - 1, at);
  return static_cast<std::size_t>(above - x.begin()) - 1;
}

inline double interpolate_linear(std::span<const double> x, std::span<const double> y, double at) {
  if (x.size() == 1 || at <= x.front()) return y.front();
  if (at >= x.back()) return y.back();
  const std::size_t i = interval_of(x, at);
  return y[i] + (y[i + 1] - y[i]) * ((at - x[i]) / (x[i + 1] - x[i]));
}

}  // namespace bide
