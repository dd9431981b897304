#include "bide/core/interpolate.hpp"

#include <doctest/doctest.h>

#include <array>

using namespace bide;

TEST_CASE("straight lines between points, held ends") {
  const std::array x{0.0, 1.0, 3.0};
  const std::array y{10.0, 20.0, 0.0};
  CHECK(interpolate_linear(x, y, 0.25) == 12.5);
  CHECK(interpolate_linear(x, y, 1.0) == 20.0);
  CHECK(interpolate_linear(x, y, 2.0) == 10.0);
  CHECK(interpolate_linear(x, y, -5.0) == 10.0);
  CHECK(interpolate_linear(x, y, 9.0) == 0.0);
  CHECK(interpolate_linear(std::span(x).first(1), std::span(y).first(1), 7.0) == 10.0);
}

TEST_CASE("the interval holds the point, also at and beyond the ends") {
  const std::array x{0.0, 1.0, 3.0};
  CHECK(interval_of(x, -1.0) == 0);
  CHECK(interval_of(x, 0.0) == 0);
  CHECK(interval_of(x, 1.0) == 1);
  CHECK(interval_of(x, 2.9) == 1);
  CHECK(interval_of(x, 3.0) == 1);
  CHECK(interval_of(x, 4.0) == 1);
}
