// Which unknown to ask for first: how much narrower the spread of an output would be, on average over the
// answers, if one input were known. Read off samples that exist already: they are put into bins of like
// input, and the spread within the bins is compared with the whole.
//
// The share of variance is the first Sobol' index by binning (Plischke, Borgonovo & Smith 2013, section 2,
// from memory), with the unbiased variance within bins, so that an input without any bearing shows 0 on
// average and not the number of bins over the number of samples. The 5 to 95 % width has no such formula;
// there the bins are compared with bins of the same sizes filled at random. Both can come out slightly below
// 0.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

#include "bide/study/statistics/bootstrap.hpp"

namespace bide::study {

struct Narrowing {
  double of_variance = 0;         // share of the variance expected to go: 1 - E[Var(y | x)] / Var(y)
  Interval of_variance_interval;  // percentile bootstrap, bins kept
  double of_width = 0;            // share of the distance from the 5 to the 95 % quantile expected to go
  std::size_t bins = 0;
};

// Bins hold like numbers of samples, at least 50 and at most 20 bins; an input with no more values than there
// are bins (a kind of raft, yes or no) has one bin per value. Left out when there are too few samples for two
// bins, the input takes one value only, or the output does not vary. Throws std::invalid_argument for unequal
// lengths or numbers that are not finite: what to do with failed samples and with times beyond the horizon is
// for the caller to decide and to say.
std::optional<Narrowing> expected_narrowing(std::span<const double> input, std::span<const double> output,
                                            const Bootstrap& bootstrap);

// Rank correlation of Spearman (1904), ties sharing their mean rank: the direction and steadiness of an
// influence, for plain Monte Carlo. Interval on Fisher's scale with the variance (1 + r^2/2) / (n - 3) of
// Bonett & Wright (2000). Left out when either does not vary, or with fewer than four samples. Throws as
// above.
struct RankCorrelation {
  double value = 0;
  Interval interval;
};
std::optional<RankCorrelation> rank_correlation(std::span<const double> x, std::span<const double> y,
                                                double confidence);

}  // namespace bide::study
