// Getting into the raft: minutes in the water, water shipped, wetness.
//
// Validity: inflatable rafts released by hand or by a hydrostatic release. No trial gives these figures for a
// crew; where a standard bounds one, it is named.
#pragma once

#include "core/sourced.hpp"

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

// Operating range of rafts: outside it a caution is given.
inline constexpr Sourced raft_sea_low_degC{-1.0, "degC", "lsacode", "1.2.2", Trust::seen};
inline constexpr Sourced raft_sea_high_degC{30.0, "degC", "lsacode", "1.2.2", Trust::seen};
inline constexpr Sourced raft_air_low_degC{-30.0, "degC", "lsacode", "1.2.2, stowage and air", Trust::seen};
inline constexpr Sourced raft_air_high_degC{50.0, "degC", "iso7933",
                                            "upper end of the heat-strain model's range", Trust::seen};

// LSA Code 4.2.3.
inline constexpr Sourced floor_per_person_m2{0.372, "m2", "lsacode", "4.2.3", Trust::second_hand};

}  // namespace bide::constants
