// Clothing: insulation, vapour resistance, wetting.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

inline constexpr Sourced clo_m2K_W{0.155, "m2 K/W", "", "1 clo", Trust::definition};

// ---- ISO 9920, dry (by public transcriptions)
inline constexpr Sourced fcl_per_clo{
    0.28, "1/clo", "iso9920", "f_cl = 1 + 0.28 I_cl, 0.2-1.7 clo", Trust::second_hand, 0.28, 0.30};

// ---- wetness
inline constexpr Sourced wholly_wet_surface{
    0.3, "-", "", "carried over held water from which all of the surface evaporates freely", Trust::judgement,
    0.1, 0.6};
inline constexpr Sourced drain_time_s{
    600.0, "s", "", "water above what soaked cloth holds runs off", Trust::judgement, 120.0, 1800.0};
inline constexpr Sourced wick_time_s{1800.0,           "s",   "",    "cloth in a puddle fills by wicking",
                                     Trust::judgement, 600.0, 7200.0};
inline constexpr Sourced wrung_share{
    0.5, "-", "", "of what soaked cloth holds, after wringing by hand", Trust::judgement, 0.35, 0.7};

// ---- vapour
inline constexpr Sourced permeability_aid{
    0.08, "-", "", "i_m of impermeable covers 0.06 to 0.1, recalled", Trust::from_memory, 0.06, 0.10};

// ---- thermal protective aid: a bag of foil or coated cloth
inline constexpr Sourced aid_material_m2K_W{0.00013, "m2 K/W", "lsacode", "2.5.1: at most 7,800 W/(m2 K)",
                                            Trust::seen};
inline constexpr Sourced aid_air_gap_mm{10.0, "mm", "", "loose bag over clothing, mean", Trust::judgement,
                                        3.0,  25.0};
inline constexpr Sourced aid_touching{
    0.4, "-", "", "share of the bag that lies on the clothing, without an air gap", Trust::judgement,
    0.2, 0.7};

}  // namespace bide::constants
