// What a number of cases can say about a share and about a quantile, and how many cases a wanted statement
// takes.
#pragma once

#include <cstddef>
#include <optional>

#include "bide/study/statistics/bootstrap.hpp"

namespace bide::study {

// How far the two-sided normal interval reaches, in standard errors: 1.96 for 0.95.
double normal_reach(double confidence);

// Wilson (1927): the shares that a score test does not reject, given `hits` among `cases`. Stays within [0,
// 1] and is not empty when hits are none or all. Throws std::invalid_argument without cases.
Interval wilson(std::size_t hits, std::size_t cases, double confidence);

// The smallest rank, from 1, by which at least the share p of the cases is reached.
std::size_t rank_of(double p, std::size_t cases);

// Order statistics that enclose the p-quantile of the population with at least the wanted confidence,
// whatever its distribution (Thompson 1936; the chance that rank r lies below the quantile is binomial).
// Ranks count from 1. A rank that the number of cases cannot give is left out: nothing can then be said on
// that side.
struct Ranks {
  std::optional<std::size_t> low;
  std::optional<std::size_t> high;
};
Ranks quantile_ranks(std::size_t cases, double p, double confidence);

// Fewest cases for which quantile_ranks gives both ranks. From (1 - p)^n and p^n, each at most half of what
// the confidence leaves over.
std::size_t cases_for_quantile(double p, double confidence);

// Fewest cases for which Wilson's interval is nowhere wider than `half_width` to either side (it is widest at
// one half).
std::size_t cases_for_share(double half_width, double confidence);

}  // namespace bide::study
