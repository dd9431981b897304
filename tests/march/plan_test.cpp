#include "bide/march/plan.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <numeric>

#include "bide/march/crossing.hpp"

using namespace bide::march;

TEST_CASE("stops are sorted, merged and end with the end") {
  const auto stops =
      merge({{300, false}, {100, true}, {300, true}, {-5, true}, {0, true}, {900, false}}, 600);
  REQUIRE(stops.size() == 3);
  CHECK(stops[0].time_s == 100);
  CHECK(stops[1].time_s == 300);
  CHECK(stops[1].hard);
  CHECK(stops[2].time_s == 600);
  CHECK_FALSE(stops[2].hard);
}

// Long after a change of surroundings.
const Since settled{.graded = 0, .change_s = 1e6};

TEST_CASE("steps are graded after a hard stop, then at most the longest") {
  Since since = settled;
  CHECK(steps(600, {}, since) == std::vector<double>{60, 120, 210, 210});
  CHECK(since.graded == 2);
  CHECK(steps(600, {}, since) == std::vector<double>{300, 300});
  since = settled;
  CHECK(steps(100, {}, since) == std::vector<double>{60, 40});
  CHECK(since.graded == 1);
  // The grading goes on where it was.
  CHECK(steps(540, {}, since) == std::vector<double>{120, 210, 210});
}

TEST_CASE("steps are short for an hour after a change of surroundings") {
  Since since;
  CHECK(steps(600, {}, since) == std::vector<double>{60, 120, 84, 84, 84, 84, 84});
  CHECK(since.change_s == 600);
  since.change_s = 3000;
  CHECK(steps(600, {}, since) == std::vector<double>{100, 100, 100, 100, 100, 100});
  CHECK(steps(600, {}, since) == std::vector<double>{300, 300});
}

TEST_CASE("steps sum to the interval") {
  for (const double change_s : {0.0, 1e6})
    for (const double length : {1.0, 59.0, 61.0, 359.9, 1234.5}) {
      Since since{.graded = 0, .change_s = change_s};
      const auto s = steps(length, {}, since);
      CHECK(std::accumulate(s.begin(), s.end(), 0.0) == doctest::Approx(length).epsilon(1e-12));
      for (const double step : s) CHECK(step > 0);
    }
}

TEST_CASE("a crossing is found on the cubic through both ends") {
  // y = t^3 - 2 on [1, 2]: the cubic is reproduced exactly, so the root is the cube root of two.
  CHECK(crossing_time(1, -1, 3, 2, 6, 12, 0) == doctest::Approx(std::cbrt(2.0)).epsilon(1e-8));
  CHECK(hermite(1, -1, 3, 2, 6, 12, 1.5) == doctest::Approx(1.375).epsilon(1e-12));
}
