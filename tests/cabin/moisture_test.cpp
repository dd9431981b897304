#include "bide/cabin/moisture.hpp"

#include <doctest/doctest.h>

#include "bide/cabin/films.hpp"
#include "bide/core/moist_air.hpp"
#include "support/lanes.hpp"

using namespace bide;
using namespace bide::cabin;
using doctest::Approx;

TEST_CASE("a dry skin condenses only above saturation, a wet one also evaporates") {
  CHECK(condensing_share(9e-3, 9.4e-3, 0.0) == 0);
  CHECK(condensing_share(9.4e-3, 9.4e-3, 0.0) == 0);
  CHECK(condensing_share(9.6e-3, 9.4e-3, 0.0) == 1);
  CHECK(condensing_share(9e-3, 9.4e-3, 0.05) == 1);
  CHECK(condensation_m3_s(0.003, 5.0, 9.6e-3, 9.4e-3, 0.0) == Approx(0.015));
  CHECK(condensation_m3_s(0.003, 5.0, 9.0e-3, 9.4e-3, 0.0) == 0);
}

TEST_CASE("fog takes the excess over ten seconds, and is a tangent") {
  // 12 m3 that hold 10 g/m3: 1 g/m3 too much is 1.2 g/s; 5 % too little is nothing; in the corner
  // 12 x 0.1e-3 x ln 2 / 10 s.
  const auto flow = [](double excess) {
    const auto f = fog(excess, 0.010, 12.0);
    return f.per_density_m3_s * (excess - f.from_excess_kg_m3);
  };
  CHECK(flow(1e-3) == Approx(1.2e-3).epsilon(1e-4));
  CHECK(flow(-5e-4) < 0.01 * 1.2e-3);
  CHECK(flow(-5e-4) > 0);
  CHECK(flow(0.0) == Approx(12 * 1e-4 * 0.693147 / 10).epsilon(1e-5));
  CHECK(flow(-0.02) < 1e-15);
  // The slope of the line is the slope of the curve.
  for (const double excess : {-3e-4, -5e-5, 0.0, 1e-4}) {
    constexpr double step = 1e-8;
    CHECK(fog(excess, 0.010, 12.0).per_density_m3_s ==
          Approx((flow(excess + step) - flow(excess - step)) / (2 * step)).epsilon(1e-5));
  }
  for (int i = 0; i < 4; ++i) {
    Lanes<4> excess(-1e-4);
    excess.set(i, 2e-4);
    const auto wide = fog(excess, Lanes<4>(0.010), Lanes<4>(12.0));
    CHECK(wide.per_density_m3_s[i] == Approx(fog(2e-4, 0.010, 12.0).per_density_m3_s).epsilon(1e-12));
    CHECK(wide.from_excess_kg_m3[i] == Approx(fog(2e-4, 0.010, 12.0).from_excess_kg_m3).epsilon(1e-12));
  }
}

TEST_CASE("condensate of a cool cabin is tens of grams an hour and person") {
  // Cabin at 10 degC and 95 %, skin at 7 degC, 3.5 W/(m2 K), 1.2 m2 of canopy each. By the steam tables the
  // densities are 9.40 g/m3 x 0.95 = 8.93 and 7.76 g/m3; h_m = 3.33e-3 m/s; so 17 g/h.
  const double transfer = mass_transfer_m_s(3.5, 1.24);
  const double vapour = 0.95 * saturation_density_kg_m3(10.0), skin = saturation_density_kg_m3(7.0);
  const double g_h = 3.6e6 * condensation_m3_s(transfer, 1.2, vapour, skin, 0.0) * (vapour - skin);
  CHECK(g_h == Approx(1.2 * 3.13e-3 * (8.93 - 7.76) * 3600).epsilon(0.03));
}

TEST_CASE("drips start above the threshold and the film is water that is left") {
  const double threshold_kg = 0.08 * 5.0;
  CHECK(drip_kg_s(threshold_kg, 5.0) == 0);
  CHECK(drip_kg_s(threshold_kg + 0.3, 5.0) == Approx(0.3 / 300));
  CHECK(drip_on_people_share(2.0, 2.8) == Approx(0.25));
  CHECK(drip_on_people_share(20.0, 2.8) == 1);
}

TEST_CASE("wet floor") {
  CHECK(wet_floor_share(0.0, 2.0) == 0);
  CHECK(wet_floor_share(0.5, 2.0) == Approx(0.5));  // a quarter of a litre on each m2: the middle
  CHECK(wet_floor_share(10.0, 2.0) == 1);
  CHECK(free_floor_m2(2.0, 2.8) == Approx(2.1));
  CHECK(floor_evaporation_m3_s(0.003, 2.1, 0.5) == Approx(0.00315));
}

TEST_CASE("moisture in lanes") {
  using test::check_lanes;
  const test::Points vapour{5e-3, 9.41e-3, 9.45e-3, 2e-2}, film{0, 0.01, 0.3, 2};
  check_lanes(
      "canopy",
      [](auto v, auto f) {
        return condensation_m3_s(decltype(v)(0.003), decltype(v)(5), v, decltype(v)(9.4e-3), f);
      },
      vapour, film);
  check_lanes(
      "drip", [](auto f) { return drip_kg_s(f, decltype(f)(5)); }, film);
  check_lanes(
      "wet", [](auto f) { return wet_floor_share(f, decltype(f)(2)); }, film);
  check_lanes(
      "free", [](auto n) { return free_floor_m2(n, decltype(n)(2)); }, test::Points{1, 2, 4, 9});
}
