#include "bide/study/sampling/design.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "study/chance.hpp"
#include "support/near.hpp"

using namespace bide::study;
using bide::test::chance;
using bide::test::Near;

TEST_CASE("plain random points do not depend on how many are asked for") {
  const Points few = random_points(5, 3, chance(1)), many = random_points(9, 3, chance(1));
  CHECK(few == many.topRows(5));
  CHECK(few != random_points(5, 3, chance(2)));
}

TEST_CASE("Latin hypercube: every slice of every column holds one sample, at random in it") {
  constexpr Eigen::Index n = 200, factors = 4;
  const Points points = latin_hypercube(n, factors, chance(3));
  double within = 0;
  for (Eigen::Index j = 0; j < factors; ++j) {
    std::vector<int> seen(n);
    for (Eigen::Index k = 0; k < n; ++k) {
      const double place = points(k, j) * n;
      ++seen.at(static_cast<std::size_t>(place));
      within += (place - std::floor(place)) / (n * factors);
    }
    CHECK(std::count(seen.begin(), seen.end(), 1) == n);
  }
  // 800 uniform numbers: mean 0.5, standard error 1/sqrt(12 * 800) = 0.0102.
  CHECK(within == Near(0.5).epsilon(0.08));
  // Columns are matched at random: of two shuffles of 200, few places agree (1 on average, Poisson).
  int same = 0;
  for (Eigen::Index k = 0; k < n; ++k) same += std::floor(points(k, 0) * n) == std::floor(points(k, 1) * n);
  CHECK(same < 8);
}

TEST_CASE("Latin hypercube: the mean of a sum scatters less than with plain random points") {
  // Sum of 3 uniforms: variance 3/12. Random: 0.25 / n. Latin (Stein 1987; for a sum only the place within
  // the slice is left): 0.25 / n^3. With n = 20 the standard deviations are 0.1118 and 0.00559.
  double random = 0, latin = 0;
  constexpr int repeats = 300;
  for (int r = 0; r < repeats; ++r) {
    const auto u = chance(static_cast<std::uint64_t>(100 + r));
    random += std::pow(random_points(20, 3, u).rowwise().sum().mean() - 1.5, 2) / repeats;
    latin += std::pow(latin_hypercube(20, 3, u).rowwise().sum().mean() - 1.5, 2) / repeats;
  }
  CHECK(std::sqrt(random) == Near(0.1118).epsilon(0.15));
  CHECK(std::sqrt(latin) == Near(0.00559).epsilon(0.15));
}

TEST_CASE("grid: every combination once, the last input fastest") {
  const Grid grid({{1, 2}, {10}, {0.1, 0.2, 0.3}});
  REQUIRE(grid.size() == 6);
  std::vector<double> row(3);
  std::vector<std::size_t> places(3);
  grid.row(0, row);
  CHECK(row == std::vector<double>{1, 10, 0.1});
  grid.row(1, row);
  CHECK(row == std::vector<double>{1, 10, 0.2});
  grid.row(3, row);
  CHECK(row == std::vector<double>{2, 10, 0.1});
  grid.places(5, places);
  CHECK(places == std::vector<std::size_t>{1, 0, 2});
  CHECK_THROWS_AS(grid.row(6, row), std::invalid_argument);
  CHECK_THROWS_AS(Grid({{1}, {}}), std::invalid_argument);
  const std::vector<double> thousand(1000);
  CHECK_THROWS_AS(Grid(std::vector<std::vector<double>>(7, thousand)), std::invalid_argument);  // 10^21
}
