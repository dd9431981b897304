#include "bide/study/sampling/make_sample.hpp"

#include <memory>
#include <utility>

#include "bide/system/ready.hpp"

namespace bide::study {

namespace {

NotMade not_made(const scenario::Diagnostics& wrong) {
  return {to_string(wrong.front())};
}

}  // namespace

std::variant<Sample, NotMade> make_sample(const scenario::Validated& validated, weather::Cache& cache) {
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&validated)) return not_made(*wrong);
  const auto& scenario = std::get<scenario::ValidScenario>(validated);
  auto loaded = cache.load(scenario);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&loaded)) return not_made(*wrong);
  auto& record = std::get<weather::Record>(loaded);
  auto ready = system::make_ready(scenario, record);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&ready)) return not_made(*wrong);
  return Sample{std::get<system::Compiled<double>>(std::move(ready)), std::move(record)};
}

MakeSample drawing(const Sampler& sampler, std::uint64_t seed, Made made) {
  return
      [&sampler, seed, made = std::move(made), cache = std::make_shared<weather::Cache>()](std::uint64_t k) {
        const Drawn drawn = sampler.draw(seed, k);
        auto sample = make_sample(sampler.scenario_of(drawn), *cache);
        if (made && std::holds_alternative<Sample>(sample)) made(k, drawn, std::get<Sample>(sample));
        return sample;
      };
}

}  // namespace bide::study
