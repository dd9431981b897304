// What single people of a crew need, and up to where a thermal protective aid is meant to be worn.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

inline constexpr Sourced aid_warmest_air_degC{
    20.0, "degC", "lsacode", "2.5: thermal protective aids are for air of -30 to +20 degC; recalled",
    Trust::from_memory};

// ---- reading close print without glasses
inline constexpr Sourced presbyopic_share{
    0.58, "-", "shahroudpresbyopia", "40 to 64 years, n 5,190: 58 % (56 to 60)", Trust::seen, 0.56, 0.60};
inline constexpr Sourced presbyopic_oldest_men{0.89, "-", "shahroudpresbyopia",
                                               "60 to 64 years: 11 % of men are free of it", Trust::derived};
inline constexpr Sourced presbyopic_oldest_women{
    0.77, "-", "shahroudpresbyopia", "60 to 64 years: 23 % of women are free of it", Trust::derived};
inline constexpr Sourced presbyopic_oldest_from_years{60.0, "years", "shahroudpresbyopia", "60 to 64 years",
                                                      Trust::seen};
inline constexpr Sourced glasses_from_age_years{
    45.0, "years", "shahroudpresbyopia",
    "mean add 1.30 D at 45-49, 0.65 D at 40-44: +2 D serves from here on", Trust::derived};

}  // namespace bide::constants
