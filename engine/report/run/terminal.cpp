#include "bide/report/run/terminal.hpp"

#include <fmt/format.h>

#include "bide/core/notice.hpp"
#include "bide/report/document/text.hpp"
#include "bide/report/run/range.hpp"
#include "bide/report/run/run_page.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

std::string first_of(const outcome::CrewTimes& central, const study::RangeMembers& members,
                     study::CrewState state, double horizon_s) {
  const study::TimeRange range = study::range_over(central, members, state, &outcome::CrewTimes::first_s);
  return range_words(range, horizon_s) + (range.earliest_s ? " (first person)" : "");
}

Letters letters_of(const TerminalOptions& options) {
  return options.utf8 ? Letters::utf8 : Letters::ascii;
}

}  // namespace

std::string terminal_summary(const outcome::Outcome& outcome, const timeline::Timeline& timeline,
                             const scenario::ValidScenario& scenario, const TerminalOptions& options) {
  const pages::RunMaterial material{
      {outcome, timeline, scenario}, options.members, options.levers, false, options.drawn};
  return to_text(pages::run_page(material), {options.width, letters_of(options), options.full, options.also});
}

std::string quiet_line(const outcome::Outcome& outcome, const scenario::ValidScenario& scenario,
                       const TerminalOptions& options) {
  return fmt::format("{}: able until {}, alive until {}. One case, not a forecast. {}\n",
                     plain(scenario.scenario.name, letters_of(options)),
                     first_of(outcome.able, options.members, &outcome::Endurance::able, outcome.horizon_s),
                     first_of(outcome.alive, options.members, &outcome::Endurance::alive, outcome.horizon_s),
                     standing_notice);
}

}  // namespace bide::report
