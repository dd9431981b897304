// Makes a sample ready to march from what was drawn: validation, weather, compiled numbers.
//
// States: none but a cache that may be shared, so that samples may be made by several threads at once. Where
// the validation or the weather refuses a draw, no sample is made and the first reason found is given.
#pragma once

#include <cstdint>
#include <variant>
#include <vector>

#include "bide/study/ensemble/ensemble.hpp"
#include "bide/study/sampling/sampler.hpp"
#include "bide/weather/cache.hpp"

namespace bide::study {

// Makes one sample.
// @param scenario the drawn scenario, as the validation left it
// @param cache    shared by all samples made together; a sample does not depend on its content
std::variant<Sample, NotMade> make_sample(const scenario::Validated& scenario, weather::Cache& cache);

// Called for each sample made, from several threads at once.
using Made = std::function<void(std::uint64_t index, const Drawn& drawn, Sample& sample)>;

// A function that makes sample k as the sampler draws it. It keeps a reference to the sampler and has its own
// weather cache.
// @param sampler must outlive the function returned
// @param seed    of the study
// @param made    called for each sample made; may be empty
MakeSample drawing(const Sampler& sampler, std::uint64_t seed, Made made = {});

}  // namespace bide::study
