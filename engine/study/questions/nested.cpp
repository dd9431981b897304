#include "bide/study/questions/nested.hpp"

#include <algorithm>
#include <cmath>
#include <memory>
#include <stdexcept>

#include "bide/study/statistics/bootstrap.hpp"

namespace bide::study {

namespace {

constexpr std::uint64_t other_key = 0x9e3779b97f4a7c15;  // any constant: the golden ratio's bits
constexpr double low_tenth = 0.1, high_tenth = 0.9, half = 0.5;

}  // namespace

bool is_nested(const Sampler& sampler) {
  const auto has = [&](FactorKind kind) {
    return std::any_of(sampler.factors().begin(), sampler.factors().end(),
                       [&](const Factor& f) { return f.kind == kind; });
  };
  return has(FactorKind::aleatory) && has(FactorKind::epistemic);
}

MakeSample nested_drawing(const Sampler& sampler, std::uint64_t seed, std::uint64_t inner_count) {
  return [&sampler, key = seed ^ other_key, inner_count,
          cache = std::make_shared<weather::Cache>()](std::uint64_t k) {
    std::vector<double> point = sampler.point(key, k);
    const std::vector<double> truth = sampler.point(~key, k / inner_count);
    for (std::size_t i = 0; i < point.size(); ++i)
      if (sampler.factors()[i].kind == FactorKind::epistemic) point[i] = truth[i];
    return make_sample(sampler.scenario_of(sampler.at(point)), *cache);
  };
}

NestedBands nested_bands(const std::vector<float>& first_able_h, std::uint64_t outer, std::uint64_t inner,
                         double horizon_h) {
  if (outer == 0 || inner == 0 || first_able_h.size() != outer * inner)
    throw std::invalid_argument("nested_bands: not outer times inner values");
  NestedBands out{outer, inner, 0, 0, 0, 0, horizon_h};
  std::vector<double> medians;
  for (std::uint64_t o = 0; o < outer; ++o) {
    std::vector<double> cases;
    for (std::uint64_t i = 0; i < inner; ++i) {
      const auto at = static_cast<double>(first_able_h[o * inner + i]);
      if (!std::isnan(at)) cases.push_back(std::min(at, horizon_h));
    }
    if (cases.empty()) continue;
    std::sort(cases.begin(), cases.end());
    medians.push_back(quantile_of_sorted(cases, half));
    out.cases_low += quantile_of_sorted(cases, low_tenth);
    out.cases_high += quantile_of_sorted(cases, high_tenth);
  }
  if (medians.empty()) throw std::invalid_argument("nested_bands: every sample failed");
  std::sort(medians.begin(), medians.end());
  out.truths_low = quantile_of_sorted(medians, low_tenth);
  out.truths_high = quantile_of_sorted(medians, high_tenth);
  out.cases_low /= static_cast<double>(medians.size());
  out.cases_high /= static_cast<double>(medians.size());
  return out;
}

}  // namespace bide::study
