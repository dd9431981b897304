// The hours before: what a last meal, drink and effort leave behind.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

inline constexpr Sourced last_drink_L{0.3, "L", "", "a mug", Trust::judgement, 0.1, 0.6};
inline constexpr Sourced last_meal_kJ{3000, "kJ", "", "about a third of a day's food", Trust::judgement,
                                      1500, 4500};
inline constexpr Sourced meal_carbohydrate_share{0.50, "-", "", "ordinary mixed food", Trust::judgement,
                                                 0.4,  0.6};
inline constexpr Sourced meal_protein_share{0.16, "-", "", "ordinary mixed food", Trust::judgement, 0.1, 0.2};
// Exertion in the last hour warms the core before boarding.
inline constexpr Sourced core_rise_K_per_met{
    0.12,
    "K",
    "iso7933",
    "equilibrium core 0.0036 M + 36.6: 0.0036 x 58.15 = 0.21 K per met, of"
    " which an hour reaches more than half",
    Trust::derived,
    0.1,
    0.21};
// After 84 h with little sleep and food shivering began at a mean body temperature of 34.8 instead of 35.8
// degC.
inline constexpr Sourced sleepless_shift_K{1.0, "K", "castellani2003", "35.8 less 34.8 degC", Trust::seen};
inline constexpr Sourced sleepless_h{84, "h", "castellani2003", "of the trial", Trust::seen};
inline constexpr Sourced usual_waking_h{16, "h", "", "a day's waking hours change nothing", Trust::judgement,
                                        14, 20};
// Respiratory quotient of hard shivering, for turning oxygen into heat.
inline constexpr Sourced shivering_quotient{0.85, "-", "", "mixed fuel", Trust::judgement, 0.75, 0.95};

}  // namespace bide::constants
