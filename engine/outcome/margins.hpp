// How near each person came to each limit, while alive: 0 is the value of a well person, of fat what the
// person had at the start, 1 the limit.
//
// Inputs: a timeline, its outcome and the scenario with its limits. Validity: read at output times, so a
// peak between two of them is not seen; past 1 the limit was passed, if only for a while.
#pragma once

#include <vector>

#include "bide/outcome/outcome.hpp"

namespace bide::outcome {

struct Margin {
  system::Limit limit = system::Limit::none;
  std::vector<double> used_fraction;  // one per person, the most of the stay; never below 0
};

// The limits of being able, then those of life; none of the cabin's air where there is no cabin.
std::vector<Margin> margins(const timeline::Timeline& timeline, const Outcome& outcome,
                            const scenario::ValidScenario& scenario);

}  // namespace bide::outcome
