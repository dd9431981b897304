#include "bide/cabin/floor.hpp"

#include <doctest/doctest.h>

#include "support/lanes.hpp"

using namespace bide;
using namespace bide::cabin;
using doctest::Approx;
using scenario::FloorKind;
using scenario::Seat;

TEST_CASE("floor resistances measured under seated people (DRDC 2001)") {
  const double single = floor_resistance(FloorKind::single, true).seated_m2K_W;
  const double inflated = floor_resistance(FloorKind::inflated, true).seated_m2K_W;
  CHECK(single == Approx(0.06 * 0.155));  // 0.06 clo
  CHECK(inflated >= 0.60 * 0.155);        // make B
  CHECK(inflated <= 0.71 * 0.155);        // make A
  CHECK(inflated / single >= 10);         // reported: 10 to 12 times
  CHECK(inflated / single <= 12);
  CHECK(1 / single == Approx(107).epsilon(0.01));  // W/(m2 K)
}

TEST_CASE("unpressed, flat and foam floors") {
  // ISO 6946, heat flowing down through 50 to 100 mm of air: 0.21-0.22, and two cloths.
  const FloorResistance up = floor_resistance(FloorKind::inflated, true);
  CHECK(up.free_m2K_W > 0.21);
  CHECK(up.free_m2K_W < 0.23);
  const FloorResistance flat = floor_resistance(FloorKind::inflated, false);
  CHECK(flat.seated_m2K_W > floor_resistance(FloorKind::single, false).seated_m2K_W);
  CHECK(flat.seated_m2K_W < 0.15 * up.seated_m2K_W);
  // Manikin, dry: foam floors 0.221 and 0.236, inflated 0.236 m2 K/W of the whole person: no different.
  CHECK(floor_resistance(FloorKind::foam, false).seated_m2K_W == Approx(up.seated_m2K_W).epsilon(0.1));
}

TEST_CASE("sea under the floor") {
  // 5 m/s of wind: 0.1 m/s over 2 m. Re = 142,857, Re^0.8 = 13,302, Pr^(1/3) = 2.139, Nu = 1,053, h = 308.5.
  CHECK(under_floor_film_W_m2K(5.0) == Approx(308.5).epsilon(0.003));
  CHECK(under_floor_film_W_m2K(0.0) == 100);
  // Below a tenth of an inflated floor's resistance anywhere in the plausible range.
  CHECK(1 / under_floor_film_W_m2K(0.0) <= 0.1 * 0.1015);
}

TEST_CASE("seat, puddle and back in series") {
  // 1 / (0.07 + 0.1015 + 1/300).
  CHECK(seat_to_sea_W_m2K(0.07, 0.1015, 300.0, 0.0, 0.0) == Approx(5.7197).epsilon(1e-4));
  // 0.7 / 0.424833 + 0.3 / 0.174833.
  CHECK(seat_to_sea_W_m2K(0.07, 0.1015, 300.0, 0.25, 0.7) == Approx(3.36361).epsilon(1e-4));
  CHECK(skin_to_puddle_W_m2K(0.02, 0.0) == Approx(1 / 0.025));
  CHECK(skin_to_puddle_W_m2K(0.02, 0.5) == Approx(0.5 / 0.025));
  CHECK(back_to_tube_W_m2K(0.07) == Approx(1 / 0.20));
  CHECK(floor_to_sea_W_m2K(0.0093, 300.0) == Approx(1 / (0.0093 + 1.0 / 300)));
  CHECK(seat_pad(Seat::floor).cover == 0);
  CHECK(seat_pad(Seat::lifejacket).resistance_m2K_W > seat_pad(Seat::foam_pad).resistance_m2K_W);
}

TEST_CASE("contact shares leave every segment some free skin") {
  for (std::size_t s = 0; s < 6; ++s) {
    CHECK(seat_share[s] + back_share[s] + huddle_share[s] < 1);
  }
}

TEST_CASE("neighbours") {
  CHECK(neighbour_factor(1.0, 2.0, 1.0) == 0);
  CHECK(neighbour_factor(2.0, 2.0, 1.0) == 0.5);
  CHECK(neighbour_factor(6.0, 2.0, 1.0) == 1);
  CHECK(neighbour_factor(2.0, 6.0, 0.0) == 0);            // a third of it, apart
  CHECK(neighbour_factor(4.0, 1.488, 0.0) == Approx(1));  // four on 4 x 0.372 m2 cannot but touch
}

TEST_CASE("floor in lanes") {
  using test::check_lanes;
  const test::Points wind{0, 1, 6, 20}, persons{1, 2, 3, 8}, r{0.01, 0.1, 0.2, 0.3};
  check_lanes(
      "film", [](auto v) { return under_floor_film_W_m2K(v); }, wind);
  check_lanes(
      "near", [](auto n) { return neighbour_factor(n, decltype(n)(3), decltype(n)(0)); }, persons);
  check_lanes(
      "seat", [](auto x) { return seat_to_sea_W_m2K(x, x, decltype(x)(300), x, decltype(x)(0.5)); }, r);
  check_lanes(
      "pool", [](auto x) { return skin_to_puddle_W_m2K(x, x); }, r);
  check_lanes(
      "back", [](auto x) { return back_to_tube_W_m2K(pressed_insulation_m2K_W(x)); }, r);
}
