#include "bide/body/swimming.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "body/lanes_agree.hpp"

using namespace bide;
using namespace bide::body;
using doctest::Approx;

// Ducharme & Lounsbury 2007: about 47 min in 10 to 14 degC. Tipton 1999: most beyond 90 min at 18, all at 25.
// Keatinge 1969: two of four within 8 min at 4.7.
TEST_CASE("minutes until cold arms no longer swim") {
  const auto minutes = [](double degC) { return swim_failure_s(degC) / minute_s; };
  CHECK(minutes(12) == Approx(47));
  CHECK(minutes(10) > 30);
  CHECK(minutes(14) < 75);
  CHECK(minutes(18) > 90);
  CHECK(minutes(25) > 300);
  CHECK(minutes(4.7) > 7.6);
  CHECK(minutes(4.7) < 30);
  CHECK(minutes(-2) == minutes(0));
}

// Tipton 1999: all ten finished 90 min in 25 degC, the warmest water. Muscle of 27 degC holds longest (Clarke
// 1958, from memory), and in warmer water muscle cannot be colder.
TEST_CASE("above the warmest water of the trials the cold counts less, above 27 degC not at all") {
  for (const double degC : {0.0, 10.0, 25.0})
    CHECK(arms_used_per_s(degC, 1.0) == 1 / swim_failure_s(degC));  // the published minutes, to the bit
  CHECK(arms_used_per_s(26.0, 1.0) < 0.6 / swim_failure_s(25.0));
  CHECK(arms_used_per_s(26.0, 1.0) > 0);
  CHECK(arms_used_per_s(27.0, 1.0) == 0);
  CHECK(arms_used_per_s(31.0, 1.0) == 0);
  CHECK(arms_used_per_s(10.0, 2.0) == Approx(arms_used_per_s(10.0, 1.0) / 2));
}

// 30 to 90 min in 10 to 14 degC are told of people: nine in ten of a lognormal of median 47 and spread 0.40
// lie between 47 / 1.93 and 47 x 1.93, 24 to 91 min. Tipton 1999: 8 of 10 were left at 90 min in 18 degC.
TEST_CASE("the spread of the minutes holds what was told of swimmers") {
  const double spread = constants::spread_swim_endurance;
  const auto left = [&](double degC, double min) {
    return 0.5 * std::erfc(std::log(min * minute_s / swim_failure_s(degC)) / (spread * std::sqrt(2.0)));
  };
  CHECK(left(12, 30) < 0.95);
  CHECK(left(12, 90) > 0.03);
  CHECK(left(18, 90) == Approx(0.8).epsilon(0.05));
  CHECK(left(25, 90) > 0.99);
}

TEST_CASE("power falls with what the cold has used, and with the last half of the glycogen") {
  CHECK(swimming_power(0.0, 7650.0, 7650.0) == 1);
  CHECK(swimming_power(0.5, 7650.0, 7650.0) == 1);
  CHECK(swimming_power(0.75, 7650.0, 7650.0) == Approx(0.5));
  CHECK(swimming_power(1.3, 7650.0, 7650.0) == 0);
  CHECK(swimming_power(0.0, 0.3 * 7650, 7650.0) == Approx(0.5));
  CHECK(swimming_power(0.0, 0.1 * 7650, 7650.0) == 0);
}

TEST_CASE("swimming in lanes agrees with double") {
  check_lanes(AS_LAMBDA(swim_failure_s), {{-3}, {10}, {22}, {35}});
  check_lanes(AS_LAMBDA(arms_used_per_s), {{-3, 1}, {10, 0.4}, {26, 2}, {35, 1}});
  check_lanes(AS_LAMBDA(swimming_power),
              {{0, 7000, 7000}, {0.6, 2000, 7000}, {1.2, 7000, 7000}, {0.9, 100, 7000}});
}
