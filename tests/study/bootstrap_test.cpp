#include "bide/study/statistics/bootstrap.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <stdexcept>

#include "study/chance.hpp"
#include "support/near.hpp"

using namespace bide::study;
using bide::test::chance;
using bide::test::Near;

TEST_CASE("quantiles between order statistics") {
  // Hyndman & Fan (1996), type 7: at (n - 1) p. Of 1 2 4 8: p = 0.5 at 1.5: 3; p = 0.9 at 2.7: 4 + 0.7 * 4
  // = 6.8.
  const std::vector<double> values{1, 2, 4, 8};
  CHECK(quantile_of_sorted(values, 0) == 1);
  CHECK(quantile_of_sorted(values, 0.5) == 3);
  CHECK(quantile_of_sorted(values, 0.9) == Near(6.8));
  CHECK(quantile_of_sorted(values, 1) == 8);
  CHECK_THROWS_AS(quantile_of_sorted({}, 0.5), std::invalid_argument);
}

TEST_CASE("a replicate is looked up by its number") {
  CHECK(drawn_again(50, 3, chance(1)) == drawn_again(50, 3, chance(1)));
  CHECK(drawn_again(50, 3, chance(1)) != drawn_again(50, 4, chance(1)));
  CHECK(drawn_again(50, 3, chance(1)) != drawn_again(50, 3, chance(2)));
}

TEST_CASE("the spread of the mean over replicates is its standard error") {
  // 0 and 1 in equal numbers, 400 of them: sqrt(0.25 / 400) = 0.025, so 95 % within 0.5 +- 0.049.
  std::vector<double> means;
  for (std::size_t r = 0; r < 4000; ++r) {
    double mean = 0;
    for (const std::size_t i : drawn_again(400, r, chance(7))) mean += (i % 2 == 0 ? 1.0 : 0.0) / 400;
    means.push_back(mean);
  }
  const Interval found = middle(means, 0.95);
  CHECK(std::abs(found.low - 0.451) < 0.004);
  CHECK(std::abs(found.high - 0.549) < 0.004);
  CHECK_THROWS_AS(middle({}, 0.95), std::invalid_argument);
  CHECK_THROWS_AS(middle(means, 1), std::invalid_argument);
}
