// One function at four points: alone in double, and together in four lanes.
#pragma once

#include <doctest/doctest.h>

#include <array>
#include <cmath>

#include "bide/core/scalar.hpp"

namespace bide::test {

using Points = std::array<double, 4>;

// `f` is a generic function of one scalar type; each argument has its four values.
template <class F, class... P>
void check_lanes(const char* name, F f, const P&... points) {
  const auto gathered = [](const Points& p) {
    Lanes<4> out;
    for (int i = 0; i < 4; ++i) out.set(i, p[static_cast<std::size_t>(i)]);
    return out;
  };
  const Lanes<4> together = f(gathered(points)...);
  for (int i = 0; i < 4; ++i) {
    const double alone = f(points[static_cast<std::size_t>(i)]...);
    CAPTURE(name);
    CAPTURE(i);
    CHECK(std::isfinite(alone));
    CHECK(std::abs(together[i] - alone) <= 1e-12 * std::abs(alone) + 1e-300);
  }
}

}  // namespace bide::test
