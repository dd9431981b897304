#include "cf/packing.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

using namespace bide::tool::cf;

namespace {
constexpr double none = std::numeric_limits<double>::quiet_NaN();
}

TEST_CASE("what is missing is seen before it is unpacked") {
  Packing packing;
  packing.scale = 0.001;
  packing.offset = 285;
  packing.missing = {-32767, 9};
  CHECK(std::isnan(unpack(packing, -32767)));  // would be 252 K
  CHECK(std::isnan(unpack(packing, 9)));
  CHECK(unpack(packing, 1000) == doctest::Approx(286));
  CHECK(std::isnan(unpack(packing, none)));
}

TEST_CASE("a missing value that is stored as float is compared as one") {
  Packing packing;
  packing.missing = {1e20};
  const double stored = static_cast<double>(1e20F);
  REQUIRE(stored != 1e20);
  CHECK(unpack(packing, stored) == stored);
  packing.single = true;
  CHECK(std::isnan(unpack(packing, stored)));
}

TEST_CASE("a valid range is of what is stored, or of values where it is said in reals") {
  Packing packing;
  packing.scale = 0.1;
  packing.lowest = -100;
  packing.highest = 100;
  CHECK(unpack(packing, 100) == doctest::Approx(10));
  CHECK(std::isnan(unpack(packing, 101)));
  packing.range_of_values = true;
  CHECK(unpack(packing, 1000) == doctest::Approx(100));
  CHECK(std::isnan(unpack(packing, 1001)));
}
