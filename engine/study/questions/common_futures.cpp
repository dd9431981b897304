#include "bide/study/questions/common_futures.hpp"

#include <algorithm>

#include "bide/study/sampling/make_sample.hpp"

namespace bide::study {
namespace {

Observed within(double until_h, double horizon_h) {
  return until_h <= horizon_h ? Observed{until_h, true} : Observed{horizon_h, false};
}

}  // namespace

FuturesOfOption draw_futures(const scenario::ValidScenario& scenario, std::uint64_t seed, std::uint64_t count,
                             const std::function<void(double)>& progress) {
  const Sampler sampler(scenario);
  FuturesOfOption out;
  out.horizon_h = scenario.scenario.duration_h;
  out.futures.reserve(count);
  EnsembleOptions options;
  options.progress = [&](const Progress& p) {
    progress(static_cast<double>(p.done) / static_cast<double>(p.total));
  };
  run_ensemble(
      {0, count}, drawing(sampler, seed),
      [&](const SampleResult& r) {
        out.futures.push_back(r.failure.empty() ? std::optional(future_of(r)) : std::nullopt);
      },
      options);
  return out;
}

std::optional<PairedFutures> pair_futures(const FuturesOfOption& first, const FuturesOfOption& second,
                                          double confidence) {
  PairedFutures out;
  out.drawn = std::min(first.futures.size(), second.futures.size());
  out.horizon_h = std::min(first.horizon_h, second.horizon_h);
  out.confidence = confidence;
  std::vector<Observed> able_a, able_b, alive_a, alive_b;
  for (std::size_t k = 0; k < out.drawn; ++k) {
    const std::optional<Future>&a = first.futures[k], &b = second.futures[k];
    if (!a || !b) {
      ++out.without_result;
      continue;
    }
    able_a.push_back(within(static_cast<double>(a->able_h[first_person]), out.horizon_h));
    able_b.push_back(within(static_cast<double>(b->able_h[first_person]), out.horizon_h));
    alive_a.push_back(within(static_cast<double>(a->alive_h[first_person]), out.horizon_h));
    alive_b.push_back(within(static_cast<double>(b->alive_h[first_person]), out.horizon_h));
  }
  constexpr std::size_t fewest = 2;
  if (able_a.size() < fewest) return std::nullopt;
  out.able = compare_paired(able_a, able_b, out.horizon_h, confidence);
  out.alive = compare_paired(alive_a, alive_b, out.horizon_h, confidence);
  return out;
}

}  // namespace bide::study
