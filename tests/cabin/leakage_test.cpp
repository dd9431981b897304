#include "bide/cabin/leakage.hpp"

#include <doctest/doctest.h>

#include "support/lanes.hpp"

using namespace bide;
using namespace bide::cabin;
using doctest::Approx;

TEST_CASE("shut leakage as air changes per hour of a cabin 0.9 m high") {
  const auto changes_per_h = [](double wind, double position) {
    return leakage_m3_s(1.0, wind, position) * 3600 / 0.9;
  };
  // Reference ranges: 0.1 / 0.5 / 3 in calm, 0.3 / 2 / 9 at 4 m/s, 0.8 / 5 / 22 at 10 m/s, printed to a
  // digit.
  CHECK(changes_per_h(0, 0) == Approx(0.12));  // 0.03 L/s x 4
  CHECK(changes_per_h(0, 0.5) == Approx(0.48));
  CHECK(changes_per_h(0, 1) == Approx(3.0));
  CHECK(changes_per_h(4, 0) == Approx(0.32));
  CHECK(changes_per_h(4, 0.5) == Approx(1.92));
  CHECK(changes_per_h(4, 1) == Approx(8.8));
  CHECK(changes_per_h(10, 0) == Approx(0.8));
  CHECK(changes_per_h(10, 0.5) == Approx(4.8));
  CHECK(changes_per_h(10, 1) == Approx(22.0));
  // Logarithmic between: the geometric middle of 0.03 and 0.12.
  CHECK(leakage_m3_s(1.0, 0.0, 0.25) == Approx(0.06e-3));
}

TEST_CASE("one door cracked to 0.05 m2, height 0.3 m, 10 K: de Gids and Phaff, L/s") {
  const auto L_s = [](double wind) { return 1000 * one_sided_m3_s(0.05, 0.3, wind, 10.0); };
  CHECK(L_s(0) == Approx(3.6).epsilon(0.01));
  CHECK(L_s(2) == Approx(3.9).epsilon(0.01));
  CHECK(L_s(5) == Approx(5.3).epsilon(0.01));
  CHECK(L_s(10) == Approx(8.7).epsilon(0.01));
  CHECK(L_s(15) == Approx(12.4).epsilon(0.01));
  CHECK(1000 * one_sided_m3_s(0.05, 0.3, 2.0, -10.0) == Approx(L_s(2)));
  // Warren & Parkins 1984 give 0.025 A U = 12.5 L/s at 10 m/s: the laws agree within a factor of 1.5.
  CHECK(L_s(10) > 12.5 / 1.5);
}

TEST_CASE("two opposite entrances, 0.5 m2 each and 0.6 m high (ASHRAE)") {
  // Wind alone: 0.425 x 0.5 m2 x 2 m/s.
  CHECK(two_sided_m3_s(1.0, 0.6, 2.0, 0.0, 10.0) == Approx(0.425));
  // Stack alone, 10 K over 283.15 K: 0.445 x 0.5 x sqrt(2 x 9.80665 x 0.3 x 10 / 283.15) = 0.2225 x 0.45585.
  CHECK(two_sided_m3_s(1.0, 0.6, 0.0, 10.0, 10.0) == Approx(0.101427).epsilon(1e-4));
  // Together: the root of the sum of squares.
  CHECK(two_sided_m3_s(1.0, 0.6, 2.0, 10.0, 10.0) == Approx(std::hypot(0.425, 0.101427)).epsilon(1e-4));
}

TEST_CASE("ventilation adds leakage and openings") {
  const double shut = ventilation_m3_s(2.0, 0.0, 0.5, 0.0, 3.0, 2.4, 12.0, 5.0, 0.5);
  CHECK(shut == Approx(2.0 * 0.36e-3));  // 0.12 x 3 L/s per m2
  // Fully open on one side: 0.25 sqrt(0.009 + 0.0035 x 0.6 x 7 + 0.01) = 0.25 x 0.183576.
  const double open = ventilation_m3_s(2.0, 0.5, 0.5, 0.0, 3.0, 2.4, 12.0, 5.0, 0.5);
  CHECK(open - shut == Approx(0.045894).epsilon(1e-4));
  const double through = ventilation_m3_s(2.0, 0.5, 0.5, 1.0, 3.0, 2.4, 12.0, 5.0, 0.5);
  CHECK(through - shut >= 0.25 * 0.425 * 2.4);  // wind through 0.25 m2
  // In a calm without a temperature difference two sides pass no less than one.
  CHECK(ventilation_m3_s(2.0, 0.5, 0.5, 1.0, 0.0, 0.0, 5.0, 5.0, 0.5) ==
        Approx(ventilation_m3_s(2.0, 0.5, 0.5, 0.0, 0.0, 0.0, 5.0, 5.0, 0.5)));
}

TEST_CASE("5 m3/h carry 1.68 W/K") {
  CHECK(air_exchange_W_K(5.0 / 3600, 1.2) == Approx(1.68).epsilon(0.005));
}

TEST_CASE("air exchange in lanes") {
  using test::check_lanes;
  const test::Points wind{0, 1, 6, 20}, position{0, 0.4, 0.6, 1}, open{0, 0.01, 0.2, 0.6};
  check_lanes(
      "leakage", [](auto v, auto p) { return leakage_m3_s(decltype(v)(2), v, p); }, wind, position);
  check_lanes(
      "whole",
      [](auto v, auto p, auto a) {
        using T = decltype(v);
        return ventilation_m3_s(T(2), a, T(0.5), T(1), v, T(0.8) * v, T(15), T(5), p);
      },
      wind, position, open);
  check_lanes(
      "heat", [](auto q) { return air_exchange_W_K(q, decltype(q)(1.2)); }, open);
}
