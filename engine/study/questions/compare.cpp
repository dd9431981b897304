#include "bide/study/questions/compare.hpp"

#include <algorithm>
#include <utility>

#include "bide/scenario/differences.hpp"
#include "bide/scenario/variations.hpp"
#include "bide/study/ensemble/run_all.hpp"

namespace bide::study {
namespace {

using scenario::ValidScenario;
using scenario::Version;

// Every run of a comparison, and which of them belongs to what.
struct Planned {
  struct Places {
    std::size_t own = 0;
    std::optional<std::size_t> equal;
  };
  std::vector<Version> given;
  std::vector<std::unique_ptr<const ValidScenario>> made;
  std::vector<const ValidScenario*> runs;
  std::vector<RunResult> results;
  std::vector<Places> options;

  std::size_t add(const ValidScenario& scenario) {
    runs.push_back(&scenario);
    return runs.size() - 1;
  }
  std::size_t keep(ValidScenario scenario) {
    made.push_back(std::make_unique<const ValidScenario>(std::move(scenario)));
    return add(*made.back());
  }
  Compared compared(std::size_t place) const {
    const auto& run = std::get<Run>(results[place]);
    return {runs[place], &run.timeline, outcome::figures_of(run.outcome, run.timeline)};
  }
};

// Fills `comparison` with what can be said before anything has run.
std::shared_ptr<Planned> plan(std::vector<Version> scenarios, Comparison& comparison) {
  auto out = std::make_shared<Planned>();
  out->given = std::move(scenarios);
  std::vector<const ValidScenario*> all;
  for (const ValidScenario& each : out->given) all.push_back(&each);
  comparison.same_stores = scenario::differences_aboard(all).empty();
  for (const Version& each : out->given) {
    Option option;
    option.label = each.file;
    option.put_in = each.put_in;
    Planned::Places places;
    places.own = out->add(each);
    if (!comparison.same_stores && &each != &out->given.front()) {
      scenario::Validated equal = scenario::with_stores_of(out->given.front(), each);
      if (const auto* refused = std::get_if<scenario::Diagnostics>(&equal))
        option.equal_refused = refused->front().pointer + ": " + refused->front().message;
      else
        places.equal = out->keep(std::move(std::get<ValidScenario>(equal)));
    }
    comparison.options.push_back(std::move(option));
    out->options.push_back(std::move(places));
  }
  return out;
}

// Every option under the same futures, each paired with the first.
void add_futures(const std::vector<Version>& scenarios, const CompareQuestion& question,
                 const std::function<void(double)>& progress, Comparison& comparison) {
  const bool uncertain = std::all_of(scenarios.begin(), scenarios.end(), [](const ValidScenario& each) {
    return each.scenario.uncertain.has_value();
  });
  if (!uncertain) {
    comparison.no_futures = "Not available: add an \"uncertain\" part to every file.";
    return;
  }
  if (question.futures == 0) {
    comparison.no_futures = "Not asked for (--futures 0).";
    return;
  }
  FuturesOfOption first;
  const double all = static_cast<double>(scenarios.size());
  for (std::size_t i = 0; i < scenarios.size(); ++i) {
    auto drawn = draw_futures(scenarios[i], question.seed, question.futures, [&](double fraction) {
      if (progress) progress((static_cast<double>(i) + fraction) / all);
    });
    if (i == 0)
      first = std::move(drawn);
    else
      comparison.options[i].futures = pair_futures(first, drawn, interval_confidence);
  }
}

}  // namespace

std::variant<Comparison, Refusal> compare(std::vector<Version> scenarios, const CompareQuestion& question,
                                          const std::function<void(double)>& progress) {
  if (scenarios.empty())
    return Refusal{Refusal::Why::input, {{"", "", "found no scenario to compare; allowed one or more"}}};
  Comparison comparison;
  const std::shared_ptr<Planned> planned = plan(std::move(scenarios), comparison);
  const Look look = [&progress] {
    if (progress) progress(0);
  };
  planned->results = run_all(planned->runs, look);
  for (const RunResult& result : planned->results)
    if (const auto* refused = std::get_if<Refusal>(&result)) return *refused;
  std::vector<CrewScenarios> crews;
  for (const ValidScenario& each : planned->given) crews.push_back({&each});
  auto members = run_unmeasured(crews, look);
  if (auto* refused = std::get_if<Refusal>(&members)) return std::move(*refused);
  for (std::size_t i = 0; i < comparison.options.size(); ++i) {
    const Planned::Places& places = planned->options[i];
    Option& option = comparison.options[i];
    option.own = planned->compared(places.own);
    if (places.equal) option.equal = planned->compared(*places.equal);
    option.members = std::move(std::get<std::vector<RangeMembers>>(members)[i]);
  }
  add_futures(planned->given, question, progress, comparison);
  comparison.kept = planned;
  return comparison;
}

}  // namespace bide::study
