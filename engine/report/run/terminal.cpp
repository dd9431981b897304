#include "bide/report/run/terminal.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/core/notice.hpp"
#include "bide/report/run/range.hpp"
#include "bide/report/run/sections.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

std::string people(std::size_t count) {
  return count == 1 ? "1 person" : fmt::format("{} people", count);
}

void print_head(Page& page, const Material& m, const std::vector<study::Future>& members) {
  const scenario::Scenario& s = m.scenario.scenario;
  if (members.empty()) {
    page.paragraph(one_case);
  } else {
    page.paragraph(range_sentence("Able until", m.outcome, members, &outcome::Outcome::able));
    page.paragraph(range_sentence("Alive until", m.outcome, members, &outcome::Outcome::alive));
    page.paragraph(what_the_range_is(members.size()) + " What follows is the run as computed.");
  }
  page.line();
  page.paragraph(page.outside(s.name));
  const auto& defaults = m.scenario.defaults;
  const bool stated = std::find(defaults.begin(), defaults.end(), "/setting") == defaults.end();
  if (stated && !s.setting.empty()) page.paragraph(page.outside(s.setting));
  const int zone_h = zone_hours(s.position.longitude_deg);
  std::string where = m.timeline.in_raft ? "in a raft" : "in the water, no raft";
  if (s.raft) where = fmt::format("in a raft for {}", s.raft->capacity_persons);
  page.paragraph(fmt::format("{} {}, from {}, followed for {}; local is {}.", people(s.crew.size()), where,
                             both_clocks(m.timeline.start_unix_s, 0, zone_h), horizon(m.timeline.horizon_s),
                             zone_name(zone_h)));
}

std::string first_of(const outcome::Outcome& outcome, const std::vector<study::Future>& members,
                     CrewState state) {
  const study::TimeRange range = range_over(outcome, members, state, &outcome::CrewTimes::first_s);
  return range_words(range, outcome.horizon_s) + (range.earliest_s ? " (first person)" : "");
}

}  // namespace

std::string terminal_summary(const outcome::Outcome& outcome, const timeline::Timeline& timeline,
                             const scenario::ValidScenario& scenario, const TerminalOptions& options) {
  Page page(options.width, options.utf8 ? Letters::utf8 : Letters::ascii);
  const Material material{outcome, timeline, scenario};
  print_head(page, material, options.members);
  print_answer(page, material);
  print_figures(page, material);
  print_charts(page, material);
  print_events(page, material);
  print_evidence(page, material);
  print_basis(page, material);
  if (!options.files.empty()) {
    page.heading("FILES");
    for (const WrittenFile& file : options.files) {
      page.item(page.outside(file.what) + ": " + page.outside(file.path));
    }
  }
  page.line();
  page.paragraph(standing_notice);
  page.paragraph(standing_advice);
  return page.text();
}

std::string quiet_line(const outcome::Outcome& outcome, const scenario::ValidScenario& scenario,
                       const TerminalOptions& options) {
  return fmt::format("{}: able until {}, alive until {}. One case, not a forecast. {}\n",
                     plain(scenario.scenario.name, options.utf8 ? Letters::utf8 : Letters::ascii),
                     first_of(outcome, options.members, &outcome::Outcome::able),
                     first_of(outcome, options.members, &outcome::Outcome::alive), standing_notice);
}

}  // namespace bide::report
