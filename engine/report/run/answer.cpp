#include <fmt/format.h>

#include <algorithm>

#include "bide/report/run/sections.hpp"
#include "bide/report/run/sentences.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

using outcome::PersonOutcome;
using outcome::Until;

constexpr std::size_t most_sentences = 12;

// The person who reaches it first (or last); empty when nobody does.
std::string who(const outcome::Outcome& outcome, Until PersonOutcome::*which,
                const std::optional<double>& at_s) {
  if (!at_s) return "";
  for (std::size_t i = 0; i < outcome.persons.size(); ++i) {
    if ((outcome.persons[i].*which).at_s == at_s) return person_label(static_cast<int>(i));
  }
  return "";
}

void row(Page& page, const char* name, const std::string& label, const std::optional<double>& at_s,
         double horizon_s, const Clocks& clock) {
  if (at_s) {
    page.line(fmt::format("  {:<7} {:<10} {:>8}   {}", name, label, duration(*at_s), clock.both(*at_s)));
  } else {
    page.line(fmt::format("  {:<7} {:<10} {}", name, label, not_reached(horizon_s)));
  }
}

void block(Page& page, const Material& m, const char* title, const outcome::CrewTimes& times,
           Until PersonOutcome::*which, const outcome::Evidence& evidence, const Clocks& clock) {
  page.heading(fmt::format("{}  [{}]", title, outcome::to_string(evidence.grade)));
  const double horizon_s = m.outcome.horizon_s;
  if (times.persons == 1) {
    row(page, "", person_label(0), times.first_s, horizon_s, clock);
    return;
  }
  row(page, "first", who(m.outcome, which, times.first_s), times.first_s, horizon_s, clock);
  row(page, "half of", "the crew", times.half_s, horizon_s, clock);
  row(page, "last", who(m.outcome, which, times.last_s), times.last_s, horizon_s, clock);
  if (times.reached > 0 && times.reached < times.persons) {
    page.line(
        fmt::format("  {} of {} reach it within {}.", times.reached, times.persons, horizon(horizon_s)));
  }
}

}  // namespace

void print_answer(Page& page, const Material& m) {
  const scenario::Scenario& s = m.scenario.scenario;
  const Clocks clock{m.timeline.start_unix_s, zone_hours(s.position.longitude_deg)};
  block(page, m, "ABLE UNTIL (can help themselves)", m.outcome.able, &PersonOutcome::able,
        m.outcome.able_evidence, clock);
  block(page, m, "ALIVE UNTIL", m.outcome.alive, &PersonOutcome::alive, m.outcome.alive_evidence, clock);

  page.heading("WHAT ENDS IT");
  const std::vector<std::string> sentences = person_sentences(m);
  const std::size_t shown = std::min(sentences.size(), most_sentences);
  for (std::size_t i = 0; i < shown; ++i) page.paragraph(page.outside(sentences[i]), "  ", "    ");
  if (shown < sentences.size())
    page.line(fmt::format("  and {} more: see the JSON result.", sentences.size() - shown));
}

}  // namespace bide::report
