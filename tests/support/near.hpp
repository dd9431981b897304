// Nearness by relative size alone. doctest's Approx adds 1 to the size, so that any two small numbers are
// near: a flux of 1e-5 kg/s would pass as 0.
#pragma once

#include <doctest/doctest.h>

namespace bide::test {

inline doctest::Approx Near(double value) {
  constexpr double smallest = 1e-9;  // so that 0 is near 1e-15
  return doctest::Approx(value).scale(smallest);
}

}  // namespace bide::test
