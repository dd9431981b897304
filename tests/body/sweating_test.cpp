#include "bide/body/sweating.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "body/lanes_agree.hpp"

using namespace bide::body;
using doctest::Approx;

TEST_CASE("sweat wets the skin as ISO 7933 has it") {
  // Required sweat = required evaporation / (1 - w^2 / 2), by hand: at w = 0.5 and a capacity of 100,
  // evaporation 50, efficiency 0.875, sweat 57.14. At w = 1: 100 / 0.5 = 200.
  CHECK(sweat_wettedness(50 / 0.875, 100.0, 1.0) == Approx(0.5));
  CHECK(sweat_wettedness(200.0, 100.0, 1.0) == Approx(1.0));
  // As much sweat as the air can take up evaporates by less than three quarters: sqrt(3) - 1.
  CHECK(sweat_wettedness(100.0, 100.0, 1.0) == Approx(std::sqrt(3.0) - 1));
  // A little sweat evaporates whole; none wets nothing.
  CHECK(sweat_wettedness(1.0, 100.0, 1.0) == Approx(0.01).epsilon(1e-4));
  CHECK(sweat_wettedness(0.0, 100.0, 1.0) == 0);
  CHECK(sweat_wettedness(0.0, 0.0, 1.0) == 0);
  // Air that takes up nothing leaves the skin as wet as it gets.
  CHECK(sweat_wettedness(1e-5, 0.0, 0.85) == 0.85);
  // Never more evaporates than is made.
  for (const double sweat : {1.0, 30.0, 90.0, 150.0, 400.0})
    CHECK(100 * sweat_wettedness(sweat, 100.0, 1.0) <= sweat);
}

TEST_CASE("wettedness in lanes agrees with double") {
  check_lanes(AS_LAMBDA(sweat_wettedness),
              {{0, 0, 1}, {1e-5, 1e-5, 0.85}, {3e-5, 1e-5, 0.85}, {1e-6, 5e-5, 1}});
}
