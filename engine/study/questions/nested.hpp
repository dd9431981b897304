// Two kinds of not knowing, one inside the other: people, weather and failures differ from one real case to
// the next (variety); numbers that nobody has measured are the same in every case (ignorance). Each outer
// draw is one possible truth about the unmeasured, each inner one a case under it.
#pragma once

#include <cstdint>
#include <vector>

#include "bide/study/sampling/make_sample.hpp"

namespace bide::study {

// Sample number outer * inner_count + inner takes its ignorance from the outer draw and its variety from its
// own. Another key than that of the plain samples, so the two are independent. Keeps a reference to the
// sampler.
MakeSample nested_drawing(const Sampler& sampler, std::uint64_t seed, std::uint64_t inner_count);

// Whether a sampler has both kinds.
bool is_nested(const Sampler& sampler);

struct NestedBands {
  std::uint64_t outer = 0, inner = 0;  // how many
  // Of the first person's able until within the horizon, h. Over possible truths: the middle eight tenths of
  // the median of cases. Over cases: the middle eight tenths, averaged over truths.
  double truths_low = 0, truths_high = 0, cases_low = 0, cases_high = 0;
  double horizon_h = 0;  // at it: or beyond
};

// `first_able_h` of every sample in order, infinite beyond the horizon, not a number when it failed. Throws
// std::invalid_argument unless it holds outer times inner values.
NestedBands nested_bands(const std::vector<float>& first_able_h, std::uint64_t outer, std::uint64_t inner,
                         double horizon_h);

}  // namespace bide::study
