// A place in an unmeasured range: 0 its low end, 0.5 the central value, 1 its high end.
//
// States: none. Inputs: position, held within [0, 1]. Validity: any. Source: none; the ranges are the low and
// high of the constants.
#pragma once

#include "bide/core/scalar.hpp"
#include "bide/core/sourced.hpp"

namespace bide::cabin {

// Straight from low to central, and from central to high.
template <class T>
inline T along_range(const Sourced& range, T position) {
  return T(range.low) + T(range.value - range.low) * clamp(T(T(2) * position), 0.0, 1.0) +
         T(range.high - range.value) * clamp(T(T(2) * position - T(1)), 0.0, 1.0);
}

// The same on a logarithmic scale, for ranges of an order of magnitude; needs low > 0.
template <class T>
inline T along_range_log(const Sourced& range, T position) {
  return exp(T(std::log(range.low)) +
             T(std::log(range.value / range.low)) * clamp(T(T(2) * position), 0.0, 1.0) +
             T(std::log(range.high / range.value)) * clamp(T(T(2) * position - T(1)), 0.0, 1.0));
}

// 0 below `from`, 1 above `to`, straight between: the weight of the upper of two table points.
template <class T>
inline T ramp(T x, double from, double to) {
  return clamp(T((x - T(from)) / T(to - from)), 0.0, 1.0);
}

}  // namespace bide::cabin
