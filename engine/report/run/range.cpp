#include "bide/report/run/range.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <utility>

#include "bide/outcome/compare.hpp"
#include "bide/report/run/answer_lines.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

const char* name_of(study::Unmeasured what) {
  switch (what) {
    case study::Unmeasured::canopy_heat:
      return "canopy heat";
    case study::Unmeasured::leakage:
      return "draught";
    case study::Unmeasured::shivering:
      return "how long shivering lasts";
    case study::Unmeasured::swimming:
      return "how long cold arms swim";
    case study::Unmeasured::model_error:
      break;
  }
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
  std::vector<const char*> differs;
  for (const study::Unmeasured each : study::unmeasured_of(scenario)) differs.push_back(name_of(each));
  return fmt::format("{} {} ({}) give each range; not a forecast", members + 1, runs_of_a_range,
                     fmt::join(differs, ", "));
}

Answer run_answer(const Material& m, const study::RangeMembers& members, const std::string& buys) {
  const outcome::Figures figures = outcome::figures_of(m.outcome, m.timeline);
  return answer_of({figures, m.scenario, members}, buys);
}

}  // namespace bide::report
