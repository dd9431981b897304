#include "bide/study/questions/replay.hpp"

#include <fmt/format.h>

#include <utility>

#include "bide/study/sampling/sampler.hpp"
#include "bide/weather/weather.hpp"

namespace bide::study {

std::variant<Replay, Refusal> replay(const scenario::ValidScenario& uncertain, std::uint64_t seed,
                                     std::uint64_t k) {
  const auto of_sample = [k](Refusal refusal) {
    for (scenario::Diagnostic& each : refusal.reasons) each.file = fmt::format("sample {}: {}", k, each.file);
    return refusal;
  };
  const Sampler sampler(uncertain);
  const Drawn drawn = sampler.draw(seed, k);
  auto validated = sampler.scenario_of(drawn);
  if (auto* wrong = std::get_if<scenario::Diagnostics>(&validated))
    return of_sample({Refusal::Why::input, std::move(*wrong)});
  Replay out{std::get<scenario::ValidScenario>(std::move(validated)), {}, 0, std::nullopt};
  RunResult run = run_one(out.scenario);
  if (auto* refused = std::get_if<Refusal>(&run)) return of_sample(std::move(*refused));
  out.run = std::get<Run>(std::move(run));
  const std::optional<scenario::Rescue>& rescue = uncertain.scenario.uncertain->rescue;
  if (!rescue) return out;
  const auto weather = weather::load(out.scenario);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&weather))
    return of_sample({Refusal::Why::input, *wrong});
  out.help_needed_h = *drawn.rescue_h;
  out.help =
      help_of(*rescue, *drawn.rescue_h, std::get<weather::Record>(weather), uncertain.scenario.duration_h);
  return out;
}

std::string text_of_future(const scenario::ValidScenario& uncertain, std::uint64_t seed, std::uint64_t k) {
  const Sampler sampler(uncertain);
  return sampler.text_of(sampler.draw(seed, k));
}

}  // namespace bide::study
