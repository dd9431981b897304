#include "bide/study/statistics/proportion.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <stdexcept>

#include "study/chance.hpp"
#include "support/near.hpp"

using namespace bide::study;
using bide::test::chance;
using bide::test::Near;

TEST_CASE("Wilson's interval: the four examples of Newcombe (1998), table I (from memory)") {
  struct Printed {
    std::size_t hits, cases;
    double low, high;
  };
  for (const auto& p : {Printed{81, 263, 0.2553, 0.3662},
                        {15, 148, 0.0624, 0.1605},
                        {0, 20, 0, 0.1611},
                        {1, 29, 0.0061, 0.1718}}) {
    CAPTURE(p.hits);
    const Interval found = wilson(p.hits, p.cases, 0.95);
    CHECK(std::abs(found.low - p.low) < 0.00006);
    CHECK(std::abs(found.high - p.high) < 0.00006);
    const Interval mirrored = wilson(p.cases - p.hits, p.cases, 0.95);
    CHECK(mirrored.high == Near(1 - found.low));
    CHECK(mirrored.low == Near(1 - found.high));
  }
  CHECK_THROWS_AS(wilson(0, 0, 0.95), std::invalid_argument);
  CHECK_THROWS_AS(wilson(3, 2, 0.95), std::invalid_argument);
}

TEST_CASE("order statistics around a quantile") {
  // Median of 10: P(at most 1 below) = 11/1024 = 0.0107, at most 2: 56/1024 = 0.0547 > 0.025. Ranks 2 and 9,
  // as in printed tables of the sign test (Conover 1999, table A3, from memory).
  Ranks found = quantile_ranks(10, 0.5, 0.95);
  CHECK(found.low == 2);
  CHECK(found.high == 9);
  // Median of 5: 1/32 > 0.025 on either side, of 6: 1/64.
  CHECK_FALSE(quantile_ranks(5, 0.5, 0.95).low);
  CHECK_FALSE(quantile_ranks(5, 0.5, 0.95).high);
  CHECK(quantile_ranks(6, 0.5, 0.95).low == 1);
  CHECK(quantile_ranks(6, 0.5, 0.95).high == 6);
  // 5 % quantile of 59, at 90 %: 0.95^59 = 0.0485 (the classical 59), so its lowest value lies below it; of
  // 58: 0.0511.
  CHECK(quantile_ranks(59, 0.05, 0.9).low == 1);
  CHECK_FALSE(quantile_ranks(58, 0.05, 0.9).low);
  CHECK(quantile_ranks(59, 0.95, 0.9).high == 59);
  CHECK_FALSE(quantile_ranks(0, 0.5, 0.95).low);
}

TEST_CASE("order statistics cover the quantile as often as they say") {
  // 10 % quantile of 100 uniform numbers, 90 %: coverage at least 0.9, and not by much more than one rank's
  // worth (binomial(100, 0.1) has no value above 0.132).
  const Ranks ranks = quantile_ranks(100, 0.1, 0.9);
  REQUIRE((ranks.low && ranks.high));
  int covered = 0;
  constexpr int repeats = 3000;
  for (std::uint32_t r = 0; r < repeats; ++r) {
    // X_(low) <= 0.1 <= X_(high): at least `low` at or below, fewer than `high` below.
    std::size_t below = 0;
    for (std::uint32_t i = 0; i < 100; ++i) below += chance(5)(r, i, 0) < 0.1 ? 1 : 0;
    covered += below >= *ranks.low && below < *ranks.high;
  }
  CHECK(covered > 0.89 * repeats);
  CHECK(covered < 0.96 * repeats);
}

TEST_CASE("how many cases a statement takes") {
  CHECK(cases_for_quantile(0.5, 0.95) == 6);
  CHECK(cases_for_quantile(0.05, 0.9) == 59);
  CHECK(cases_for_quantile(0.95, 0.95) == 72);  // 0.95^72 = 0.0249
  for (const double p : {0.01, 0.05, 0.3, 0.5, 0.9}) {
    const std::size_t n = cases_for_quantile(p, 0.95);
    const Ranks enough = quantile_ranks(n, p, 0.95), short_of = quantile_ranks(n - 1, p, 0.95);
    CHECK((enough.low && enough.high));
    CHECK_FALSE((short_of.low && short_of.high));
  }
  // Half width 0.05 at 95 %: 1.95996^2 (100 - 1) = 380.3.
  CHECK(cases_for_share(0.05, 0.95) == 381);
  const Interval widest = wilson(190, 380, 0.95);
  CHECK(widest.high - widest.low > 0.1);
  const Interval narrow = wilson(191, 382, 0.95);
  CHECK(narrow.high - narrow.low < 0.1);
  CHECK_THROWS_AS(cases_for_quantile(1, 0.95), std::invalid_argument);
}

// Exact arithmetic of the binomial distribution: with no miss in n cases the bound is 0.05^(1/n), and in
// general the 5th of a hundred of a beta distribution (Clopper & Pearson 1934).
TEST_CASE("the exact lower bound of a share, and how many misses it bears") {
  CHECK(least_share(30, 30, 0.95) == doctest::Approx(0.904966).epsilon(1e-5));
  CHECK(least_share(59, 59, 0.95) == doctest::Approx(std::pow(0.05, 1.0 / 59)).epsilon(1e-9));
  CHECK(least_share(95, 100, 0.95) == doctest::Approx(0.897747).epsilon(1e-5));
  CHECK(least_share(960, 1000, 0.95) == doctest::Approx(0.948247).epsilon(1e-5));
  CHECK(least_share(0, 10, 0.95) == 0);
  CHECK(least_share(299, 299, 0.95) == doctest::Approx(0.990031).epsilon(1e-5));
  CHECK(least_share(98, 100, 0.95) == doctest::Approx(0.938381).epsilon(1e-5));
  CHECK(least_share(990, 1000, 0.95) == doctest::Approx(0.983097).epsilon(1e-5));
  CHECK(least_share(4840, 5000, 0.95) == doctest::Approx(0.963598).epsilon(1e-5));
  CHECK(least_share(9540, 10000, 0.95) == doctest::Approx(0.950405).epsilon(1e-5));
  CHECK_THROWS_AS(least_share(2, 1, 0.95), std::invalid_argument);
}

// The same arithmetic, two tables of it.
TEST_CASE("cases that a share takes with so many misses, and misses that so many cases bear") {
  struct Least {
    double share, sure;
    std::size_t cases[4];
  };
  constexpr std::size_t misses[] = {0, 1, 2, 5};
  constexpr Least least[] = {{0.90, 0.95, {29, 46, 61, 103}},     {0.95, 0.95, {59, 93, 124, 208}},
                             {0.99, 0.95, {299, 473, 628, 1049}}, {0.90, 0.99, {44, 64, 81, 127}},
                             {0.95, 0.99, {90, 130, 165, 259}},   {0.99, 0.99, {459, 662, 838, 1307}}};
  for (const Least& row : least)
    for (std::size_t i = 0; i < std::size(misses); ++i) {
      CAPTURE(row.share);
      CAPTURE(misses[i]);
      const auto enough = most_misses(row.cases[i], row.share, row.sure),
                 short_of = most_misses(row.cases[i] - 1, row.share, row.sure);
      CHECK((enough && *enough >= misses[i]));
      CHECK((!short_of || *short_of < misses[i]));
    }
  constexpr std::size_t most[][4] = {
      {500, 38, 16, 1}, {1000, 84, 38, 4}, {2000, 177, 83, 12}, {5000, 464, 224, 38}, {10000, 950, 463, 83}};
  for (const auto& row : most)
    for (std::size_t i = 0; i < 3; ++i)
      CHECK(most_misses(row[0], std::array{0.90, 0.95, 0.99}[i], 0.95) == row[i + 1]);
}
