// Which question would narrow the answer most, of those that somebody can ask.
//
// Inputs: the unknowns of an answer, one for each input of each person, and the priors with their questions.
// People of whom the same is unknown are taken together: "how old are they" is one question. Its reduction of
// variance is the sum over its inputs, which are drawn independently: the least that all answers together
// bring. Inputs without a question (the model's own error, weather to come) are left out.
#pragma once

#include <string>
#include <vector>

#include "bide/study/questions/ask_odds.hpp"

namespace bide::study {

struct Ask {
  std::string question;
  double of_variance = 0;  // of the first person's able until, at least
};

// @return those that bring anything beyond `least`, largest first
// @param least share of the variance, [0, 1]
std::vector<Ask> ask_next(const std::vector<Unknown>& unknowns, double least);

}  // namespace bide::study
