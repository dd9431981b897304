#include "bide/report/run/terminal.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/core/notice.hpp"
#include "bide/report/run/answer_lines.hpp"
#include "bide/report/run/range.hpp"
#include "bide/report/run/sections.hpp"
#include "bide/report/run/sentences.hpp"
#include "bide/report/words/words.hpp"
#include "bide/scenario/write.hpp"

namespace bide::report {
namespace {

// The scenario as a title and one line.
void print_head(Page& page, const Material& m) {
  page.paragraph(page.outside(m.scenario.scenario.name));
  page.paragraph(head_sentence(m));
  page.line();
}

void print_rest(Page& page, const Material& m) {
  const bool stated = !scenario::is_default(m.scenario, "/setting");
  if (stated && !m.scenario.scenario.setting.empty()) {
    page.line();
    page.paragraph(page.outside(m.scenario.scenario.setting));
  }
  print_answer(page, m);
  print_figures(page, m);
  print_charts(page, m);
  print_events(page, m);
  print_evidence(page, m);
  print_basis(page, m);
}

std::string first_of(const outcome::CrewTimes& central, const study::RangeMembers& members,
                     study::CrewState state, double horizon_s) {
  const study::TimeRange range = study::range_over(central, members, state, &outcome::CrewTimes::first_s);
  return range_words(range, horizon_s) + (range.earliest_s ? " (first person)" : "");
}

}  // namespace

std::string terminal_summary(const outcome::Outcome& outcome, const timeline::Timeline& timeline,
                             const scenario::ValidScenario& scenario, const TerminalOptions& options) {
  Page page(options.width, options.utf8 ? Letters::utf8 : Letters::ascii);
  const Material material{outcome, timeline, scenario};
  print_head(page, material);
  page.answer(run_answer(material, options.members,
                         options.drawn ? "not tried; --dump writes this future, bide levers asks of it"
                                       : buys_line(options.levers, scenario)));
  if (options.full)
    print_rest(page, material);
  else if (const std::size_t count = caution_sentences(scenario).size(); count > 0)
    page.paragraph(
        fmt::format("{} {}, charts, events, evidence: --full.", count, count == 1 ? "caution" : "cautions"));
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
                     first_of(outcome.able, options.members, &outcome::Endurance::able, outcome.horizon_s),
                     first_of(outcome.alive, options.members, &outcome::Endurance::alive, outcome.horizon_s),
                     standing_notice);
}

}  // namespace bide::report
