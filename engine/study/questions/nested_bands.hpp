// What nested draws say: bands of cases inside bands of possible truths (nested.hpp).
#pragma once

#include <cstdint>
#include <vector>

namespace bide::study {

struct NestedBands {
  std::uint64_t outer = 0, inner = 0;  // number of outer draws, and of cases in each
  // Time until the first person is no longer able, within the horizon, h. truths: 10 and 90 % quantiles over
  // outer draws of the median of cases. cases: 10 and 90 % quantiles over cases, averaged over outer draws.
  double truths_low = 0, truths_high = 0, cases_low = 0, cases_high = 0;
  double horizon_h = 0;  // a value equal to it means: or beyond
};

// Computes the bands. Throws std::invalid_argument unless there are outer times inner values,
// or when every sample failed.
// @param first_able_h of every sample in order, h; infinite beyond the horizon, not a number when it failed
// @param outer, inner number of outer draws, and of cases in each
// @param horizon_h    end of every sample, h
NestedBands nested_bands(const std::vector<float>& first_able_h, std::uint64_t outer, std::uint64_t inner,
                         double horizon_h);

}  // namespace bide::study
