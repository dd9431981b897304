#include "bide/study/questions/ask_next.hpp"

#include <algorithm>

#include "bide/scenario/priors.hpp"
#include "bide/scenario/write.hpp"

namespace bide::study {

std::vector<Ask> ask_next(const std::vector<Unknown>& unknowns, double least) {
  std::vector<Ask> out;
  for (const scenario::Prior& prior : scenario::priors().priors) {
    Ask ask{prior.ask, 0};
    for (const Unknown& unknown : unknowns) {
      const bool answered =
          unknown.name == prior.key || std::find(prior.inputs.begin(), prior.inputs.end(),
                                                 scenario::any_index(unknown.name)) != prior.inputs.end();
      if (answered) ask.of_variance += unknown.reduction.of_variance;
    }
    if (ask.of_variance > least) out.push_back(std::move(ask));
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const Ask& a, const Ask& b) { return a.of_variance > b.of_variance; });
  return out;
}

}  // namespace bide::study
