#include "bide/report/run/range.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <utility>

#include "bide/outcome/compare.hpp"
#include "bide/report/run/answer_lines.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

std::string unmeasured_words(const std::string& pointer) {
  if (pointer == "/raft/canopy_heat_loss_position") return "canopy heat";
  if (pointer == "/raft/leakage_position") return "draught";
  if (pointer == "/model/shivering_endurance") return "how long shivering lasts";
  return "the model's error";
}

}  // namespace

using outcome::CrewTimes;

std::string latest_words(const study::TimeRange& range, double horizon_s) {
  return range.latest_s ? duration(*range.latest_s) : "after " + horizon(horizon_s);
}

std::string range_words(const study::TimeRange& range, double horizon_s) {
  if (!range.earliest_s) return not_reached(horizon_s);
  const std::string from = duration(*range.earliest_s);
  const std::string to = latest_words(range, horizon_s);
  return from == to ? from : from + " to " + to;
}

std::string what_the_range_is(std::size_t members, const scenario::ValidScenario& scenario) {
  if (members == 0) return "no range: the file states all that nobody has measured; one case, not a forecast";
  std::vector<std::string> differs;
  for (const std::string& each : study::unmeasured_inputs(scenario))
    if (std::string words = unmeasured_words(each);
        std::find(differs.begin(), differs.end(), words) == differs.end())
      differs.push_back(std::move(words));
  return fmt::format(
      "{} runs of one case that differ in what nobody has measured ({}) give each range; not a forecast",
      members + 1, fmt::join(differs, ", "));
}

Answer run_answer(const Material& m, const study::RangeMembers& members, const std::string& buys) {
  const outcome::Figures figures = outcome::figures_of(m.outcome, m.timeline);
  return answer_of({figures, m.scenario, members}, buys);
}

}  // namespace bide::report
