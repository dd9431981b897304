// The first minutes in cold water: breath that cannot be held, a heart driven hard, water breathed in.
//
// What share of those who enter the water these minutes cost is not published: there are shares of deaths,
// and of people in accidents that were chosen because somebody drowned. So a scenario states a range, or
// none.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

// Greatest from 10 to 15 degC, by the same reading.
inline constexpr Sourced cold_shock_below_degC{
    25, "degC", "brooks2003", "chapter 2, as a forum quotes it", Trust::second_hand, 20, 25};

}  // namespace bide::constants
