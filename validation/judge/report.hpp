// The judge's answer: every candidate's scores, and the tables of them as text.
#pragma once

#include <string>
#include <vector>

#include "validation/judge/candidates.hpp"
#include "validation/judge/sizes.hpp"

namespace bide::validation {

struct Candidate {
  std::string name;
  Scores scores;
};

struct Judgement {
  Runs runs;
  std::vector<Candidate> candidates;  // the model in force first, with its own error next
  Posterior posterior;
  WidthsByRegion widths;
  double median_misfit = 0;  // of the surface, in half-intervals
};

inline constexpr std::size_t model_with_error = 1;  // of the candidates

// Runs everything: minutes.
// @param draws runs of the comparison, more than Surface::terms
Judgement judge(std::size_t draws = 160, std::uint64_t seed = 1);

std::string judge_text(const Judgement& judgement);
// Every row under every candidate: what was published, its conditions, error, coverage and width.
std::string judge_csv(const Judgement& judgement);

}  // namespace bide::validation
