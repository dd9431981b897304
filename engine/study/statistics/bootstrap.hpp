// Percentile bootstrap (Efron 1979): the cases are resampled with replacement, and the spread of a statistic
// over the replicates stands for its uncertainty. The draws of replicate r depend on r alone. For few cases
// (below some thirty) such intervals are too narrow: common practice, no source.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "bide/study/ensemble/progress.hpp"
#include "bide/study/sampling/draws.hpp"

namespace bide::study {

struct Interval {
  double low = 0;
  double high = 0;
};

// Of every interval an answer states: the share of repeats inside it.
inline constexpr double interval_confidence = 0.95;

struct Bootstrap {
  UniformAt uniform;                        // where the random numbers come from
  std::size_t replicates = 1000;            // at least 1
  double confidence = interval_confidence;  // (0, 1)
  Look look = {};                           // between replicates
};

// The cases of one replicate, resampled with replacement.
// @param cases     number of cases
// @param replicate number of the replicate, from 0
// @param uniform   where the random numbers come from
// @return places in [0, cases), as many as there are cases
std::vector<std::size_t> drawn_again(std::size_t cases, std::size_t replicate, const UniformAt& uniform);

// The two order statistics that a quantile lies between.
struct RanksBeside {
  std::size_t below = 1, above = 1;  // ranks, from 1
  double way = 0;                    // from the one below to the one above, [0, 1]
};
// Linear interpolation, at (n - 1) p from the lowest value (type 7 of Hyndman & Fan 1996). Throws
// std::invalid_argument without cases or for p outside [0, 1].
// @param p     share of the cases, [0, 1]
// @param cases number of cases, at least 1
RanksBeside ranks_beside(double p, std::size_t cases);
// The quantile.
// @param below, above values at both ranks, in the unit of the quantile
inline double between(const RanksBeside& ranks, double below, double above) {
  return below + ranks.way * (above - below);
}

// Quantile of sorted values; throws as ranks_beside().
// @param ascending the values, at least one
// @param p         share of the values, [0, 1]
// @return in the unit of the values
double quantile_of_sorted(std::span<const double> ascending, double p);

// Percentile interval of a statistic. Throws std::invalid_argument without replicates.
// @param replicates the statistic of each replicate, in any order
// @param confidence share of the replicates inside the interval, (0, 1)
Interval middle(std::vector<double> replicates, double confidence);

}  // namespace bide::study
