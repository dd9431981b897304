#include "bide/report/run/sentences.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "bide/core/people.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/words/input.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

using outcome::PersonOutcome;
using outcome::Until;

std::string until_words(const Until& until, double horizon_s, const scenario::Limits& limits) {
  if (!until.at_s) return not_reached(horizon_s);
  const std::string cause = outcome::plain_cause(until.limit, limits);
  return duration(*until.at_s) + (cause.empty() ? "" : " (" + cause + ")");
}

std::string next_words(const PersonOutcome& person) {
  if (person.next_limit == system::Limit::none) return "";
  return fmt::format(" {}: {}, {}.", person.able.at_s ? "Nearest other limit then" : "Next limit",
                     outcome::short_cause(person.next_limit), margin_left(person.next_margin_fraction));
}

std::string words_of(const PersonOutcome& person, double horizon_s, const scenario::Limits& limits) {
  if (!person.able.at_s && !person.alive.at_s)
    return "no limit reached within " + horizon(horizon_s) + "." + next_words(person);
  return "able until " + until_words(person.able, horizon_s, limits) + "; alive until " +
         until_words(person.alive, horizon_s, limits) + "." + next_words(person);
}

struct Result {
  const char* name;
  const outcome::Evidence* evidence;
};

std::vector<Result> results(const Material& m, const outcome::Evidence& bookkeeping) {
  const outcome::Outcome& o = m.outcome;
  std::vector<Result> out{{"able until", &o.able_evidence},
                          {"alive until", &o.alive_evidence},
                          {"water loss", &o.thirst_evidence},
                          {"hands", &o.hands_evidence},
                          {"stores (bookkeeping)", &bookkeeping}};
  if (m.timeline.in_raft) {
    out.push_back({"inside temperature", &o.cabin.temperature_evidence});
    out.push_back({"CO2", &o.cabin.co2_evidence});
    out.push_back({"condensate", &o.cabin.condensate_evidence});
  }
  return out;
}

}  // namespace

std::string head_sentence(const Material& m) {
  const scenario::Scenario& s = m.scenario.scenario;
  std::string where = m.timeline.in_raft ? "in a raft" : "in the water, no raft";
  if (s.raft) where = fmt::format("in a raft for {}", s.raft->capacity_persons);
  return fmt::format("{} {} {}, from {}, followed for {}.", s.crew.size(),
                     s.crew.size() == 1 ? "person" : "people", where,
                     both_clocks(m.timeline.start_unix_s, 0, zone_hours(s.position.longitude_deg)),
                     horizon(m.timeline.horizon_s));
}

std::vector<std::string> person_sentences(const Material& m) {
  const scenario::Limits& limits = m.scenario.scenario.limits;
  std::vector<std::pair<std::string, std::vector<int>>> groups;
  for (std::size_t i = 0; i < m.outcome.persons.size(); ++i) {
    std::string words = words_of(m.outcome.persons[i], m.outcome.horizon_s, limits);
    auto known = std::find_if(groups.begin(), groups.end(),
                              [&words](const auto& each) { return each.first == words; });
    if (known == groups.end()) known = groups.insert(groups.end(), {std::move(words), {}});
    known->second.push_back(static_cast<int>(i));
  }
  std::vector<std::string> out;
  for (const auto& [words, persons] : groups) out.push_back(person_names(persons) + ": " + words);
  return out;
}

std::vector<GradeWords> evidence_words(const Material& m) {
  const outcome::Evidence bookkeeping;
  std::vector<GradeWords> out;
  for (const outcome::Grade grade : {outcome::Grade::checked, outcome::Grade::biased,
                                     outcome::Grade::extrapolated, outcome::Grade::no_data}) {
    std::string all;
    for (const Result& result : results(m, bookkeeping))
      if (result.evidence->grade == grade) all += (all.empty() ? "" : ", ") + std::string(result.name);
    if (!all.empty()) out.push_back({std::string(outcome::to_string(grade)), all});
  }
  return out;
}

std::vector<std::string> left_out_sentences(const Material& m) {
  std::vector<std::string> out;
  for (const outcome::LeftOutWords& each :
       outcome::merge({m.outcome.able_evidence, m.outcome.alive_evidence}).left_out)
    out.push_back(each.words);
  return out;
}

std::vector<std::string> data_ends(const Material& m) {
  const outcome::Evidence bookkeeping;
  std::vector<outcome::Evidence> all;
  // The graver grades last, as they are listed.
  for (const outcome::Grade grade : {outcome::Grade::checked, outcome::Grade::biased,
                                     outcome::Grade::extrapolated, outcome::Grade::no_data})
    for (const Result& result : results(m, bookkeeping))
      if (result.evidence->grade == grade) all.push_back(*result.evidence);
  std::vector<std::string> out;
  for (const outcome::Passed& each : merge(all).passed) out.push_back(each.limit);
  return out;
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
