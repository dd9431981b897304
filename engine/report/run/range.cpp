#include "bide/report/run/range.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/outcome/compare.hpp"
#include "bide/report/run/answer_lines.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {

using outcome::CrewTimes;

study::TimeRange range_over(const outcome::Outcome& outcome, const std::vector<study::Future>& members,
                            CrewState state, CrewTime which) {
  const std::size_t who = which == &CrewTimes::first_s  ? study::first_person
                          : which == &CrewTimes::half_s ? study::half_of_crew
                                                        : study::last_person;
  const bool able = state == &outcome::Outcome::able;
  std::vector<std::optional<double>> all{(outcome.*state).*which};
  for (const study::Future& member : members)
    all.push_back(study::until_s(able ? member.able_h[who] : member.alive_h[who], outcome.horizon_s));
  return study::range_of(all);
}

std::string latest_words(const study::TimeRange& range, double horizon_s) {
  return range.latest_s ? duration(*range.latest_s) : "after " + horizon(horizon_s);
}

std::string range_words(const study::TimeRange& range, double horizon_s) {
  if (!range.earliest_s) return not_reached(horizon_s);
  const std::string from = duration(*range.earliest_s);
  const std::string to = latest_words(range, horizon_s);
  return from == to ? from : from + " to " + to;
}

std::string what_the_range_is(std::size_t members) {
  if (members == 0) return "no range: the file states all that nobody has measured; one case, not a forecast";
  return fmt::format("{} runs of one case over what nobody has measured; not a forecast", members + 1);
}

Answer run_answer(const Material& m, const std::vector<study::Future>& members, const std::string& buys) {
  const outcome::Figures figures = outcome::figures_of(m.outcome, m.timeline);
  AnswerBasis basis{figures, m.scenario, {}, {}};
  if (!members.empty()) {
    const auto range = [&](CrewState state) {
      return CrewRange{range_over(m.outcome, members, state, &CrewTimes::first_s),
                       range_over(m.outcome, members, state, &CrewTimes::last_s)};
    };
    basis.able = range(&outcome::Outcome::able);
    basis.alive = range(&outcome::Outcome::alive);
    const auto earliest = std::min_element(members.begin(), members.end(), [](const auto& a, const auto& b) {
      return a.able_h[study::first_person] < b.able_h[study::first_person];
    });
    if (basis.able->first.earliest_s) basis.early_limit = earliest->able_cause[study::first_person];
  }
  return answer_of(basis, buys, what_the_range_is(members.size()));
}

}  // namespace bide::report
