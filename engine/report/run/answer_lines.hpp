// The answer of one simulation in lines, for every command that shows one: until when, by what, who first,
// what buys time, cabin, water, the first hour, how sure it is, what is not in it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bide/outcome/compare.hpp"
#include "bide/report/words/answer.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/study/questions/levers.hpp"
#include "bide/study/questions/unmeasured.hpp"

namespace bide::report {

struct CrewRange {
  study::TimeRange first, last;
};

// The central case, with its range over what is not known where there is one.
struct AnswerBasis {
  const outcome::Figures& figures;
  const scenario::ValidScenario& scenario;
  std::optional<CrewRange> able, alive;
  system::Limit early_limit = system::Limit::none;  // of being able, at the early end of the range
};

// The range of a figure's times over the central case and others.
CrewRange crew_range(const outcome::CrewTimes& central, const std::vector<outcome::CrewTimes>& others);

// @param buys  what would buy time, or how to ask
// @param range what the range is over
Answer answer_of(const AnswerBasis& basis, const std::string& buys, const std::string& range);

// Single lines. "110 h (19 Oct 10:00 UTC) to after 12 d, central case after 12 d".
std::string until_line(const AnswerBasis& basis, const outcome::CrewTimes outcome::Figures::*times,
                       const std::optional<CrewRange>& range);
std::string ends_line(const AnswerBasis& basis);
std::string who_first(
    const outcome::Figures& figures);  // "Person A"; "nobody; nearest: Persons B and C, ..."
std::string inside_line(const AnswerBasis& basis);
std::string water_line(const AnswerBasis& basis);
std::string how_sure(const outcome::Figures& figures);
// What buys most, or how to ask where the levers were not tried.
std::string buys_line(const std::optional<study::LeversTried>& levers,
                      const scenario::ValidScenario& scenario);

}  // namespace bide::report
