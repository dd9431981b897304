#include "bide/report/run/sentences.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "bide/core/people.hpp"
#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/words/input.hpp"
#include "bide/report/words/words.hpp"
#include "bide/scenario/first_minutes.hpp"

namespace bide::report {
namespace {

using outcome::PersonOutcome;
using outcome::Until;

std::string until_words(const Until& until, double horizon_s, const scenario::Limits& limits,
                        const scenario::Person& who) {
  if (!until.at_s) return not_reached(horizon_s);
  const std::string cause = outcome::plain_cause(until.limit, limits, who);
  return duration(*until.at_s) + (cause.empty() ? "" : " (" + cause + ")");
}

std::string next_words(const PersonOutcome& person) {
  const bool lost_at_once = person.alive.at_s && person.alive.limit == system::Limit::first_minutes;
  if (person.next_limit == system::Limit::none || lost_at_once) return "";
  return fmt::format(" {}: {}, {}.", person.able.at_s ? "Nearest other limit then" : "Next limit",
                     outcome::short_cause(person.next_limit), margin_left(person.next_margin_fraction));
}

// Of the first minutes in cold water: what of them is left out, and by which key they can be counted.
std::string first_minutes_left_out(const scenario::Scenario& s, Told told) {
  const bool drawn = told == Told::futures;
  const auto& range = s.uncertain ? s.uncertain->lost_in_first_minutes : std::nullopt;
  if (range && drawn) return "";
  std::string out = "the first minutes in cold water";
  if (std::any_of(s.crew.begin(), s.crew.end(),
                  [](const scenario::Person& p) { return p.lost_in_first_minutes; }))
    out += " beyond who is entered as lost";
  else if (drawn ? scenario::may_enter_water(s) : scenario::enter_water(s))
    out += range ? fmt::format(" (counted in odds alone: {} lost, as entered)", share_lost(*range))
                 : " (enter a share as lost_in_first_minutes, and odds count it)";
  return out + ", ";
}

std::string words_of(const PersonOutcome& person, double horizon_s, const scenario::Limits& limits,
                     const scenario::Person& who) {
  if (!person.able.at_s && !person.alive.at_s)
    return "no limit reached within " + horizon(horizon_s) + "." + next_words(person);
  return "able until " + until_words(person.able, horizon_s, limits, who) + "; alive until " +
         until_words(person.alive, horizon_s, limits, who) + "." + next_words(person);
}

}  // namespace

std::string head_sentence(const scenario::ValidScenario& scenario, bool in_raft, double horizon_s) {
  const scenario::Scenario& s = scenario.scenario;
  std::string where = in_raft ? "in a raft" : "in the water, no raft";
  if (s.raft) where = fmt::format("in a raft for {}", s.raft->capacity_persons);
  return fmt::format("{} {}, from {}, followed for {}. {}", people(s.crew.size()), where,
                     both_clocks(scenario.start_unix_s, 0, zone_hours(s.position.longitude_deg)),
                     horizon(horizon_s), what_able_means);
}

std::vector<std::string> person_sentences(const Material& m) {
  const scenario::Scenario& s = m.scenario.scenario;
  std::vector<std::pair<std::string, std::vector<int>>> groups;
  for (std::size_t i = 0; i < m.outcome.persons.size(); ++i) {
    std::string words = words_of(m.outcome.persons[i], m.outcome.horizon_s, s.limits, s.crew[i]);
    auto known = std::find_if(groups.begin(), groups.end(),
                              [&words](const auto& each) { return each.first == words; });
    if (known == groups.end()) known = groups.insert(groups.end(), {std::move(words), {}});
    known->second.push_back(static_cast<int>(i));
  }
  std::vector<std::string> out;
  for (const auto& [words, persons] : groups) out.push_back(person_names(persons) + ": " + words);
  return out;
}

std::string share_lost(const scenario::FirstMinutes& range) {
  if (range.low == range.high) return fmt::format("{:.3g} %", pct * range.low);
  return fmt::format("{:.3g} to {:.3g} %", pct * range.low, pct * range.high);
}

std::string not_in_the_model(const scenario::ValidScenario& scenario, Told told) {
  using scenario::Person;
  const scenario::Scenario& s = scenario.scenario;
  const bool hurt = std::any_of(s.crew.begin(), s.crew.end(), [](const Person& p) {
    return p.blood_loss_pct > 0 || p.burned_pct > 0 || p.fever_K > 0 || p.hands != scenario::Hands::sound ||
           !p.fit_for_work;
  });
  const bool fails =
      !s.failures.empty() || (s.uncertain && (!s.uncertain->events.empty() || s.uncertain->readiness));
  return fmt::format("Drowning, {}despair, collapse at or after rescue; {}", first_minutes_left_out(s, told),
                     hurt || fails ? "injury, illness, capsize, breakage other than entered."
                                   : "injury, illness, capsize, breakage (none was entered).");
}

std::vector<std::string> caution_sentences(const scenario::ValidScenario& s) {
  std::vector<std::string> out;
  for (const scenario::Diagnostic& caution : s.cautions)
    out.push_back((caution.pointer.empty() ? "" : input_words(caution.pointer) + ": ") + caution.message);
  if (!s.expired.empty()) out.push_back(fmt::format("{} expired items count as absent.", s.expired.size()));
  if (!s.defaults.empty())
    out.push_back(fmt::format("{} inputs were not stated and took defaults.", s.defaults.size()));
  return out;
}

}  // namespace bide::report
