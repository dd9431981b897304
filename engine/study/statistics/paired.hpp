// Two options under the same futures: the same weather, people and failures, sample by sample. What they
// share cancels in the difference, so that far fewer samples are needed than in two separate studies.
//
// Both are simulated to one horizon. When one option lasts beyond it and the other does not, the first lasts
// longer, by at least the rest of the horizon. When both do, they are not distinguishable within the horizon;
// this is not a tie, where both end at the same time. Differences are of the time within the horizon; for the
// samples that `beyond` counts the true difference is not known.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

#include "bide/study/statistics/proportion.hpp"

namespace bide::study {

// A time that may lie beyond the time simulated (censored on the right).
struct Observed {
  double time = 0;    // of the end, or, where it had not ended, of the end of the simulation; any unit
  bool ended = true;  // false: it had not ended by `time`
};

struct Paired {
  std::size_t samples = 0;
  Chance second_longer;  // the second option lasted longer
  Chance first_longer;
  Chance same;               // ended at the same time
  Chance indistinguishable;  // not distinguishable: both lasted beyond the horizon
  std::size_t beyond = 0;    // samples in which at least one lasted beyond it

  // Second minus first, of the time within the horizon, in the unit of the times.
  double median_difference = 0;
  std::optional<double> median_low;  // order statistics; empty when there are too few samples
  std::optional<double> median_high;
  std::optional<double> median_where_apart;  // of the samples in which one lasted longer; empty: none
  double mean_difference = 0;
  double mean_standard_error = 0;
  Interval mean_interval;  // normal
};

// Compares two options sample by sample. Throws std::invalid_argument for fewer than two samples, unequal
// numbers, or a case that neither ended by the horizon nor was simulated up to it.
// @param first, second by sample; sample k of both is the same future
// @param horizon       end of the simulations, in the unit of the times
// @param confidence    of all intervals, (0, 1)
Paired compare_paired(std::span<const Observed> first, std::span<const Observed> second, double horizon,
                      double confidence);

}  // namespace bide::study
