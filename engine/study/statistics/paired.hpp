// Two options under the same futures: the same weather, people and failures, sample by sample. What they
// share cancels in the difference, so that far fewer samples tell them apart than two separate studies would
// need.
//
// Both were watched to one horizon. When one option ran beyond it and the other did not, the first lasted
// longer, by at least the rest of the horizon. When both did, they are not told apart within the horizon:
// this is kept apart from a tie, where both ended at the same time. Differences are of the time within the
// horizon; where `beyond` counts a sample they are less than, or as much as, what lay beyond it may make of
// them.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

#include "bide/study/statistics/bootstrap.hpp"

namespace bide::study {

// A time that may lie beyond the time simulated: it is then no number, all that is known is that nothing had
// ended by `time`, where watching stopped.
struct Observed {
  double time = 0;
  bool ended = true;
};

struct Share {
  std::size_t count = 0;
  double value = 0;
  Interval interval;  // Wilson's
};

struct Paired {
  std::size_t samples = 0;
  Share second_longer;  // the second option lasted longer
  Share first_longer;
  Share same;              // ended at the same time
  Share not_told_apart;    // both ran beyond the horizon
  std::size_t beyond = 0;  // samples in which at least one ran beyond it

  // Second minus first, of the time within the horizon.
  double median_difference = 0;
  std::optional<double> median_low;  // order statistics; left out when there are too few samples
  std::optional<double> median_high;
  std::optional<double> median_where_apart;  // of the samples in which one lasted longer; none: left out
  double mean_difference = 0;
  double mean_standard_error = 0;
  Interval mean_interval;  // normal
};

// Sample k of both is the same future. Throws std::invalid_argument for fewer than two samples, unequal
// numbers, or a case that neither ended by the horizon nor was watched up to it.
Paired compare_paired(std::span<const Observed> first, std::span<const Observed> second, double horizon,
                      double confidence);

}  // namespace bide::study
