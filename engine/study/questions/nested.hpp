// Nested sampling of two kinds of uncertainty. Aleatory: people, weather and failures differ from one real
// case to the next. Epistemic: unmeasured numbers are the same in every case. Each outer draw is one possible
// set of the unmeasured numbers, each inner draw a case with that set.
#pragma once

#include <cstdint>

#include "bide/study/questions/nested_bands.hpp"
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

}  // namespace bide::study
