// Getting into the raft: minutes in the water, water shipped, wetness.
//
// Validity: inflatable rafts released by hand or by a hydrostatic release. No trial gives these figures for a
// crew; where a standard bounds one, it is named.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

inline constexpr Sourced swim_min{
    10.0, "min", "", "reaching and entering a raft alongside in a sea", Trust::judgement, 3.0, 30.0};
inline constexpr Sourced release_depth_m{
    3.0, "m", "msccirc811", "hydrostatic release acts at 2 to 4 m", Trust::seen, 2.0, 4.0};
inline constexpr Sourced container_rise_m_s{
    1.0, "m/s", "", "buoyant canister, drag-limited", Trust::judgement, 0.5, 2.0};
inline constexpr Sourced inflation_min{
    1.0, "min", "lsacode", "4.2.2: 1 min at 18-20 degC, 3 min at -30 degC", Trust::second_hand, 1.0, 3.0};
inline constexpr Sourced shipped_dry_L_per_person{
    0.5, "L", "", "spray and boots when stepping across", Trust::judgement, 0.0, 2.0};
inline constexpr Sourced shipped_swim_L_per_person{
    2.0, "L", "", "half of the 4.1-4.5 kg that soaked heavy clothing holds drains aboard", Trust::judgement,
    0.5, 5.0};

// ---- what people do in the water
// Swimming slowly, heat of the body over the basal rate of 1 met.
inline constexpr Sourced swimming_met{6.0,
                                      "met",
                                      "ainsworth2011",
                                      "18310: swimming, leisurely, not lap: 6.0; sidestroke 7.0",
                                      Trust::from_memory,
                                      5.0,
                                      7.0};
inline constexpr Sourced resting_met{1.0, "met", "ainsworth2011", "the unit: sitting quietly",
                                     Trust::from_memory};
// Work takes the place of shivering, watt for watt.
inline constexpr Sourced work_replaces_shivering{
    1.0,
    "-",
    "hongnadel1979",
    "shivering fades as exercise in the cold grows; the rate is a judgement",
    Trust::from_memory,
    0.5,
    1.0};
// Share of a segment's skin that other skin covers, so that no water passes it. Knees drawn up: thighs
// against each other and the belly, arms against the sides. Huddled: chests together, arms around others.
inline constexpr Sourced knees_fold_trunk{
    0.40, "-", "", "geometry of the posture; nobody has measured it", Trust::judgement, 0.25, 0.50};
inline constexpr Sourced knees_fold_arms{0.35, "-", "", "the same", Trust::judgement, 0.25, 0.50};
inline constexpr Sourced knees_fold_legs{0.25, "-", "", "the same", Trust::judgement, 0.15, 0.35};
inline constexpr Sourced huddle_folds_trunk{0.45, "-", "", "the same", Trust::judgement, 0.30, 0.60};
inline constexpr Sourced huddle_folds_arms{0.25, "-", "", "the same", Trust::judgement, 0.10, 0.40};
inline constexpr Sourced huddle_folds_legs{0.25, "-", "", "the same", Trust::judgement, 0.15, 0.35};

// Operating range of rafts: outside it a caution is given.
inline constexpr Sourced raft_sea_low_degC{-1.0, "degC", "lsacode", "1.2.2", Trust::seen};
inline constexpr Sourced raft_sea_high_degC{30.0, "degC", "lsacode", "1.2.2", Trust::seen};
inline constexpr Sourced raft_air_low_degC{-30.0, "degC", "lsacode", "1.2.2, stowage and air", Trust::seen};
inline constexpr Sourced raft_air_high_degC{50.0, "degC", "iso7933",
                                            "upper end of the heat-strain model's range", Trust::seen};

// LSA Code 4.2.3.
inline constexpr Sourced floor_per_person_m2{0.372, "m2", "lsacode", "4.2.3", Trust::second_hand};

}  // namespace bide::constants
