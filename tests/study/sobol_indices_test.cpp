#include "bide/study/statistics/sobol_indices.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>

#include "bide/study/sampling/design.hpp"
#include "bide/study/sampling/sobol_points.hpp"
#include "study/chance.hpp"
#include "support/near.hpp"

using namespace bide::study;
using bide::test::chance;
using bide::test::Near;

namespace {

using Row = Eigen::RowVectorXd;

template <class F>
std::vector<double> outputs(const Points& rows, F f) {
  std::vector<double> y;
  for (Eigen::Index k = 0; k < rows.rows(); ++k) y.push_back(f(Row(rows.row(k))));
  return y;
}

template <class F>
SobolIndices indices(std::size_t factors, const Groups& groups, std::size_t base, F f) {
  const Points rows = saltelli_rows(SobolPoints(2 * factors, chance(11)).first(base), groups);
  const auto found = sobol_indices(outputs(rows, f), groups.size(), {chance(12), 500, 0.99});
  REQUIRE(found);
  return *found;
}

// The analytic value lies in the 99 % interval, and the interval says something.
void check(const Index& index, double analytic, double widest) {
  CAPTURE(index.value);
  CAPTURE(analytic);
  CHECK(index.interval.low <= analytic);
  CHECK(analytic <= index.interval.high);
  CHECK(index.interval.high - index.interval.low < widest);
  CHECK(std::abs(index.value - analytic) < widest / 4);
}

// Ishigami & Homma (1990), a = 7, b = 0.1.
double ishigami(const Row& u) {
  const Row x = (2 * u.array() - 1) * std::numbers::pi;
  return std::sin(x(0)) + 7 * std::pow(std::sin(x(1)), 2) + 0.1 * std::pow(x(2), 4) * std::sin(x(0));
}

}  // namespace

TEST_CASE("Ishigami's function") {
  // y = sin x1 (1 + b x3^4) + a sin^2 x2 on [-pi, pi]. E sin^2 = 1/2, E x^4 = pi^4/5, E x^8 = pi^8/9:
  //   E(y | x1) - a/2 = sin x1 (1 + b pi^4/5)       V1  = (1 + b pi^4/5)^2 / 2
  //   E(y | x2) = a sin^2 x2                        V2  = a^2 Var sin^2 = a^2/8
  //   E(y | x3) is constant                         V3  = 0
  //   what is left of sin x1 (1 + b x3^4)           V13 = b^2 (pi^8/9 - pi^8/25) / 2 = 8 b^2 pi^8 / 225
  const double pi4 = std::pow(std::numbers::pi, 4), a = 7, b = 0.1;
  const double v1 = std::pow(1 + b * pi4 / 5, 2) / 2, v2 = a * a / 8, v13 = 8 * b * b * pi4 * pi4 / 225;
  const double v = v1 + v2 + v13;
  CHECK(v1 / v == Near(0.3139).epsilon(0.001));  // as commonly printed (from memory)
  CHECK(v2 / v == Near(0.4424).epsilon(0.001));
  CHECK((v1 + v13) / v == Near(0.5576).epsilon(0.001));

  const auto found = indices(3, each_alone(3), 4096, ishigami);
  CHECK(found.variance == Near(v).epsilon(0.02));
  check(found.groups[0].first, v1 / v, 0.12);
  check(found.groups[1].first, v2 / v, 0.12);
  check(found.groups[2].first, 0, 0.12);
  check(found.groups[0].total, (v1 + v13) / v, 0.12);
  check(found.groups[1].total, v2 / v, 0.12);
  check(found.groups[2].total, v13 / v, 0.12);

  // Grouped: x1 with x3 explain all but x2, alone and in total.
  const auto grouped = indices(3, {{0, 2}, {1}}, 4096, ishigami);
  check(grouped.groups[0].first, (v1 + v13) / v, 0.12);
  check(grouped.groups[0].total, (v1 + v13) / v, 0.12);
  check(grouped.groups[1].first, v2 / v, 0.12);
  check(grouped.groups[1].total, v2 / v, 0.12);
}

TEST_CASE("Sobol's g function") {
  // y = prod (|4 x - 2| + a_i) / (1 + a_i). Each factor has mean 1 and variance V_i = 1 / (3 (1 + a_i)^2), so
  // V = prod (1 + V_i) - 1, first V_i / V, total V_i prod_{j != i} (1 + V_j) / V.
  const std::vector<double> a{0, 1, 4.5, 9, 99, 99, 99, 99};
  const auto g = [&](const Row& x) {
    double y = 1;
    for (std::size_t i = 0; i < a.size(); ++i) {
      y *= (std::abs(4 * x(static_cast<Eigen::Index>(i)) - 2) + a[i]) / (1 + a[i]);
    }
    return y;
  };
  std::vector<double> part;
  double all = 1;
  for (const double ai : a) {
    part.push_back(1 / (3 * (1 + ai) * (1 + ai)));
    all *= 1 + part.back();
  }
  const double v = all - 1;
  CHECK(part[0] / v == Near(0.7162).epsilon(0.001));  // as commonly printed (from memory)
  const auto found = indices(8, each_alone(8), 4096, g);
  for (std::size_t i = 0; i < a.size(); ++i) {
    CAPTURE(i);
    check(found.groups[i].first, part[i] / v, 0.12);
    check(found.groups[i].total, part[i] * all / (1 + part[i]) / v, 0.12);
  }
}

namespace {

// Of intervals of 95 % around known indices, over many repeats: the share that covers them.
template <class F>
double covered(std::size_t factors, std::size_t base, bool sobol, const std::vector<double>& first,
               const std::vector<double>& total, F f) {
  constexpr std::uint64_t repeats = 60;
  std::size_t inside = 0, all = 0;
  for (std::uint64_t k = 0; k < repeats; ++k) {
    const UniformAt uniform = chance(100 + k);
    const Points pairs =
        sobol ? SobolPoints(2 * factors, uniform).first(base) : random_points(base, 2 * factors, uniform);
    const auto found = sobol_indices(outputs(saltelli_rows(pairs, each_alone(factors)), f), factors,
                                     {chance(1000 + k), 200, 0.95});
    for (std::size_t i = 0; i < factors; ++i) {
      const auto count = [&](const Index& index, double truth) {
        inside += index.interval.low <= truth && truth <= index.interval.high ? 1 : 0;
        ++all;
      };
      count(found->groups[i].first, first[i]);
      if (total[i] > 0.01)
        count(found->groups[i].total, total[i]);  // near 0 a share of squares lies above it
    }
  }
  return static_cast<double>(inside) / static_cast<double>(all);
}

}  // namespace

TEST_CASE("intervals of 95 % cover the analytic indices, with 256 base samples and with 2048") {
  const double pi4 = std::pow(std::numbers::pi, 4), a = 7, b = 0.1;
  const double v1 = std::pow(1 + b * pi4 / 5, 2) / 2, v2 = a * a / 8, v13 = 8 * b * b * pi4 * pi4 / 225;
  const double v = v1 + v2 + v13;
  const std::vector<double> first{v1 / v, v2 / v, 0}, total{(v1 + v13) / v, v2 / v, v13 / v};
  // g of three inputs, see below.
  const std::vector<double> g_a{0, 1, 4.5};
  double product = 1;
  for (const double each : g_a) product *= 1 + 1 / (3 * (1 + each) * (1 + each));
  std::vector<double> g_first, g_total;
  for (const double each : g_a) {
    const double part = 1 / (3 * (1 + each) * (1 + each));
    g_first.push_back(part / (product - 1));
    g_total.push_back(part * product / (1 + part) / (product - 1));
  }
  const auto g = [&](const Row& x) {
    double y = 1;
    for (std::size_t i = 0; i < g_a.size(); ++i)
      y *= (std::abs(4 * x(static_cast<Eigen::Index>(i)) - 2) + g_a[i]) / (1 + g_a[i]);
    return y;
  };
  for (const std::size_t base : {256U, 2048U}) {
    CAPTURE(base);
    // Independent points: as often as stated, but for the scatter of 60 repeats and 200 replicates.
    CHECK(covered(3, base, false, first, total, ishigami) == doctest::Approx(0.94).epsilon(0.04));
    CHECK(covered(3, base, false, g_first, g_total, g) == doctest::Approx(0.94).epsilon(0.04));
    // Sobol' points lie more evenly than the bootstrap knows: at least as often.
    CHECK(covered(3, base, true, first, total, ishigami) > 0.93);
    CHECK(covered(3, base, true, g_first, g_total, g) > 0.93);
  }
}

TEST_CASE("the same places give the same interval; other places another") {
  const Points rows = saltelli_rows(SobolPoints(6, chance(11)).first(128), each_alone(3));
  const auto y = outputs(rows, ishigami);
  const auto a = sobol_indices(y, 3, {chance(1), 200, 0.95}), b = sobol_indices(y, 3, {chance(1), 200, 0.95});
  const auto c = sobol_indices(y, 3, {chance(2), 200, 0.95});
  CHECK(a->groups[0].first.interval.low == b->groups[0].first.interval.low);
  CHECK(a->groups[0].first.interval.low != c->groups[0].first.interval.low);
  CHECK(a->groups[0].first.value == c->groups[0].first.value);
}

TEST_CASE("rows: A, B, then A with one group's columns from B") {
  Points pairs(1, 6);
  pairs << 1, 2, 3, 10, 20, 30;
  Points wanted(4, 3);
  wanted << 1, 2, 3, 10, 20, 30, 10, 2, 30, 1, 20, 3;
  CHECK(saltelli_rows(pairs, {{0, 2}, {1}}) == wanted);
  CHECK_THROWS_AS(saltelli_rows(pairs, {{3}}), std::invalid_argument);
  CHECK_THROWS_AS(saltelli_rows(pairs, {{0}, {0}}), std::invalid_argument);
  CHECK_THROWS_AS(saltelli_rows(pairs.leftCols(5), {{0}}), std::invalid_argument);
}

TEST_CASE("failed runs take their base sample out; an output that does not vary has no shares") {
  const Points rows = saltelli_rows(SobolPoints(4, chance(3)).first(64), each_alone(2));
  const auto sum = [](const Row& x) { return x(0) + 2 * x(1); };
  auto y = outputs(rows, sum);
  const auto whole = sobol_indices({y.data() + 4, y.size() - 4}, 2, {chance(4), 50, 0.95});
  y[2] = std::numeric_limits<double>::infinity();
  const auto cut = sobol_indices(y, 2, {chance(4), 50, 0.95});
  REQUIRE(cut);
  CHECK(cut->left_out == 1);
  CHECK(cut->base_samples == 63);
  CHECK(cut->groups[0].first.value == whole->groups[0].first.value);
  CHECK_FALSE(sobol_indices(std::vector<double>(40, 7.0), 2, {chance(4), 50, 0.95}));
  CHECK_THROWS_AS(sobol_indices(std::vector<double>(41, 7.0), 2, {chance(4), 50, 0.95}),
                  std::invalid_argument);
}
