#include "bide/stores/making.hpp"

#include <doctest/doctest.h>

#include "support/lanes.hpp"

using namespace bide;
using namespace bide::stores;
using doctest::Approx;

TEST_CASE("desalinator: litres, and what they cost the worker") {
  // A small unit, 1 L/h at 6.25 W (22.5 kJ/L), two hours.
  CHECK(desalinated_L(2.0, 1.0, 1.0) == 2);
  CHECK(desalinated_L(2.0, 1.0, 0.0) == 0);
  // 60 to 120 kJ/L metabolic for 15 to 30 kJ/L of work.
  CHECK(work_metabolic_W(6.25) * 3.6 > 60);
  CHECK(work_metabolic_W(6.25) * 3.6 < 150);
}

TEST_CASE("rain: the first millimetre rinses, 70 % of the rest is kept") {
  // 10 mm/h for an hour on 1.86 m2: 9 mm x 1.86 x 0.7 = 11.718 L.
  const double rate = 10.0 / 3600;
  CHECK(rain_caught_L(rate, 3600.0, 1.86, 0.0) == Approx(11.718));
  CHECK(rain_caught_L(rate, 3600.0, 1.86, 5.0) == Approx(13.02));  // rinsed before
  CHECK(rain_caught_L(rate, 300.0, 1.86, 0.0) == 0);               // 0.83 mm
}

TEST_CASE("rain fills what containers there are") {
  // Four-person raft, 3 L each beyond the 6 L it came with: room for 18 - 4.
  CHECK(rain_stored_L(10.0, 4.0, 6.0, 4.0) == 10);
  CHECK(rain_stored_L(40.0, 4.0, 6.0, 4.0) == Approx(14));
  CHECK(rain_stored_L(5.0, 20.0, 6.0, 4.0) == 0);
}

TEST_CASE("solar still: 20 MJ/m2 a day on 1 m2 give 2 to 5 L a day (range of passive stills)") {
  const double L_day = still_L_s(20e6 / 86400, 1.0) * 86400;
  CHECK(L_day == Approx(0.3 * 20 / 2.3));
  CHECK(L_day > 2);
  CHECK(L_day < 5);
}

TEST_CASE("making water in lanes") {
  const test::Points x{0, 0.2, 3, 9}, rain{0, 1e-4, 2e-3, 0.02};
  test::check_lanes(
      "pump", [](auto h) { return desalinated_L(h, decltype(h)(1), h); }, x);
  test::check_lanes(
      "rain", [](auto r, auto f) { return rain_caught_L(r, decltype(r)(600), decltype(r)(2), f); }, rain, x);
  test::check_lanes(
      "room", [](auto c) { return rain_stored_L(c, decltype(c)(4), decltype(c)(6), decltype(c)(1)); }, x);
  test::check_lanes(
      "still", [](auto g) { return still_L_s(g, decltype(g)(0.3)); }, x);
}
