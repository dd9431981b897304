#include "bide/body/vessels.hpp"

#include <doctest/doctest.h>

using namespace bide::body;
using doctest::Approx;

TEST_CASE("exchange between an artery and its veins, by hand") {
  // Touching cylinders: no tissue between them, two films of 3.66 x pi x 0.5 = 5.749 W/(m K) in series.
  CHECK(exchange_W_K({1, 4, 4, 0, 1, 1}) == Approx(5.749 / 2).epsilon(1e-3));
  // Axes 8 mm apart: acosh((4 x 64 - 32) / 32) = acosh(7) = 2.6339; 2 pi / 2.6339 x 0.42 = 1.0019; with the
  // films 1 / (1 / 1.0019 + 2 / 5.749) = 0.7429 W/K for a metre.
  CHECK(exchange_W_K({1, 4, 4, 4, 1, 1}) == Approx(0.7429).epsilon(1e-3));
  // A second vein: 1.7 x 1.0019 in the tissue and twice its film: 1 / (0.5871 + 0.1739 + 0.0870) = 1.1793.
  CHECK(exchange_W_K({1, 4, 4, 4, 2, 1}) == Approx(1.1793).epsilon(1e-3));
  CHECK(exchange_W_K({0.5, 4, 4, 4, 2, 4}) == Approx(2 * 1.1793).epsilon(1e-3));
}

TEST_CASE("limbs of a man of 1.75 m") {
  // Upper arm 0.499, forearm 0.824; thigh 0.520, lower leg 1.846 W/K, summed by hand. The 17-segment
  // descendant has 1.78 and 2.54 (Takahashi 2021).
  CHECK(arms_exchange_W_K(1.75) == Approx(2 * (0.499 + 0.824)).epsilon(2e-3));
  CHECK(legs_exchange_W_K(1.75) == Approx(2 * (0.520 + 1.846)).epsilon(2e-3));
  CHECK(legs_exchange_W_K(0.875) == Approx(0.5 * legs_exchange_W_K(1.75)));
}
