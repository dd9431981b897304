#include "bide/study/questions/levers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <memory>

#include "bide/constants/evidence.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/variations.hpp"
#include "bide/scenario/write.hpp"
#include "bide/study/ensemble/run_all.hpp"

namespace bide::study {
namespace {

using outcome::Figures;
using scenario::ValidScenario;

// One configuration (all rafts of a crew), run at nominal and at both ends of the ranges of heat loss and
// leakage.
struct Case {
  using Places = std::vector<std::size_t>;
  Places as_it_is;
  std::vector<Places> ends;
  Places tight;  // as computed, with canopy and leakage where they keep most in: the foulest air
};

// A position that the file states is kept.
scenario::Validated keeping_most_in(const ValidScenario& scenario) {
  scenario::Node document = *scenario.document;
  for (const char* pointer : {"/raft/canopy_heat_loss_position", "/raft/leakage_position"})
    if (scenario::is_default(scenario, pointer)) scenario::put(document, pointer, 0.0);
  return scenario::validate_document(std::move(document), scenario.file, scenario.folder);
}

struct Runs {
  std::vector<std::unique_ptr<ValidScenario>> scenarios;

  std::size_t add(ValidScenario scenario) {
    scenarios.push_back(std::make_unique<ValidScenario>(std::move(scenario)));
    return scenarios.size() - 1;
  }
  Case add_case(std::vector<ValidScenario> parts) {
    constexpr double lowest_loss = 0, highest_loss = 1;
    Case out;
    for (const double position : {lowest_loss, highest_loss}) {
      Case::Places end;
      for (const ValidScenario& part : parts)
        end.push_back(add(std::move(std::get<ValidScenario>(scenario::at_end_of_ranges(part, position)))));
      out.ends.push_back(std::move(end));
    }
    if (parts.front().scenario.raft)
      for (const ValidScenario& part : parts)
        out.tight.push_back(add(std::move(std::get<ValidScenario>(keeping_most_in(part)))));
    for (ValidScenario& part : parts) out.as_it_is.push_back(add(std::move(part)));
    return out;
  }
};

Figures figures_of(const Case::Places& places, const std::vector<RunResult>& results) {
  std::vector<std::optional<double>> able_s, alive_s;
  Figures all;
  for (const std::size_t place : places) {
    const Run& run = std::get<Run>(results[place]);
    for (const outcome::PersonOutcome& person : run.outcome.persons) {
      able_s.push_back(person.able.at_s);
      alive_s.push_back(person.alive.at_s);
    }
    Figures part = outcome::figures_of(run.outcome, run.timeline);
    all = able_s.size() == run.outcome.persons.size() ? std::move(part) : outcome::worse(all, part);
  }
  all.able = outcome::crew_times(able_s);
  all.alive = outcome::crew_times(alive_s);
  return all;
}

void co2_range(const Case& of, const std::vector<RunResult>& results, double& low_ppm, double& high_ppm) {
  const auto highest = [&](std::size_t place) {
    const auto& cabin = std::get<Run>(results[place]).outcome.cabin;
    return cabin.highest_co2_ppm ? cabin.highest_co2_ppm->value : 0.0;
  };
  low_ppm = high_ppm = highest(of.as_it_is.front());
  const auto widen = [&](const Case::Places& places) {
    for (const std::size_t place : places) {
      low_ppm = std::min(low_ppm, highest(place));
      high_ppm = std::max(high_ppm, highest(place));
    }
  };
  widen(of.as_it_is);
  for (const Case::Places& end : of.ends) widen(end);
  widen(of.tight);
}

Gains gains(const Figures& before, const Figures& with) {
  Gains out;
  out.able = gain_of(before.able.first_s, with.able.first_s, before.horizon_s);
  out.alive = gain_of(before.alive.first_s, with.alive.first_s, before.horizon_s);
  if (out.able.unreached) out.margin = with.next_margin_fraction - before.next_margin_fraction;
  return out;
}

bool before(const LeverTried& a, const LeverTried& b) {
  if (a.state != b.state) return a.state > b.state;
  const auto hours = [](const Gain& gain) { return gain.distinguishable ? gain.hours : 0; };
  const Gains &first = a.gained, &second = b.gained;
  if (hours(first.able) != hours(second.able)) return hours(first.able) > hours(second.able);
  if (hours(first.alive) != hours(second.alive)) return hours(first.alive) > hours(second.alive);
  return first.margin > second.margin;
}

}  // namespace

Gain gain_of(const std::optional<double>& before_s, const std::optional<double>& with_s, double horizon_s) {
  Gain gain;
  gain.hours = (with_s.value_or(horizon_s) - before_s.value_or(horizon_s)) / hour_s;
  gain.at_least = before_s.has_value() != with_s.has_value();
  gain.unreached = !before_s && !with_s;
  gain.distinguishable =
      outcome::later(before_s, horizon_s, with_s, horizon_s) != outcome::Ahead::indistinguishable;
  return gain;
}

int direction(const LeverTried& tried) {
  const auto sign = [](double value) { return value > 0 ? 1 : value < 0 ? -1 : 0; };
  const Gains& gained = tried.gained;
  if (gained.able.distinguishable) return sign(gained.able.hours);
  if (gained.alive.distinguishable) return sign(gained.alive.hours);
  return std::abs(gained.margin) >= constants::margins_apart_fraction ? sign(gained.margin) : 0;
}

std::variant<LeversTried, Refusal> try_levers(const ValidScenario& scenario) {
  Runs runs;
  const Case base = runs.add_case({scenario});
  LeversTried out;
  std::vector<Case> cases;
  for (const scenario::Lever& lever : scenario::levers()) {
    LeverTried tried;
    tried.lever = &lever;
    tried.burden = scenario::burden_of(lever, scenario);
    auto pulled = scenario::pull(lever, scenario);
    if (const auto* none = std::get_if<scenario::NotApplicable>(&pulled)) {
      tried.state = LeverTried::State::not_applicable;
      tried.reason = none->reason;
      cases.emplace_back();
    } else {
      cases.push_back(runs.add_case(std::move(std::get<std::vector<ValidScenario>>(pulled))));
    }
    out.tried.push_back(std::move(tried));
  }

  std::vector<const ValidScenario*> all;
  for (const auto& each : runs.scenarios) all.push_back(each.get());
  const std::vector<RunResult> results = run_all(all);
  for (const RunResult& result : results)
    if (const auto* refused = std::get_if<Refusal>(&result)) return *refused;

  out.base = figures_of(base.as_it_is, results);
  for (const Case::Places& end : base.ends) out.base_ends.push_back(figures_of(end, results));
  co2_range(base, results, out.base_co2_low_ppm, out.base_co2_high_ppm);
  const double limit_ppm = scenario.scenario.limits.able_co2_ppm;
  for (std::size_t i = 0; i < cases.size(); ++i) {
    LeverTried& tried = out.tried[i];
    if (tried.state == LeverTried::State::not_applicable) continue;
    tried.figures = figures_of(cases[i].as_it_is, results);
    tried.gained = gains(out.base, tried.figures);
    for (std::size_t end = 0; end < std::min(out.base_ends.size(), cases[i].ends.size()); ++end)
      tried.ends.push_back(gains(out.base_ends[end], figures_of(cases[i].ends[end], results)));
    co2_range(cases[i], results, tried.co2_low_ppm, tried.co2_high_ppm);
    const bool worse = tried.co2_high_ppm > out.base_co2_high_ppm * (1 + constants::times_apart_fraction);
    if (tried.co2_high_ppm >= limit_ppm && worse) {
      tried.state = LeverTried::State::withheld;
      tried.reason = fmt::format(
          "over the unmeasured ranges of canopy and leakage, carbon dioxide reaches {:.0f} to {:.0f} ppm; "
          "the limit of "
          "being able is {:.0f}",
          tried.co2_low_ppm, tried.co2_high_ppm, limit_ppm);
    }
  }
  std::stable_sort(out.tried.begin(), out.tried.end(), before);
  return out;
}

}  // namespace bide::study
