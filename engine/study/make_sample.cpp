#include "study/make_sample.hpp"

#include <utility>

namespace bide::study {

namespace {

NotMade not_made(const scenario::Diagnostics& wrong) {
  return {to_string(wrong.front())};
}

}  // namespace

std::variant<Sample, NotMade> make_sample(const scenario::Validated& validated) {
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&validated)) return not_made(*wrong);
  const auto& scenario = std::get<scenario::ValidScenario>(validated);
  auto loaded = weather::load(scenario);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&loaded)) return not_made(*wrong);
  auto& record = std::get<weather::Record>(loaded);
  system::Compiled<double> compiled = system::compile(scenario, record);
  return Sample{std::move(compiled), std::move(record)};
}

MakeSample drawing(const Sampler& sampler, std::uint64_t seed) {
  return
      [&sampler, seed](std::uint64_t k) { return make_sample(sampler.scenario_of(sampler.draw(seed, k))); };
}

}  // namespace bide::study
