#include "bide/study/ensemble/run_all.hpp"

#include <thread>

#include "bide/study/ensemble/parallel.hpp"
#include "bide/timeline/simulate.hpp"
#include "bide/weather/weather.hpp"

namespace bide::study {

RunResult run_one(const scenario::ValidScenario& scenario,
                  const std::function<void(double fraction)>& progress) {
  const auto loaded = weather::load(scenario);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&loaded))
    return Refusal{Refusal::Why::input, *wrong};
  timeline::Options options;
  options.progress = progress;
  auto simulated = timeline::simulate(scenario, std::get<weather::Record>(loaded), options);
  if (auto* refused = std::get_if<scenario::Diagnostics>(&simulated))
    return Refusal{Refusal::Why::input, std::move(*refused)};
  if (const auto* failure = std::get_if<timeline::Failure>(&simulated))
    return refusal_of(scenario.file, *failure);
  auto& timeline = std::get<timeline::Timeline>(simulated);
  outcome::Outcome outcome = outcome::read_outcome(timeline, scenario);
  return Run{std::move(timeline), std::move(outcome)};
}

std::vector<RunResult> run_all(const std::vector<const scenario::ValidScenario*>& scenarios,
                               const Look& look) {
  const std::thread::id asked_by = std::this_thread::get_id();
  std::vector<RunResult> results(scenarios.size());
  in_parallel(scenarios.size(), 0, [&](std::size_t i) {
    results[i] = run_one(*scenarios[i], [&](double) {
      if (look && std::this_thread::get_id() == asked_by) look();
    });
  });
  return results;
}

}  // namespace bide::study
