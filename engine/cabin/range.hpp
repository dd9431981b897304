// A position in an unmeasured range: 0 is its low end, 0.5 the central value, 1 its high end.
//
// States: none. Inputs: position, clamped to [0, 1]. Validity: any. Source: none; the ranges are the low and
// high of the constants.
#pragma once

#include "bide/core/scalar.hpp"
#include "bide/core/sourced.hpp"

namespace bide::cabin {

// Value at a position: linear from low to central, and from central to high.
// @param range    a constant with its low and high
// @param position 0 low to 1 high; clamped
// @return in the unit of the constant
template <class T>
inline T along_range(const Sourced& range, T position) {
  return T(range.low) + T(range.value - range.low) * clamp(T(T(2) * position), 0.0, 1.0) +
         T(range.high - range.value) * clamp(T(T(2) * position - T(1)), 0.0, 1.0);
}

// The same on a logarithmic scale, for ranges of an order of magnitude.
// @param range    a constant with its low, above 0, and high
// @param position 0 low to 1 high; clamped
// @return in the unit of the constant
template <class T>
inline T along_range_log(const Sourced& range, T position) {
  return exp(T(std::log(range.low)) +
             T(std::log(range.value / range.low)) * clamp(T(T(2) * position), 0.0, 1.0) +
             T(std::log(range.high / range.value)) * clamp(T(T(2) * position - T(1)), 0.0, 1.0));
}

// Linear ramp: 0 below `from`, 1 above `to`; the weight of the upper of two table points.
// @param x        in the unit of from and to
// @param from, to where the ramp begins and ends, from < to
// @return [0, 1]
template <class T>
inline T ramp(T x, double from, double to) {
  return clamp(T((x - T(from)) * T(1 / (to - from))), 0.0, 1.0);
}

}  // namespace bide::cabin
