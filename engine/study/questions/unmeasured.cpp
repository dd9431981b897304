#include "bide/study/questions/unmeasured.hpp"

#include <algorithm>
#include <memory>

#include "bide/scenario/variations.hpp"

namespace bide::study {
namespace {

using scenario::ValidScenario;

bool open_in(const ValidScenario& scenario, const char* pointer) {
  return std::find(scenario.defaults.begin(), scenario.defaults.end(), pointer) != scenario.defaults.end();
}

std::variant<std::vector<ValidScenario>, scenario::Diagnostics> both_endurances(
    const ValidScenario& scenario) {
  if (!open_in(scenario, "/model/shivering_endurance")) return std::vector<ValidScenario>{scenario};
  auto read =
      scenario::read_variation("/model/shivering_endurance=gives_out,never_tires", "shivering_endurance");
  if (auto* wrong = std::get_if<scenario::Diagnostic>(&read)) return scenario::Diagnostics{*wrong};
  return scenario::versions(scenario, {std::get<scenario::Variation>(read)});
}

}  // namespace

std::variant<std::vector<Run>, Refusal> run_unmeasured(const ValidScenario& scenario) {
  auto endurances = both_endurances(scenario);
  if (auto* wrong = std::get_if<scenario::Diagnostics>(&endurances))
    return Refusal{Refusal::Why::input, *wrong};
  std::vector<ValidScenario> all;
  for (ValidScenario& each : std::get<std::vector<ValidScenario>>(endurances)) {
    const bool cabin_open =
        open_in(each, "/raft/canopy_heat_loss_position") || open_in(each, "/raft/leakage_position");
    if (!cabin_open) {
      all.push_back(std::move(each));
      continue;
    }
    constexpr double lowest_loss = 0, highest_loss = 1;
    for (const double position : {lowest_loss, highest_loss}) {
      scenario::Validated end = scenario::at_end_of_ranges(each, position);
      if (auto* wrong = std::get_if<scenario::Diagnostics>(&end)) return Refusal{Refusal::Why::input, *wrong};
      all.push_back(std::move(std::get<ValidScenario>(end)));
    }
  }
  if (all.size() == 1) return std::vector<Run>{};  // everything is stated
  std::vector<const ValidScenario*> pointers;
  for (const ValidScenario& each : all) pointers.push_back(&each);
  std::vector<Run> runs;
  for (RunResult& result : run_all(pointers)) {
    if (auto* refused = std::get_if<Refusal>(&result)) return std::move(*refused);
    runs.push_back(std::move(std::get<Run>(result)));
  }
  return runs;
}

TimeRange range_of(const std::vector<std::optional<double>>& times_s) {
  TimeRange out;
  bool beyond = times_s.empty();
  for (const std::optional<double>& each : times_s) {
    if (!each) {
      beyond = true;
      continue;
    }
    if (!out.earliest_s || *each < *out.earliest_s) out.earliest_s = each;
    if (!out.latest_s || *each > *out.latest_s) out.latest_s = each;
  }
  if (beyond) out.latest_s.reset();
  return out;
}

}  // namespace bide::study
