// Confidence intervals of a share and of a quantile, and the number of cases that a wanted interval needs.
#pragma once

#include <cstddef>
#include <optional>

#include "bide/study/statistics/bootstrap.hpp"

namespace bide::study {

// Half-width of the two-sided normal interval.
// @param confidence (0, 1); else throws std::invalid_argument
// @return standard errors; 1.96 for 0.95
double normal_reach(double confidence);

// Interval of a share after Wilson (1927): the shares that a score test does not reject. It stays within
// [0, 1] and has a width even when hits are none or all. Throws std::invalid_argument without cases.
// @param hits       number of cases that have the property, [0, cases]
// @param cases      number of cases, at least 1
// @param confidence (0, 1)
Interval wilson(std::size_t hits, std::size_t cases, double confidence);

// A share of cases with its interval.
struct Chance {
  std::size_t count = 0;
  double share = 0;   // of the cases, [0, 1]
  Interval interval;  // Wilson's
};
// @param hits, cases, confidence as wilson()
Chance chance_of(std::size_t hits, std::size_t cases, double confidence);

// The chance of a split as uneven as this, or more, if both sides are as likely: the exact sign test (McNemar
// 1947, Psychometrika 12:153, on pairs that differ), two-sided.
// @param more, fewer pairs that differ to either side
// @return (0, 1]
double sign_test(std::size_t more, std::size_t fewer);

// Exact one-sided lower bound of a share (Clopper & Pearson 1934, Biometrika 26:404): whatever the share is,
// the bound lies above it in at most 1 - confidence of all series of cases. Throws as wilson().
// @param hits       number of cases that have the property, [0, cases]
// @param cases      number of cases, at least 1
// @param confidence (0, 1)
double least_share(std::size_t hits, std::size_t cases, double confidence);

// Most cases that may lack the property while least_share() is still at least `share`. Empty: too few cases,
// even if none lacks it.
// @param cases      number of cases, at least 1
// @param share      wanted, (0, 1)
// @param confidence (0, 1)
std::optional<std::size_t> most_misses(std::size_t cases, double share, double confidence);

// The smallest rank by which at least a share of the cases is reached.
// @param p     share, [0, 1]
// @param cases number of cases, at least 1
// @return rank, [1, cases]
std::size_t rank_of(double p, std::size_t cases);

// Ranks of an interval's ends, from 1. Empty: too few cases for that end.
struct Ranks {
  std::optional<std::size_t> low;
  std::optional<std::size_t> high;
};
// Order statistics that enclose the p-quantile of the population with at least the wanted confidence,
// whatever its distribution (Thompson 1936; the chance that rank r lies below the quantile is binomial).
// @param cases      number of cases
// @param p          share below the quantile, (0, 1)
// @param confidence (0, 1)
Ranks quantile_ranks(std::size_t cases, double p, double confidence);

// Fewest cases for which quantile_ranks() gives both ranks: (1 - p)^n and p^n must each be at most
// (1 - confidence) / 2.
// @param p          share below the quantile, (0, 1)
// @param confidence (0, 1)
std::size_t cases_for_quantile(double p, double confidence);

// Fewest cases for which Wilson's interval is nowhere wider than wanted (it is widest at a share of 0.5).
// @param half_width half of the width wanted, as a share, (0, 1)
// @param confidence (0, 1)
std::size_t cases_for_share(double half_width, double confidence);

}  // namespace bide::study
