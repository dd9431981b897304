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

// Ten swimmers finished 90 min at 25 degC, so the line is a guess there already. Muscle in water cannot be
// colder than the water, and grips are held longest by muscle of 27 degC: above that nothing of the cold is
// left to count.
inline constexpr Sourced swim_warmest_degC{
    25.0, "degC", "tipton1999", "the warmest water of the trials: all ten finished 90 min", Trust::seen};
inline constexpr Sourced swim_no_cold_degC{
    27.0,
    "degC",
    "clarke1958",
    "muscle of the forearm at which contractions are held longest; colder muscle tires sooner. Recalled",
    Trust::from_memory,
    25.0,
    30.0};

// The spread of the minutes from person to person, clothes, skill and fat of the arms in it. Within a trial:
// 30 to 90 min as the ends of 16 people, 3.5 standard deviations apart, are 0.31; seven novices and eight
// experts swam 806 (189) and 1439 (177) m in 10 degC (Lounsbury 2004), 0.32 together; of ten at 10 degC one
// failed at 61 min and half were left at 90 (Tipton 1999), 0.3. Those ten, who chose to swim and wore no
// clothes, are ln(90 / 34) above the line: pooled with the 15 and 17 of the other two trials it is 0.52.
// Between the two, and the factor of 1.5 that the scale above rests on. Half of it is the fat of the arms:
// triceps skinfold and distance in 14 degC had r = 0.70 in 17 people, and the fat of the whole body none
// (Wallingford 2000), so no slope on the body's fat is put in its place.
inline constexpr Sourced spread_swim_endurance{
    0.40, "-", "tipton1999", "sd of the logarithm; see the comment above", Trust::derived, 0.31, 0.52};

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
