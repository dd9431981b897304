#include "bide/study/questions/levers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <deque>
#include <span>
#include <tuple>

#include "bide/constants/evidence.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/write.hpp"
#include "bide/study/ensemble/run_all.hpp"

namespace bide::study {
namespace {

using outcome::Figures;
using scenario::ValidScenario;

// As computed, with canopy and leakage where they keep most in: the foulest air. The members stand inside
// their ranges, and what is withheld must hold at the worst of them. A position that the file states is kept.
scenario::Validated keeping_most_in(const ValidScenario& scenario) {
  scenario::Node document = *scenario.document;
  for (const char* pointer : {"/raft/canopy_heat_loss_position", "/raft/leakage_position"})
    if (scenario::is_default(scenario, pointer)) scenario::put(document, pointer, 0.0);
  return scenario::validate_document(std::move(document), scenario.file, scenario.folder);
}

// A crew with all that is run of it.
struct Case {
  Figures central;
  RangeMembers members;
  double co2_low_ppm = 0, co2_high_ppm = 0;
};

// All rafts of a crew together.
Figures figures_of(std::span<const RunResult> rafts) {
  std::vector<std::optional<double>> able_s, alive_s;
  Figures all;
  for (const RunResult& raft : rafts) {
    const Run& run = std::get<Run>(raft);
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

std::variant<std::vector<Case>, Refusal> run_cases(const std::vector<CrewScenarios>& crews,
                                                   const Look& look) {
  CrewScenarios all;
  for (const CrewScenarios& crew : crews) all.insert(all.end(), crew.begin(), crew.end());
  const std::vector<RunResult> central = run_all(all, look);
  for (const RunResult& result : central)
    if (const auto* refused = std::get_if<Refusal>(&result)) return *refused;
  auto members = run_unmeasured(crews, look);
  if (auto* refused = std::get_if<Refusal>(&members)) return std::move(*refused);
  auto tight = run_version(crews, keeping_most_in, look);
  if (auto* refused = std::get_if<Refusal>(&tight)) return std::move(*refused);

  std::vector<Case> out;
  std::size_t at = 0;
  for (std::size_t i = 0; i < crews.size(); ++i) {
    Case each;
    each.central = figures_of(std::span(central).subspan(at, crews[i].size()));
    at += crews[i].size();
    each.members = std::move(std::get<std::vector<RangeMembers>>(members)[i]);
    each.co2_low_ppm = each.co2_high_ppm = each.central.highest_co2_ppm;
    const auto widen = [&each](const RangeMember& member) {
      each.co2_low_ppm = std::min(each.co2_low_ppm, member.highest_co2_ppm);
      each.co2_high_ppm = std::max(each.co2_high_ppm, member.highest_co2_ppm);
    };
    for (const RangeMember& member : each.members) widen(member);
    widen(std::get<RangeMembers>(tight)[i]);
    out.push_back(std::move(each));
  }
  return out;
}

Gains gains(const outcome::Endurance& before, const outcome::Endurance& with, double horizon_s) {
  Gains out;
  out.able = gain_of(before.able.first_s, with.able.first_s, horizon_s);
  out.alive = gain_of(before.alive.first_s, with.alive.first_s, horizon_s);
  if (out.able.unreached) out.margin = with.next_margin_fraction - before.next_margin_fraction;
  return out;
}

// What a range counts.
double hours_told(const Gain& gain) {
  return told(gain) ? gain.hours : 0;
}

bool before(const LeverTried& a, const LeverTried& b) {
  if (a.state != b.state) return a.state > b.state;
  const auto key = [](const LeverTried& each) {
    return std::tuple(hours_bought(each, &Gains::able), hours_bought(each, &Gains::alive),
                      each.gained.margin);
  };
  return key(a) > key(b);
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

bool told(const Gain& gain) {
  return !gain.unreached && gain.distinguishable;
}

bool loses(const LeverTried& tried, Gain Gains::*which) {
  return hours_told(gain_range(tried, which).low) < 0;
}

double hours_bought(const LeverTried& tried, Gain Gains::*which) {
  if (told(tried.gained.*which)) return (tried.gained.*which).hours;
  return loses(tried, which) ? 0 : hours_told(gain_range(tried, which).high);
}

int direction(const LeverTried& tried) {
  const auto sign = [](double value) { return value > 0 ? 1 : value < 0 ? -1 : 0; };
  const Gains& gained = tried.gained;
  for (const auto which : {&Gains::able, &Gains::alive})
    if (told(gained.*which)) return sign((gained.*which).hours);
  const auto wins_in = [&](Gain Gains::*which) { return hours_told(gain_range(tried, which).high) > 0; };
  const bool wins = wins_in(&Gains::able) || wins_in(&Gains::alive),
             costs = loses(tried, &Gains::able) || loses(tried, &Gains::alive);
  if (wins && !costs) return 1;
  if (std::abs(gained.margin) >= constants::margins_apart_fraction) return sign(gained.margin);
  return costs && !wins ? -1 : 0;
}

GainRange gain_range(const LeverTried& tried, Gain Gains::*which) {
  GainRange out{tried.gained.*which, tried.gained.*which};
  for (const Gains& each : tried.members) {
    const Gain& gain = each.*which;
    if (hours_told(gain) < hours_told(out.low)) out.low = gain;
    if (hours_told(gain) > hours_told(out.high)) out.high = gain;
  }
  return out;
}

MarginRange margin_range(const LeverTried& tried) {
  MarginRange out{tried.gained.margin, tried.gained.margin};
  for (const Gains& each : tried.members) {
    if (!each.able.unreached) continue;
    out.low = std::min(out.low, each.margin);
    out.high = std::max(out.high, each.margin);
  }
  return out;
}

std::variant<LeversTried, Refusal> try_levers(const ValidScenario& scenario, const Look& look) {
  LeversTried out;
  std::deque<ValidScenario> made;  // their places are kept
  std::vector<CrewScenarios> crews{{&scenario}};
  std::vector<std::size_t> run;  // levers that apply
  for (const scenario::Lever& lever : scenario::levers()) {
    LeverTried tried;
    tried.lever = &lever;
    tried.burden = scenario::burden_of(lever, scenario);
    auto pulled = scenario::pull(lever, scenario);
    if (const auto* none = std::get_if<scenario::NotApplicable>(&pulled)) {
      tried.state = LeverTried::State::not_applicable;
      tried.reason = none->reason;
    } else {
      run.push_back(out.tried.size());
      CrewScenarios& crew = crews.emplace_back();
      for (ValidScenario& part : std::get<std::vector<ValidScenario>>(pulled))
        crew.push_back(&made.emplace_back(std::move(part)));
    }
    out.tried.push_back(std::move(tried));
  }

  auto ran = run_cases(crews, look);
  if (auto* refused = std::get_if<Refusal>(&ran)) return std::move(*refused);
  auto& cases = std::get<std::vector<Case>>(ran);
  Case& base = cases.front();
  const double limit_ppm = scenario.scenario.limits.able_co2_ppm, horizon_s = base.central.horizon_s;
  for (std::size_t i = 0; i < run.size(); ++i) {
    LeverTried& tried = out.tried[run[i]];
    Case& with = cases[i + 1];
    tried.gained = gains(base.central, with.central, horizon_s);
    for (std::size_t k = 0; k < base.members.size(); ++k)
      tried.members.push_back(gains(base.members[k], with.members.at(k), horizon_s));
    tried.figures = std::move(with.central);
    tried.co2_low_ppm = with.co2_low_ppm;
    tried.co2_high_ppm = with.co2_high_ppm;
    const bool worse = tried.co2_high_ppm > base.co2_high_ppm * (1 + constants::times_apart_fraction);
    if (tried.co2_high_ppm >= limit_ppm && worse) {
      tried.state = LeverTried::State::withheld;
      tried.reason = fmt::format(
          "over what nobody has measured, carbon dioxide reaches {:.0f} to {:.0f} ppm; the limit of being "
          "able is {:.0f}",
          tried.co2_low_ppm, tried.co2_high_ppm, limit_ppm);
    }
  }
  out.base_co2_low_ppm = base.co2_low_ppm;
  out.base_co2_high_ppm = base.co2_high_ppm;
  out.base = std::move(base.central);
  out.base_members = std::move(base.members);
  std::stable_sort(out.tried.begin(), out.tried.end(), before);
  return out;
}

}  // namespace bide::study
