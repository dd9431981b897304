#include "bide/cabin/bilge.hpp"

#include <doctest/doctest.h>

#include "support/lanes.hpp"

using namespace bide;
using namespace bide::cabin;
using doctest::Approx;

TEST_CASE("whitecaps: 3.84e-6 U^3.41 worked by hand") {
  CHECK(whitecap_fraction(5.0) == Approx(9.29e-4).epsilon(0.002));
  CHECK(whitecap_fraction(10.0) == Approx(0.00987).epsilon(0.002));
  CHECK(whitecap_fraction(15.0) == Approx(0.0393).epsilon(0.002));
  CHECK(whitecap_fraction(20.0) == Approx(0.1049).epsilon(0.002));
  CHECK(whitecap_fraction(60.0) == 0.3);
  CHECK(whitecap_fraction(0.0) == 0);
}

TEST_CASE("spray: about a litre an hour through half a square metre at 15 m/s") {
  CHECK(3600 * spray_kg_s(15.0, 0.5, 0.0) == Approx(0.015 * 0.0393 * 0.503 * 3600).epsilon(0.002));
  CHECK(spray_kg_s(15.0, 0.5, 1.0) == Approx(3 * spray_kg_s(15.0, 0.5, 0.0)));
  CHECK(spray_kg_s(15.0, 0.0, 0.0) < 0.01 * spray_kg_s(15.0, 0.5, 0.0));
}

TEST_CASE("rain: driven through openings under a canopy, all of it without one") {
  const double rain = 10.0 / 3600;  // 10 mm/h
  // Wind equal to the fall speed drives as much sideways as falls: 0.3 x 0.503 m2 x 10 mm/h.
  CHECK(rain_inside_kg_s(rain, 6.5, 0.5, 2.0, 1.0) * 3600 == Approx(0.3 * 0.503 * 10));
  CHECK(rain_inside_kg_s(rain, 6.5, 0.5, 2.0, 0.0) * 3600 == Approx(20));
  CHECK(rain_inside_kg_s(rain, 0.0, 0.5, 2.0, 1.0) == 0);
}

TEST_CASE("pools gather under bodies") {
  CHECK(pooled_share(0.0, 1.0) == 0);
  CHECK(pooled_share(2.0, 1.0) == Approx(1 - 1 / 2.718282).epsilon(1e-5));
  CHECK(pooled_share(0.7, 0.0) == Approx(1 - 1 / 2.718282).epsilon(1e-5));
  CHECK(pooled_share(2.0, 0.0) > pooled_share(2.0, 1.0));
  CHECK(pooled_share(50.0, 1.0) > 0.999);
}

TEST_CASE("standing depth and what is under it") {
  // 40 L, four people on 1.488 m2: 1.488 - 0.8 = 0.688 m2 left to the water, 58 mm.
  CHECK(standing_depth_m(40.0, 1.488, 4.0) == Approx(0.0581).epsilon(0.002));
  // Packed full: a fifth of the floor at least.
  CHECK(standing_depth_m(10.0, 1.0, 6.0) == Approx(0.05));
  const auto under = submerged_share(0.10);  // sitting in 10 cm
  CHECK(under[0] == 0);
  CHECK(under[1] == Approx(0.1 / 0.6));
  CHECK(under[2] == 0);
  CHECK(under[3] == 0);
  CHECK(under[4] == Approx(0.1 / 0.14));
  CHECK(under[5] == Approx(0.1 / 0.24));
  for (const double share : submerged_share(1.0)) CHECK(share == 1);
  CHECK(capsize_water_L(2.0) == Approx(80));
}

TEST_CASE("bailing: bailer to 4 L/m2, sponge to 0.2 L/m2") {
  // 40 L on 2 m2, 1.5 L bailer at 8 a minute, 0.3 L sponge at 4: 32 L in 2.667 min, then 7.6 L in 6.333 min.
  const Bailed<double> all = bail(40.0, 2.0, 1.5, 0.3, 20.0);
  CHECK(all.left_L == Approx(0.4));
  CHECK(all.minutes == Approx(9.0));
  // Five minutes: 2.333 min of mopping at 1.2 L/min.
  const Bailed<double> some = bail(40.0, 2.0, 1.5, 0.3, 5.0);
  CHECK(some.left_L == Approx(8 - 2.8));
  CHECK(some.minutes == Approx(5));
  CHECK(bail(40.0, 2.0, 1.5, 0.0, 20.0).left_L == Approx(8));   // no sponge
  CHECK(bail(40.0, 2.0, 0.0, 0.3, 20.0).left_L == Approx(16));  // sponge alone: 24 L in 20 min
  const Bailed<double> none = bail(40.0, 2.0, 0.0, 0.0, 20.0);
  CHECK(none.left_L == 40);
  CHECK(none.minutes == 0);
  CHECK(bail(0.1, 2.0, 1.5, 0.3, 20.0).left_L == 0.1);
}

TEST_CASE("water on the floor in lanes") {
  using test::check_lanes;
  const test::Points wind{0, 4, 12, 40}, litres{0, 0.5, 9, 200}, flag{0, 1, 0, 1};
  check_lanes(
      "spray", [](auto v, auto f) { return spray_kg_s(v, decltype(v)(0.3), f); }, wind, flag);
  check_lanes(
      "rain",
      [](auto v, auto f) {
        using T = decltype(v);
        return rain_inside_kg_s(T(1e-3), v, T(0.3), T(2), f);
      },
      wind, flag);
  check_lanes(
      "pool", [](auto w, auto f) { return pooled_share(w, f); }, litres, flag);
  check_lanes(
      "depth", [](auto w) { return standing_depth_m(w, decltype(w)(2), decltype(w)(4)); }, litres);
  check_lanes(
      "under", [](auto w) { return submerged_share(decltype(w)(w * decltype(w)(1e-3)))[4]; }, litres);
  check_lanes(
      "left",
      [](auto w, auto f) { return bail(w, decltype(w)(2), f, decltype(w)(0.3), decltype(w)(10)).left_L; },
      litres, flag);
}
