// The answer of one simulation in lines, for every command that shows one: until when, by what, who first,
// what buys time, cabin, water, the first hour, how sure it is, what is not in it.
#pragma once

#include <optional>
#include <span>
#include <string>

#include "bide/outcome/compare.hpp"
#include "bide/report/words/answer.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/study/questions/levers.hpp"
#include "bide/study/questions/unmeasured.hpp"

namespace bide::report {

// The central case, and the same over what nobody has measured.
struct AnswerBasis {
  const outcome::Figures& figures;
  const scenario::ValidScenario& scenario;
  std::span<const study::RangeMember> members = {};
};

// "Person B (woman, 34)"; several by their letters alone.
// @param persons places in the crew, at least one
std::string names_with_age(const std::vector<int>& persons, const scenario::ValidScenario& scenario);

// @param buys what would buy time, or how to ask
Answer answer_of(const AnswerBasis& basis, const std::string& buys);

// Single lines. "110 h (19 Oct 10:00 UTC) to after 12 d, central case after 12 d".
std::string until_line(const AnswerBasis& basis, study::CrewState state);
std::string ends_line(const AnswerBasis& basis);
// "Person B (woman, 34)"; "nobody in the central case; nearest..."
std::string who_first(const AnswerBasis& basis);
std::string inside_line(const AnswerBasis& basis);
std::string water_line(const AnswerBasis& basis);
std::string how_sure(const outcome::Figures& figures);
// What buys most, or how to ask where the levers were not tried.
std::string buys_line(const std::optional<study::LeversTried>& levers,
                      const scenario::ValidScenario& scenario);

}  // namespace bide::report
