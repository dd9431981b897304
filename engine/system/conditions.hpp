// The conditions of a person of a scenario, as the comparison's regions count them.
#pragma once

#include "bide/constants/regions.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/weather/weather.hpp"

namespace bide::system {

constants::Dress dress_of(const scenario::Ensemble& worn);

// In the sea without a raft, else in air; mean of the weather's water or air over the first day, since what
// it is inside a raft is not known before the run, and how long a run is followed must not change it.
// @param person place in the crew
constants::Conditions conditions_of(const scenario::ValidScenario& scenario, const weather::Record& weather,
                                    std::size_t person);

}  // namespace bide::system
