#include "bide/body/swimming.hpp"

#include <doctest/doctest.h>

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
  check_lanes(AS_LAMBDA(swimming_power),
              {{0, 7000, 7000}, {0.6, 2000, 7000}, {1.2, 7000, 7000}, {0.9, 100, 7000}});
}
