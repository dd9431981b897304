// Nested sampling of two kinds of uncertainty. Aleatory: people, weather and failures differ from one real
// case to the next. Epistemic: unmeasured numbers are the same in every case. Each outer draw is one possible
// set of the unmeasured numbers, each inner draw a case with that set.
#pragma once

#include <cstdint>
#include <vector>

#include "bide/study/sampling/make_sample.hpp"

namespace bide::study {

// A function that makes sample outer * inner_count + inner: its epistemic inputs come from the outer draw,
// its aleatory inputs from its own. The key differs from that of the plain samples, so the two are
// independent.
// @param sampler     must outlive the function returned
// @param seed        of the study
// @param inner_count cases per outer draw, at least 1
MakeSample nested_drawing(const Sampler& sampler, std::uint64_t seed, std::uint64_t inner_count);

// Whether a sampler has both kinds.
bool is_nested(const Sampler& sampler);

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
