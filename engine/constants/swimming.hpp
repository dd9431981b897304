// Swimming in cold water: for how long arms keep a person moving and afloat.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

inline constexpr Sourced swim_failure_min{
    47,
    "min",
    "ducharme2007",
    "mean of several trials in 10 to 14 degC, clothes and lifejacket, any skill",
    Trust::seen,
    30,
    90};
inline constexpr Sourced swim_failure_at_degC{
    12, "degC", "ducharme2007", "middle of 10 to 14 degC", Trust::derived, 10, 14};
// 8 of 10 swam for 90 min in 18 degC (Tipton 1999): with the spread of such times taken as a factor of 1.5,
// half swim for 90 x 1.5^0.84 = 127 min. 6 K / ln(127 / 47) = 6.0 K. At 5 degC the line is at 15 min (1.5
// and 7.6 of two thin men at 4.7, two fat men later, Keatinge 1969), at 25 at 7 h (all ten beyond 90 min).
inline constexpr Sourced swim_failure_scale_K{
    6.0, "K", "tipton1999", "a factor e in time; see the comment above", Trust::derived, 4.0, 9.0};

inline constexpr Sourced swim_weakens_from{
    0.5,
    "-",
    "",
    "of the time to failure, as shivering tires from half of its endurance on",
    Trust::judgement,
    0.25,
    0.9};
inline constexpr Sourced least_swimming_power{
    0.05, "-", "", "what no longer keeps a mouth above water, of a rested swimmer's", Trust::judgement,
    0,    0.3};

}  // namespace bide::constants
