// Expected variance reduction: by how much the spread of an output would shrink, on average, if one input
// were known. Computed from existing samples: they are sorted into bins of similar input, and the spread
// within the bins is compared with the spread of all.
//
// The expected variance reduction is the first-order Sobol' index by binning (Plischke, Borgonovo & Smith
// 2013, section 2, from memory), with the unbiased variance within bins, so that an input without influence
// has 0 on average and not the number of bins over the number of samples. The 5 to 95 % width has no such
// formula; there the bins are compared with bins of the same sizes filled at random. Both can come out
// slightly below 0.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

#include "bide/study/statistics/bootstrap.hpp"

namespace bide::study {

struct VarianceReduction {
  double of_variance = 0;         // expected variance reduction, 1 - E[Var(y | x)] / Var(y)
  Interval of_variance_interval;  // percentile bootstrap, bins kept
  double of_width = 0;            // the same for the distance from the 5 to the 95 % quantile
  std::size_t bins = 0;
};

// Expected reduction of the spread of the output if the input were known. There are at most 20 bins of equal
// size, each of at least 50 samples; an input with no more values than there are bins (a kind of raft, yes or
// no) has one bin per value. Throws std::invalid_argument for unequal lengths or numbers that are not finite:
// the caller decides about failed samples and times beyond the horizon, and says what it did.
// @param input     by sample, in any unit
// @param output    by sample, in any unit
// @param bootstrap replicates and confidence of the interval
// @return empty with too few samples for two bins, an input of a single value, or a constant output
std::optional<VarianceReduction> expected_variance_reduction(std::span<const double> input,
                                                             std::span<const double> output,
                                                             const Bootstrap& bootstrap);

struct RankCorrelation {
  double value = 0;  // [-1, 1]
  Interval interval;
};
// Rank correlation of Spearman (1904), ties sharing their mean rank: direction and monotonicity of an
// influence, for plain Monte Carlo. Interval on Fisher's scale with the variance (1 + r^2/2) / (n - 3) of
// Bonett & Wright (2000). Throws as expected_variance_reduction().
// @param x, y       by sample, in any unit
// @param confidence of the interval, (0, 1)
// @return empty when x or y does not vary, or with fewer than four samples
std::optional<RankCorrelation> rank_correlation(std::span<const double> x, std::span<const double> y,
                                                double confidence);

}  // namespace bide::study
