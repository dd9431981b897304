// How far a light is seen, against the table printed with the rule of the collision regulations (Annex I,
// section 8, from memory) and ranges worked out by hand.
#include "bide/stores/seen_range.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "bide/constants/signals.hpp"

using namespace bide::stores;

namespace {
const double night = bide::constants::light_threshold_night_lux;
// K = 0.8 a mile: 0.05 = 0.8^V.
const double visibility_of_rule_nm = std::log(0.05) / std::log(0.8);
}  // namespace

TEST_CASE("the printed table of luminous ranges") {
  const double printed_cd[] = {0.9, 4.3, 12, 27, 52, 94};  // for 1 to 6 miles, two figures
  for (int miles = 1; miles <= 6; ++miles) {
    CAPTURE(miles);
    CHECK(luminous_range_nm(printed_cd[miles - 1], visibility_of_rule_nm, night) ==
          doctest::Approx(miles).epsilon(0.025));
  }
}

// I = 3.43e6 T D^2 0.05^(-D/V), T = 2e-7: at D = 15.2 and V = 10, 0.686 x 231 x 95 = 15,060 cd.
TEST_CASE("lights of a raft, worked out") {
  CHECK(luminous_range_nm(4.3, 10, night) == doctest::Approx(1.89).epsilon(0.005));
  CHECK(luminous_range_nm(4.3, 3, night) == doctest::Approx(1.30).epsilon(0.005));
  CHECK(luminous_range_nm(15000, 10, night) == doctest::Approx(15.2).epsilon(0.005));
  CHECK(luminous_range_nm(15000, 3, night) == doctest::Approx(6.3).epsilon(0.01));
  CHECK(luminous_range_nm(30000, 1, night) == doctest::Approx(2.9).epsilon(0.02));
  CHECK(luminous_range_nm(0, 10, night) == 0);
}

TEST_CASE("a hand flare is hidden by the horizon, a rocket is not") {
  // 2.08 (sqrt 20 + sqrt 2) = 12.2; 2.08 (sqrt 20 + sqrt 300) = 45.3 nautical miles.
  CHECK(horizon_range_nm(20, 2) == doctest::Approx(12.2).epsilon(0.005));
  CHECK(horizon_range_nm(20, 300) == doctest::Approx(45.3).epsilon(0.005));
}
