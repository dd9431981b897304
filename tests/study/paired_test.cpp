#include "bide/study/statistics/paired.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <stdexcept>

#include "study/chance.hpp"
#include "support/near.hpp"

using namespace bide::study;
using bide::test::chance;
using bide::test::Near;

TEST_CASE("six futures by hand") {
  // Horizon 10. Differences second - first within it: 1, 0, -2, 0, -5, 6: median 0, mean 0, squares 66.
  const std::vector<Observed> first{{1, true}, {2, true}, {3, true}, {10, false}, {10, false}, {4, true}};
  const std::vector<Observed> second{{2, true}, {2, true}, {1, true}, {10, false}, {5, true}, {10, false}};
  const Paired found = compare_paired(first, second, 10, 0.95);
  CHECK(found.second_longer.count == 2);
  CHECK(found.first_longer.count == 2);
  CHECK(found.same.count == 1);
  CHECK(found.indistinguishable.count == 1);
  CHECK(found.beyond == 3);
  CHECK(found.median_difference == 0);
  CHECK(found.median_low == -5);  // of six the median lies within all of them: 2 / 64 outside
  CHECK(found.median_high == 6);
  CHECK(*found.median_where_apart == Near(-0.5));  // of -5, -2, 1, 6
  CHECK(found.mean_difference == Near(0));
  CHECK(found.mean_standard_error == Near(std::sqrt(66.0 / 5 / 6)));
  // Wilson for 2 of 6: (1/3 + 0.32012 -+ 1.95996 sqrt(1/27 + 0.026677)) / 1.64024 = 0.0968 and 0.7000.
  CHECK(std::abs(found.second_longer.interval.low - 0.0968) < 0.0002);
  CHECK(std::abs(found.second_longer.interval.high - 0.7000) < 0.0002);

  const Paired swapped = compare_paired(second, first, 10, 0.95);
  CHECK(swapped.first_longer.count == found.second_longer.count);
  CHECK(swapped.median_low == -6);
  // Ended exactly at the horizon is shorter than beyond it.
  const std::vector<Observed> at{{10, true}, {10, true}}, past{{10, false}, {10, true}};
  const Paired edge = compare_paired(at, past, 10, 0.95);
  CHECK(edge.second_longer.count == 1);
  CHECK(edge.same.count == 1);
  CHECK_FALSE(edge.median_low);
}

TEST_CASE("an option against itself gives exactly nothing") {
  std::vector<Observed> cases;
  for (std::uint32_t k = 0; k < 300; ++k) {
    const double t = 100 * chance(1)(k, 0, 0);
    cases.push_back(t < 72 ? Observed{t, true} : Observed{72, false});
  }
  const Paired found = compare_paired(cases, cases, 72, 0.95);
  CHECK(found.mean_difference == 0);
  CHECK(found.mean_interval.low == 0);
  CHECK(found.mean_interval.high == 0);
  CHECK(found.median_low == 0.0);
  CHECK_FALSE(found.median_where_apart);
  CHECK(found.median_high == 0.0);
  CHECK(found.second_longer.count + found.first_longer.count == 0);
  CHECK(found.same.count + found.indistinguishable.count == 300);
  CHECK(found.indistinguishable.count == found.beyond);
}

TEST_CASE("common futures tell apart what separate ones do not") {
  // first = 20 + 60 c, second = first + 2 + 4 e, c and e uniform: the mean difference is 4, its paired
  // standard error 4 / sqrt(12 n) = 0.0816 (n = 200); unpaired sqrt(2 * 3600 / 12 / n) = 1.73, so that 4 is
  // hardly seen.
  std::vector<Observed> first, second;
  for (std::uint32_t k = 0; k < 200; ++k) {
    const double a = 20 + 60 * chance(2)(k, 0, 0);
    first.push_back({a, true});
    second.push_back({a + 2 + 4 * chance(2)(k, 1, 0), true});
  }
  const Paired found = compare_paired(first, second, 200, 0.95);
  CHECK(found.mean_interval.low < 4);
  CHECK(found.mean_interval.high > 4);
  CHECK(found.mean_standard_error == Near(0.0816).epsilon(0.1));
  CHECK(*found.median_low < 4);
  CHECK(*found.median_high > 4);
  const double unpaired = std::sqrt(2 * 60.0 * 60.0 / 12 / 200);
  CHECK(found.mean_standard_error < unpaired / 10);
  CHECK(*found.median_high - *found.median_low < unpaired);
}

TEST_CASE("pairs that are none are refused") {
  const std::vector<Observed> two{{1, true}, {2, true}}, three{{1, true}, {2, true}, {3, true}};
  const std::vector<Observed> lost{{1, true}, {5, false}};
  CHECK_THROWS_AS(compare_paired(two, three, 10, 0.95), std::invalid_argument);
  CHECK_THROWS_AS(compare_paired(two, lost, 10, 0.95), std::invalid_argument);
  CHECK_THROWS_AS(compare_paired({}, {}, 10, 0.95), std::invalid_argument);
}
