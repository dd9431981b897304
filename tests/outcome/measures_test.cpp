#include "bide/outcome/measures.hpp"

#include <doctest/doctest.h>

#include <limits>
#include <stdexcept>

using namespace bide::outcome;

TEST_CASE("hours above a level follow straight lines between output times") {
  const std::vector<double> time_s{0, 3600, 7200};
  const std::vector<double> values{0, 10, 0};
  // Above 4 from 0.4 h to 1.6 h: 1.2 h, by similar triangles.
  CHECK(hours_above(time_s, values, 4, 7200) == doctest::Approx(1.2));
  CHECK(hours_below(time_s, values, 4, 7200) == doctest::Approx(0.8));
  // Cut at 1 h: 0.6 h; at half an hour, in the middle of a stretch: 0.1 h.
  CHECK(hours_above(time_s, values, 4, 3600) == doctest::Approx(0.6));
  CHECK(hours_above(time_s, values, 4, 1800) == doctest::Approx(0.1));
  CHECK(hours_above(time_s, values, 11, 7200) == 0);
  CHECK(hours_above(time_s, {5, 5, 5}, 4, 7200) == doctest::Approx(2));
  // Exactly on the level is not above it.
  CHECK(hours_above(time_s, {4, 4, 4}, 4, 7200) == 0);
  CHECK(hours_above(time_s, {}, 4, 7200) == 0);
  CHECK_THROWS_AS(hours_above(time_s, {1, 2}, 0, 7200), std::logic_error);
}

TEST_CASE("extremes skip what is not finite and stop in time") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const std::vector<double> time_s{0, 10, 20, 30};
  const auto low = lowest(time_s, {3, nan, 1, 0}, 20);
  REQUIRE(low);
  CHECK(low->value == 1);
  CHECK(low->time_s == 20);
  const auto high = highest(time_s, {3, 9, 9, 1}, 30);
  REQUIRE(high);
  CHECK(high->time_s == 10);  // the first of equals
  CHECK_FALSE(lowest(time_s, {nan, nan, nan, nan}, 30));
  CHECK_FALSE(lowest({}, {}, 30));
}

TEST_CASE("a mean is weighed by time, over the same times as the extremes") {
  const std::vector<double> time_s{0, 10, 20, 40};
  // After the first: (2 + 6) / 2 over 10 s and (6 + 0) / 2 over 20 s, by trapezia: (40 + 60) / 30.
  CHECK(*mean(time_s, {100, 2, 6, 0}, 40, 0) == doctest::Approx(100.0 / 30));
  CHECK(*mean(time_s, {100, 2, 6, 0}, 20, 0) == doctest::Approx(4));
  CHECK(*mean(time_s, {4, 2, 6, 0}, 10) == doctest::Approx(3));
  CHECK_FALSE(mean(time_s, {4, 2, 6, 0}, 10, 0));  // one output time has no length
  CHECK_FALSE(mean({}, {}, 40));
}

TEST_CASE("a value between output times is interpolated, outside them held") {
  CHECK(*value_at({0, 10}, {1, 3}, 5) == doctest::Approx(2));
  CHECK(*value_at({0, 10}, {1, 3}, -5) == 1);
  CHECK(*value_at({0, 10}, {1, 3}, 50) == 3);
  CHECK_FALSE(value_at({0, 10}, {}, 5));
}

TEST_CASE("first, half and last of a crew, some of whom never reach it") {
  const auto four = crew_times({4.0, 1.0, std::nullopt, 2.0});
  CHECK(*four.first_s == 1);
  CHECK(*four.half_s == 2);  // two of four
  CHECK_FALSE(four.last_s);
  CHECK(four.reached == 3);
  const auto three = crew_times({std::nullopt, 5.0, std::nullopt});
  CHECK(*three.first_s == 5);
  CHECK_FALSE(three.half_s);
  const auto all = crew_times({3.0, 2.0, 1.0});
  CHECK(*all.half_s == 2);
  CHECK(*all.last_s == 3);
  const auto none = crew_times({std::nullopt, std::nullopt});
  CHECK_FALSE(none.first_s);
  CHECK(none.persons == 2);
}
