// Arteries and veins of the limbs that run side by side: sizes of an adult man, one limb.
//
// Validity: adults of 1.75 m; lengths go with height. Source: calibres of ultrasound tables and anatomy,
// named at each number; most were recalled.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

inline constexpr Sourced vessels_height_m{
    1.75, "m", "", "height of the man of these vessels", Trust::judgement, 1.70, 1.80};

// ---- upper arm
inline constexpr Sourced upper_arm_vessels_m{0.28, "m", "", "armpit to elbow, recalled", Trust::from_memory,
                                             0.24, 0.32};
inline constexpr Sourced upper_arm_artery_mm{
    3.9, "mm", "vesselcalibres", "brachial artery 3.87 (0.55)", Trust::second_hand, 3.3, 4.4};
inline constexpr Sourced upper_arm_vein_mm{
    3.0, "mm", "", "each of the two veins beside the brachial artery, recalled", Trust::from_memory,
    2.0, 4.0};
inline constexpr Sourced upper_arm_wall_mm{
    0.8, "mm", "", "between the two bloods: both walls, recalled", Trust::from_memory, 0.5, 1.5};

// ---- forearm
inline constexpr Sourced forearm_vessels_m{0.25, "m", "", "elbow to wrist, recalled", Trust::from_memory,
                                           0.22, 0.28};
inline constexpr Sourced forearm_artery_mm{
    2.3,
    "mm",
    "vesselcalibres",
    "radial and ulnar artery, 2.51 (0.49) near the elbow to 1.87 (0.36) at the wrist",
    Trust::second_hand,
    1.9,
    2.5};
inline constexpr Sourced forearm_vein_mm{
    1.6, "mm", "", "each of the two veins beside each artery, recalled", Trust::from_memory, 1.0, 2.2};
inline constexpr Sourced forearm_wall_mm{
    0.6, "mm", "", "between the two bloods: both walls, recalled", Trust::from_memory, 0.4, 1.2};

// ---- thigh
inline constexpr Sourced thigh_vessels_m{0.42, "m", "", "groin to knee, recalled", Trust::from_memory,
                                         0.36, 0.46};
inline constexpr Sourced thigh_artery_mm{
    7.0, "mm", "", "femoral and popliteal artery, recalled", Trust::from_memory, 6.0, 9.0};
inline constexpr Sourced thigh_vein_mm{
    9.0, "mm", "", "femoral and popliteal vein, recalled", Trust::from_memory, 7.0, 11.0};
inline constexpr Sourced thigh_wall_mm{
    1.5, "mm", "", "between the two bloods: both walls, recalled", Trust::from_memory, 1.0, 2.5};

// ---- lower leg
inline constexpr Sourced lower_leg_vessels_m{0.36, "m", "", "knee to ankle, recalled", Trust::from_memory,
                                             0.32, 0.40};
inline constexpr Sourced lower_leg_artery_mm{
    2.8, "mm", "", "tibial and peroneal arteries, recalled", Trust::from_memory, 2.0, 3.2};
inline constexpr Sourced lower_leg_vein_mm{
    3.0, "mm", "", "each of the two veins beside each artery, recalled", Trust::from_memory, 2.0, 4.0};
inline constexpr Sourced lower_leg_wall_mm{
    0.8, "mm", "", "between the two bloods: both walls, recalled", Trust::from_memory, 0.5, 1.5};

// A second vein lies on the artery's other side: it adds less than the first did.
inline constexpr Sourced second_vein_adds{
    0.7, "-", "", "conduction to two veins over that to one, less one", Trust::judgement, 0.5, 1.0};
inline constexpr Sourced blood_conductivity_W_mK{
    0.5, "W/(m K)", "fiala1999", "blood 0.49 to 0.51, recalled", Trust::from_memory, 0.49, 0.51};
inline constexpr Sourced laminar_nusselt{3.66,
                                         "-",
                                         "incropera2007",
                                         "developed laminar flow in a tube of uniform wall temperature",
                                         Trust::from_memory,
                                         3.66,
                                         4.36};

}  // namespace bide::constants
