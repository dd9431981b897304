// Stores: rationing, drinking and making water.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

inline constexpr Sourced food_carbohydrate_kJ_g{17.0, "kJ/g", "fao2003", "Atwater general factor",
                                                Trust::from_memory};
inline constexpr Sourced food_fat_kJ_g{37.0, "kJ/g", "fao2003", "Atwater general factor", Trust::from_memory};
inline constexpr Sourced food_protein_kJ_g{17.0, "kJ/g", "fao2003", "Atwater general factor",
                                           Trust::from_memory};

inline constexpr Sourced no_water_first_h{
    24.0, "h", "imoa657", "no water in the first 24 h, except for the injured", Trust::from_memory};
inline constexpr Sourced nothing_left_L{0.001, "L", "", "a stock below a millilitre counts as gone",
                                        Trust::judgement};
inline constexpr Sourced nothing_left_kJ{1.0, "kJ", "", "a stock below a crumb counts as gone",
                                         Trust::judgement};

// ---- desalinator
inline constexpr Sourced muscle_efficiency{
    0.22, "-", "", "mechanical work over extra heat and work, arms", Trust::judgement, 0.15, 0.25};

// ---- rain
inline constexpr Sourced rain_caught_share{
    0.7, "-", "", "canopy to container, recalled 0.6-0.8", Trust::from_memory, 0.6, 0.8};
inline constexpr Sourced rain_rinse_mm{
    1.0, "mm", "", "first rain that rinses salt off is let go, recalled", Trust::from_memory, 0.5, 3.0};
inline constexpr Sourced rain_store_L_person{
    3.0, "L", "", "what empty sachets, bags and bailers hold, per person of capacity", Trust::judgement,
    1.0, 10.0};

// ---- solar still, L = E G A / 2.3 MJ
inline constexpr Sourced still_efficiency{0.30,
                                          "-",
                                          "biologyinsights",
                                          "passive stills 0.30-0.45, floating ones at the low end",
                                          Trust::second_hand,
                                          0.15,
                                          0.45};
inline constexpr Sourced still_heat_MJ_L{2.3, "MJ/L", "", "usual form of the still equation, recalled",
                                         Trust::from_memory};

}  // namespace bide::constants
