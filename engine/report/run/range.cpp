#include "bide/report/run/range.hpp"

#include <fmt/format.h>

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

std::string range_words(const study::TimeRange& range, double horizon_s) {
  if (!range.earliest_s) return not_reached(horizon_s);
  const std::string from = duration(*range.earliest_s);
  const std::string to = range.latest_s ? duration(*range.latest_s) : "beyond " + horizon(horizon_s);
  return from == to ? from : from + " to " + to;
}

std::string range_sentence(const char* name, const outcome::Outcome& outcome,
                           const std::vector<study::Future>& members, CrewState state) {
  const auto words = [&](CrewTime which) {
    return range_words(range_over(outcome, members, state, which), outcome.horizon_s);
  };
  const std::string first = words(&CrewTimes::first_s), last = words(&CrewTimes::last_s);
  if (outcome.persons.size() == 1) return fmt::format("{}: {}.", name, first);
  if (first == last) return fmt::format("{}: {}, for the whole crew.", name, first);
  return fmt::format("{}: first person {}, last person {}.", name, first, last);
}

std::string what_the_range_is(std::size_t members) {
  const std::string rest =
      "Crew, weather and sea are one case, as entered, not a forecast. For chances over people and weather "
      "use the odds command.";
  if (members == 0)
    return "A single run of one scenario, without a range: the file states everything that is not known. " +
           rest;
  return fmt::format(
      "The ranges are {} runs spread over what nobody has measured and over the model's own error: heat loss "
      "and leakage of the canopy, whether shivering tires, heat made, heat passed by tissue and clothing, "
      "and "
      "water lost, as far as the file does not state them. {}",
      members + 1, rest);
}

}  // namespace bide::report
