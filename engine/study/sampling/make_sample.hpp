// From what was drawn to a sample ready to march: the ordinary validation, the weather, the compiled numbers.
//
// States: none but a cache that may be shared, so that samples may be made by several threads at once. A draw
// that the validation or the weather refuses is not made, with the first reason of all that were found.
#pragma once

#include <cstdint>
#include <variant>
#include <vector>

#include "bide/study/ensemble/ensemble.hpp"
#include "bide/study/sampling/sampler.hpp"
#include "bide/weather/cache.hpp"

namespace bide::study {

// The cache is that of everything made together; samples do not depend on what it holds.
std::variant<Sample, NotMade> make_sample(const scenario::Validated& scenario, weather::Cache& cache);

// What else is read off a sample once it is made; called from several threads at once.
using Made = std::function<void(std::uint64_t index, const Drawn& drawn, const Sample& sample)>;

// Sample k as the sampler draws it. Keeps a reference to the sampler, and a cache of weather of its own.
MakeSample drawing(const Sampler& sampler, std::uint64_t seed, Made made = {});

}  // namespace bide::study
