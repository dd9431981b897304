// Percentile bootstrap (Efron 1979): the cases are drawn again with replacement, and the spread of a
// statistic over such draws stands for its uncertainty. The draws of replicate r depend on r alone. For few
// cases (below some thirty) such intervals are too narrow: common practice, no source.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "bide/study/sampling/draws.hpp"

namespace bide::study {

struct Interval {
  double low = 0;
  double high = 0;
};

struct Bootstrap {
  UniformAt uniform;
  std::size_t replicates = 1000;
  double confidence = 0.95;
};

// The cases of one replicate: as many as there are, with replacement.
std::vector<std::size_t> drawn_again(std::size_t cases, std::size_t replicate, const UniformAt& uniform);

// Between which order statistics a quantile lies: linear, at (n - 1) p from the lowest (type 7 of Hyndman &
// Fan 1996). Ranks count from 1. Throws std::invalid_argument without cases or for a share not from 0 to 1.
struct RanksBeside {
  std::size_t below = 1, above = 1;
  double way = 0;  // from the one below to the one above, 0 to 1
};
RanksBeside ranks_beside(double p, std::size_t cases);
inline double between(const RanksBeside& ranks, double below, double above) {
  return below + ranks.way * (above - below);
}

// Values ascend.
double quantile_of_sorted(std::span<const double> ascending, double p);

// The middle `confidence` of the replicates' values. Throws std::invalid_argument without replicates.
Interval middle(std::vector<double> replicates, double confidence);

}  // namespace bide::study
