// Clothing: insulation, vapour resistance, wetting.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

inline constexpr Sourced clo_m2K_W{0.155, "m2 K/W", "", "1 clo", Trust::definition};

// ---- ISO 9920, dry (by public transcriptions)
inline constexpr Sourced icl_offset_clo{0.161, "clo", "iso9920", "I_cl = 0.161 + 0.835 sum I_clu",
                                        Trust::second_hand};
inline constexpr Sourced icl_slope{0.835, "-", "iso9920", "I_cl = 0.161 + 0.835 sum I_clu",
                                   Trust::second_hand};
inline constexpr Sourced fcl_per_clo{
    0.28, "1/clo", "iso9920", "f_cl = 1 + 0.28 I_cl, 0.2-1.7 clo", Trust::second_hand, 0.28, 0.30};
inline constexpr Sourced air_layer_m2K_W{0.1085, "m2 K/W", "iso9920", "I_a, nude, 0.10-0.15 m/s",
                                         Trust::second_hand};
inline constexpr Sourced wind_reference_m_s{0.15, "m/s", "iso9920", "wind correction, reference",
                                            Trust::second_hand};
inline constexpr Sourced wind_highest_m_s{3.5, "m/s", "iso9920", "wind correction, end of range",
                                          Trust::second_hand};
inline constexpr Sourced walk_highest_m_s{1.2, "m/s", "iso9920", "walking correction, end of range",
                                          Trust::second_hand};
// exp(a (v - 0.15) + b (v - 0.15)^2 + c w + d w^2), on the total insulation of dressed people...
inline constexpr Sourced dressed_wind{-0.281, "s/m", "iso9920", "wind correction on I_T", Trust::second_hand};
inline constexpr Sourced dressed_wind_squared{0.044, "s2/m2", "iso9920", "wind correction on I_T",
                                              Trust::second_hand};
inline constexpr Sourced dressed_walk{-0.492, "s/m", "iso9920", "wind correction on I_T", Trust::second_hand};
inline constexpr Sourced dressed_walk_squared{0.176, "s2/m2", "iso9920", "wind correction on I_T",
                                              Trust::second_hand};
// ...and on the bare air layer.
inline constexpr Sourced bare_wind{-0.533, "s/m", "iso9920", "wind correction on I_a", Trust::second_hand};
inline constexpr Sourced bare_wind_squared{0.069, "s2/m2", "iso9920", "wind correction on I_a",
                                           Trust::second_hand};
inline constexpr Sourced bare_walk{-0.462, "s/m", "iso9920", "wind correction on I_a", Trust::second_hand};
inline constexpr Sourced bare_walk_squared{0.201, "s2/m2", "iso9920", "wind correction on I_a",
                                           Trust::second_hand};

// ---- wetness
inline constexpr Sourced wholly_wet_surface{
    0.3, "-", "", "carried over held water from which all of the surface evaporates freely", Trust::judgement,
    0.1, 0.6};
inline constexpr Sourced soak_time_s{
    60.0, "s", "hall1958", "soaked within 15 s to 2 min of immersion", Trust::seen, 15.0, 120.0};
inline constexpr Sourced drain_time_s{
    600.0, "s", "", "water above what soaked cloth holds runs off", Trust::judgement, 120.0, 1800.0};
inline constexpr Sourced wick_time_s{1800.0,           "s",   "",    "cloth in a puddle fills by wicking",
                                     Trust::judgement, 600.0, 7200.0};
inline constexpr Sourced wrung_share{
    0.5, "-", "", "of what soaked cloth holds, after wringing by hand", Trust::judgement, 0.35, 0.7};

// ---- vapour
inline constexpr Sourced permeability_ordinary{0.38, "-", "iso9920", "i_m of ordinary clothing",
                                               Trust::second_hand};
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
