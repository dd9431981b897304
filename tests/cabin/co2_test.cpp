#include "bide/cabin/co2.hpp"

#include <doctest/doctest.h>

#include "support/lanes.hpp"

using namespace bide;
using namespace bide::cabin;
using doctest::Approx;

namespace {
constexpr double seated_man_m3_s = 0.0037e-3;  // Persily & de Jonge 2017, man 30-40 at 1.0 met
}

TEST_CASE("steady carbon dioxide above outdoors is g / Q") {
  const auto rise_ppm = [](double L_s) {
    return ppm_of_fraction(steady_co2_fraction(seated_man_m3_s, L_s / 1000, 0.0));
  };
  CHECK(rise_ppm(5 / 3.6) == Approx(2660).epsilon(0.005));  // 5 m3/h each
  CHECK(rise_ppm(2.5) == Approx(1480));
  CHECK(rise_ppm(5) == Approx(740));
  // To stay at 5,000 ppm with 420 outside: 0.81 L/s each.
  CHECK(ppm_of_fraction(steady_co2_fraction(seated_man_m3_s, 0.81e-3, outdoor_co2_fraction)) ==
        Approx(5000).epsilon(0.005));
}

TEST_CASE("perfectly shut: minutes to 5,000, 30,000 and 40,000 ppm by air volume each") {
  const auto minutes = [](double volume_m3, double to_ppm) {
    return shut_time_s(outdoor_co2_fraction, to_ppm / ppm, seated_man_m3_s, volume_m3) / 60;
  };
  CHECK(std::round(minutes(0.3, 5000)) == 6);
  CHECK(std::round(minutes(0.5, 5000)) == 10);
  CHECK(std::round(minutes(1.0, 5000)) == 21);
  CHECK(std::round(minutes(0.3, 30000)) == 40);
  CHECK(std::round(minutes(0.5, 30000)) == 67);
  CHECK(std::round(minutes(1.0, 30000)) == 133);
  CHECK(std::round(minutes(0.3, 40000)) == Approx(53).epsilon(0.02));
  CHECK(std::round(minutes(0.5, 40000)) == 89);
  CHECK(std::round(minutes(1.0, 40000)) == 178);
}

TEST_CASE("the exact solution: settles, fills up shut, and obeys its own equation") {
  CHECK(co2_after_fraction(4.2e-4, seated_man_m3_s, 0.0, 0.5, 4.2e-4, 600.0) ==
        Approx(4.2e-4 + seated_man_m3_s * 600 / 0.5));
  CHECK(co2_after_fraction(4.2e-4, seated_man_m3_s, 2e-3, 0.5, 4.2e-4, 1e5) ==
        Approx(steady_co2_fraction(seated_man_m3_s, 2e-3, 4.2e-4)));
  // One time constant V/Q = 250 s: 1 - 1/e = 0.632121 of the way.
  CHECK(co2_after_fraction(4.2e-4, seated_man_m3_s, 2e-3, 0.5, 4.2e-4, 250.0) ==
        Approx(4.2e-4 + 0.632121 * seated_man_m3_s / 2e-3).epsilon(1e-6));
  const double h = 1e-3, c = 0.01, q = 1e-3, v = 0.7;
  const double slope = (co2_after_fraction(c, seated_man_m3_s, q, v, 4.2e-4, h) - c) / h;
  CHECK(slope == Approx(co2_rate_per_s(c, seated_man_m3_s, q, v, 4.2e-4)).epsilon(1e-4));
  // No jump where the series takes over, x = Q t / V = 1e-6.
  const double below = co2_after_fraction(c, seated_man_m3_s, 0.99e-6, 1.0, 4.2e-4, 1.0);
  const double above = co2_after_fraction(c, seated_man_m3_s, 1.01e-6, 1.0, 4.2e-4, 1.0);
  CHECK(std::abs(above - below) < 1e-9);
}

TEST_CASE("carbon dioxide in lanes") {
  const test::Points q{0, 1e-9, 1e-3, 0.1}, c{4e-4, 0.01, 0.03, 0.05};
  test::check_lanes(
      "after",
      [](auto fraction, auto air) {
        using T = decltype(fraction);
        return co2_after_fraction(fraction, T(1.5e-5), air, T(1.2), T(4.2e-4), T(300));
      },
      c, q);
  test::check_lanes(
      "rate",
      [](auto fraction, auto air) {
        using T = decltype(fraction);
        return co2_rate_per_s(fraction, T(1.5e-5), air, T(1.2), T(4.2e-4));
      },
      c, q);
}
