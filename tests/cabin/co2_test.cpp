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
    return shut_time_s(outdoor_co2_fraction, fraction_of_ppm(to_ppm), seated_man_m3_s, volume_m3) / 60;
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
