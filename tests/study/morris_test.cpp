#include "bide/study/statistics/morris.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <stdexcept>

#include "study/chance.hpp"
#include "support/near.hpp"

using namespace bide::study;
using bide::test::chance;
using bide::test::Near;

namespace {

template <class F>
std::vector<double> outputs(const Points& points, F f) {
  std::vector<double> y;
  for (Eigen::Index k = 0; k < points.rows(); ++k) y.push_back(f(points.row(k)));
  return y;
}

}  // namespace

TEST_CASE("a trajectory changes each column once, by half of the column, on its levels") {
  const Points points = morris_trajectories(50, 5, 4, chance(1));
  REQUIRE(points.rows() == 300);
  std::vector<int> used(4);
  for (Eigen::Index t = 0; t < 50; ++t) {
    Eigen::RowVectorXd moved = Eigen::RowVectorXd::Zero(5);
    for (Eigen::Index i = 0; i < 5; ++i) {
      const Eigen::RowVectorXd step = points.row(t * 6 + i + 1) - points.row(t * 6 + i);
      CHECK(step.cwiseAbs().sum() == 0.5);
      moved += step.cwiseAbs();
    }
    CHECK(moved == Eigen::RowVectorXd::Constant(5, 0.5));
  }
  for (Eigen::Index k = 0; k < 300; ++k) {
    for (Eigen::Index j = 0; j < 5; ++j) {
      const double level = points(k, j) * 4 - 0.5;
      CHECK(level == std::floor(level));
      ++used.at(static_cast<std::size_t>(level));
    }
  }
  for (const int n : used) CHECK(n > 300);  // of 1500, a quarter each
  CHECK_THROWS_AS(morris_trajectories(1, 2, 3, chance(1)), std::invalid_argument);
}

TEST_CASE("effects of a straight line are its slopes, without spread") {
  const Points points = morris_trajectories(10, 3, 4, chance(2));
  const auto found = morris_effects(points, outputs(points, [](auto x) { return 3 * x(0) - 2 * x(1) + 7; }));
  REQUIRE(found);
  const std::vector<double> slopes{3, -2, 0};
  for (std::size_t j = 0; j < 3; ++j) {
    CHECK(found->factors[j].mean == Near(slopes[j]));
    CHECK(found->factors[j].mean_absolute == Near(std::abs(slopes[j])));
    CHECK(found->factors[j].sigma < 1e-12);
  }
}

TEST_CASE("effects of a product depend on the partner; effects of both signs cancel in mu, not in mu*") {
  // y = x0 x1 on the levels 1/4 and 3/4: the effect of x0 is x1, half the time each: mean 1/2, sigma 1/4.
  // y = (x2 - 1/2)(x3 - 1/2): effects of x2 are -1/4 or 1/4: mu 0, mu* 1/4, sigma 1/4.
  const Points points = morris_trajectories(4000, 4, 2, chance(3));
  const auto found = morris_effects(
      points, outputs(points, [](auto x) { return x(0) * x(1) + (x(2) - 0.5) * (x(3) - 0.5); }));
  REQUIRE(found);
  CHECK(found->factors[0].mean == Near(0.5).epsilon(0.03));
  CHECK(found->factors[0].sigma == Near(0.25).epsilon(0.03));
  CHECK(std::abs(found->factors[2].mean) < 0.015);
  CHECK(found->factors[2].mean_absolute == Near(0.25));
  CHECK(found->factors[2].sigma == Near(0.25).epsilon(0.03));
}

TEST_CASE("a trajectory with a failed run is left out and counted") {
  const Points points = morris_trajectories(4, 2, 2, chance(4));
  auto y = outputs(points, [](auto x) { return x(0); });
  y[4] = std::numeric_limits<double>::quiet_NaN();  // in the second block of three rows
  const auto found = morris_effects(points, y);
  REQUIRE(found);
  CHECK(found->left_out == 1);
  CHECK(found->factors[0].mean == Near(1));
  y[0] = y[7] = y[4];
  CHECK_FALSE(morris_effects(points, y));
  y.pop_back();
  CHECK_THROWS_AS(morris_effects(points, y), std::invalid_argument);
}

TEST_CASE("trajectories far apart are kept") {
  // One column, two points each. Distances (all pairs of points) by hand: A-B 1.0 (0 + .5 + .5 + 0),
  // A-C 1.5 (.25 + .75 + .25 + .25), A-D 1.5, C-D 1.0, B as A.
  Points points(8, 1);
  points << 0.125, 0.625, /*B*/ 0.125, 0.625, /*C*/ 0.375, 0.875, /*D*/ 0.875, 0.375;
  const Points kept = spread_trajectories(points, 2);
  REQUIRE(kept.rows() == 4);
  const auto is_low = [&](Eigen::Index t) { return kept(2 * t, 0) == 0.125; };
  CHECK(is_low(0) != is_low(1));  // one of A and B with one of C and D
  // P and Q (0.1, 0.6), R (0.9, 0.4), T (0.5, 1.0): P-T 1.8, P-R 1.6, R-T 1.2, P-Q 1.0. First P (or Q) with
  // T; then the other of these (1.0^2 + 1.8^2 = 4.24) and not R (1.6^2 + 1.2^2 = 4.00).
  Points four(8, 1);
  four << 0.1, 0.6, 0.1, 0.6, 0.9, 0.4, 0.5, 1.0;
  const Points three = spread_trajectories(four, 3);
  int of_r = 0, of_t = 0;
  for (Eigen::Index t = 0; t < 3; ++t) {
    of_r += three(2 * t, 0) == 0.9;
    of_t += three(2 * t, 0) == 0.5;
  }
  CHECK(of_r == 0);
  CHECK(of_t == 1);
  CHECK_THROWS_AS(spread_trajectories(four, 1), std::invalid_argument);
  CHECK_THROWS_AS(spread_trajectories(four, 5), std::invalid_argument);
}
