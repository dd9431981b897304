#include "bide/study/statistics/variance_reduction.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <stdexcept>
#include <vector>

#include "study/chance.hpp"
#include "support/near.hpp"

using namespace bide::study;
using bide::test::chance;
using bide::test::Near;

namespace {

constexpr std::uint32_t n = 4000;

// Column `factor` of plain random uniforms.
std::vector<double> column(std::uint32_t factor) {
  std::vector<double> x;
  for (std::uint32_t k = 0; k < n; ++k) x.push_back(chance(21)(k, factor, 0));
  return x;
}

const Bootstrap bootstrap{chance(22), 200, 0.99};

}  // namespace

TEST_CASE("expected reduction of a sum of three uniforms weighted 3, 1 and 0") {
  // Variances 9 : 1, so knowing the first takes 0.9 away and the second 0.1, up to what 20 bins leave: within
  // a bin the first still has 1/400 of its variance, so 0.9 * (1 - 1/400) = 0.8978. Width: y = 3 u + v is a
  // trapezoid on [0, 4] with height 1/3 and slopes of length 1. Below t <= 1 lies t^2/6, so the 5 % point is
  // sqrt(0.3) = 0.5477 and the 5-95 % width 4 - 2 * 0.5477 = 2.9046. Knowing v leaves 0.9 * 3 = 2.7: 7.0 % of
  // the width goes, while 10 % of the variance does. With v in a bin of 1/20 it leaves practically the same.
  // Knowing u within 1/20 leaves a trapezoid of 0.15 and 1, of width w: its slopes of length 0.15 and height
  // 1 hold 0.075 > 0.05 each, t^2 / 0.3 = 0.05 at t = 0.1225, so w = 1.15 - 0.245 = 0.905: 68.8 % goes.
  const auto u = column(0), v = column(1), idle = column(2);
  std::vector<double> y;
  for (std::size_t k = 0; k < n; ++k) y.push_back(3 * u[k] + v[k]);
  const auto of_u = expected_variance_reduction(u, y, bootstrap),
             of_v = expected_variance_reduction(v, y, bootstrap);
  const auto of_idle = expected_variance_reduction(idle, y, bootstrap);
  REQUIRE(of_u);
  CHECK(of_u->bins == 20);
  CHECK(of_u->of_variance == Near(0.8978).epsilon(0.01));
  CHECK(of_u->of_width == Near(0.688).epsilon(0.02));
  CHECK(of_v->of_variance_interval.low < 0.1);
  CHECK(of_v->of_variance_interval.high > 0.1);
  CHECK(of_v->of_width == Near(0.070).epsilon(0.25));
  // No bearing: 0 within its scatter, sqrt(2 * 19) / 4000 = 0.0015.
  CHECK(std::abs(of_idle->of_variance) < 0.005);
  CHECK(std::abs(of_idle->of_width) < 0.02);
  // Bins of 50: their own 5-95 % width is (1 - 2 * 3.45 / 51) / 0.9 = 0.961 of the whole for uniform numbers,
  // so that without random bins beside them an idle input would seem to narrow by 0.039.
  const auto small = expected_variance_reduction({idle.data(), 1000}, {u.data(), 1000}, bootstrap);
  CHECK(small->bins == 20);
  CHECK(std::abs(small->of_width) < 0.025);
}

TEST_CASE("an input with two values has two bins") {
  // y = 4 * (yes or no) + u, yes in a quarter: Var = 16 * 3/16 + 1/12; knowing it leaves 1/12.
  const auto which = column(0), u = column(1);
  std::vector<double> yes, y;
  for (std::size_t k = 0; k < n; ++k) {
    yes.push_back(which[k] < 0.25 ? 1 : 0);
    y.push_back(4 * yes[k] + u[k]);
  }
  const auto found = expected_variance_reduction(yes, y, bootstrap);
  REQUIRE(found);
  CHECK(found->bins == 2);
  CHECK(found->of_variance == Near(3.0 / (3 + 1.0 / 12)).epsilon(0.01));
}

TEST_CASE("rare values have bins of their own") {
  // y = 10 and -10 in 1 of 50 each, else 0: the input says all.
  std::vector<double> x(n), y(n);
  for (std::size_t k = 0; k < n; ++k) {
    x[k] = k % 50 == 0 ? 1 : k % 50 == 1 ? 2 : 3;
    y[k] = k % 50 == 0 ? 10 : k % 50 == 1 ? -10 : 0;
  }
  const auto found = expected_variance_reduction(x, y, bootstrap);
  REQUIRE(found);
  CHECK(found->bins == 3);
  CHECK(found->of_variance == Near(1));
}

TEST_CASE("nothing is said where nothing can be said") {
  const std::vector<double> few(99, 1.0), same(n, 1.0);
  CHECK_FALSE(expected_variance_reduction(few, few, bootstrap));
  CHECK_FALSE(expected_variance_reduction(same, column(0), bootstrap));
  CHECK_FALSE(expected_variance_reduction(column(0), same, bootstrap));
  CHECK_FALSE(rank_correlation(same, column(0), 0.95));
  auto broken = column(0);
  broken[3] = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(expected_variance_reduction(broken, column(1), bootstrap), std::invalid_argument);
  CHECK_THROWS_AS(rank_correlation(few, same, 0.95), std::invalid_argument);
}

TEST_CASE("rank correlation") {
  // By 1 - 6 sum d^2 / (n (n^2 - 1)): the ranks 1 2 3 4 5 against 2 1 4 3 5 differ by 1 1 1 1 0: 1 - 24/120 =
  // 0.8.
  const std::vector<double> x{1, 10, 100, 1000, 1e4}, y{-2, -3, 7, 0.5, 1e9};
  const auto found = rank_correlation(x, y, 0.95);
  REQUIRE(found);
  CHECK(found->value == Near(0.8));
  // Fisher: atanh 0.8 = 1.0986; half width 1.95996 sqrt(1.32 / 2) = 1.5923; tanh(-0.4937) and tanh(2.6909).
  CHECK(found->interval.low == Near(-0.4572).epsilon(0.001));
  CHECK(found->interval.high == Near(0.9908).epsilon(0.001));
  // Ties share their mean rank: ranks 1.5 1.5 3 4 against 1 2 3 4. Centred: -1 -1 .5 1.5 and -1.5 -.5 .5 1.5;
  // products 4.5, squares 4.5 and 5: 4.5 / sqrt(22.5).
  CHECK(rank_correlation(std::vector<double>{5, 5, 6, 7}, std::vector<double>{1, 2, 3, 4}, 0.95)->value ==
        Near(4.5 / std::sqrt(22.5)));
  CHECK(rank_correlation(x, std::vector<double>{5, 4, 3, 2, 1}, 0.95)->value == -1);
}
