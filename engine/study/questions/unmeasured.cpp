#include "bide/study/questions/unmeasured.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "bide/core/units.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/words.hpp"
#include "bide/scenario/write.hpp"
#include "bide/study/sampling/make_sample.hpp"
#include "bide/study/sampling/sampler.hpp"

namespace bide::study {
namespace {

using scenario::ValidScenario;

// A lattice: each member stands in another slice of every range. 17 is prime, so any multiplier does.
constexpr std::uint64_t member_count = 16, lattice = member_count + 1;
constexpr std::uint64_t multipliers[] = {1, 3, 5, 11, 7, 2, 9};

constexpr const char* endurance = "/model/shivering_endurance";

std::vector<std::string> open_inputs(const ValidScenario& scenario) {
  std::vector<std::string> out;
  const auto add = [&](const char* pointer) {
    if (scenario::is_default(scenario, pointer)) out.emplace_back(pointer);
  };
  add("/raft/canopy_heat_loss_position");
  add("/raft/leakage_position");
  add(endurance);
  for (const char* pointer : scenario::model_error_positions) add(pointer);
  return out;
}

scenario::Validated member(const ValidScenario& scenario, const std::vector<std::string>& open,
                           std::uint64_t k) {
  scenario::Node document = *scenario.document;
  for (std::size_t i = 0; i < open.size(); ++i) {
    const double place =
        static_cast<double>((k + 1) * multipliers[i] % lattice) / static_cast<double>(lattice);
    scenario::Value value = place;
    if (open[i] == endurance) value = std::string(word(endurance_at(place)));
    scenario::put(document, open[i], value);
  }
  return scenario::validate_document(std::move(document), scenario.file, scenario.folder);
}

}  // namespace

std::variant<std::vector<Future>, Refusal> run_unmeasured(const ValidScenario& scenario) {
  const std::vector<std::string> open = open_inputs(scenario);
  std::vector<Future> out;
  if (open.empty()) return out;
  weather::Cache cache;
  std::string failed;
  run_ensemble(
      {0, member_count}, [&](std::uint64_t k) { return make_sample(member(scenario, open, k), cache); },
      [&](const SampleResult& r) {
        if (r.failure.empty())
          out.push_back(future_of(r));
        else if (failed.empty())
          failed = r.failure;
      });
  if (!failed.empty()) return Refusal{Refusal::Why::run, {{scenario.file, "", failed}}};
  return out;
}

std::optional<double> until_s(float hours, double horizon_s) {
  const double at_s = static_cast<double>(hours) * hour_s;
  return at_s < horizon_s ? std::optional(at_s) : std::nullopt;
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
