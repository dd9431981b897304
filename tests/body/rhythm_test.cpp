#include "bide/body/rhythm.hpp"

#include <doctest/doctest.h>

using namespace bide::body;
using doctest::Approx;

TEST_CASE("the day of the core: least at 5 h, most at 17 h, 0.57 K between") {
  const auto at = [](double start_h, double later_h) {
    return core_rhythm_K(rhythm_from(start_h), later_h * 3600);
  };
  CHECK(at(5, 0) == Approx(-0.285));
  CHECK(at(5, 6) == Approx(0).epsilon(1e-9));
  CHECK(at(5, 12) == Approx(0.285));
  CHECK(at(17, 0) == Approx(0.285));
  CHECK(at(17, 12) == Approx(-0.285));
  // By the clock, whenever it starts: 23 h is 0.285 x -cos(270 degrees) = 0; 14 h is -0.285 cos(135 degrees).
  CHECK(at(13, 10) == Approx(0).epsilon(1e-9));
  CHECK(at(20, 18) == Approx(0.2015).epsilon(1e-3));
  CHECK(at(8, 30) == Approx(at(14, 0)));
}
