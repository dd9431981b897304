#include "bide/report/run/terminal.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/core/notice.hpp"
#include "bide/report/run/sections.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

std::string people(std::size_t count) {
  return count == 1 ? "1 person" : fmt::format("{} people", count);
}

void print_head(Page& page, const Material& m) {
  const scenario::Scenario& s = m.scenario.scenario;
  page.paragraph(one_case);
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

std::string first_of(const outcome::CrewTimes& times, double horizon_s) {
  return times.first_s ? duration(*times.first_s) + " (first person)" : not_reached(horizon_s);
}

}  // namespace

std::string terminal_summary(const outcome::Outcome& outcome, const timeline::Timeline& timeline,
                             const scenario::ValidScenario& scenario, const TerminalOptions& options) {
  Page page(options.width, options.utf8 ? Letters::utf8 : Letters::ascii);
  const Material material{outcome, timeline, scenario};
  print_head(page, material);
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

std::string quiet_line(const outcome::Outcome& outcome, const scenario::ValidScenario& scenario, bool utf8) {
  return fmt::format("{}: able until {}, alive until {}. One case, not a forecast. {}\n",
                     plain(scenario.scenario.name, utf8 ? Letters::utf8 : Letters::ascii),
                     first_of(outcome.able, outcome.horizon_s), first_of(outcome.alive, outcome.horizon_s),
                     standing_notice);
}

}  // namespace bide::report
