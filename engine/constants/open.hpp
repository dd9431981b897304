// Substitute for the cabin where there is none: people in the water or on an open raft exchange heat and
// vapour with the weather itself.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

// An air exchange so large that the air around people is the outside air.
inline constexpr Sourced open_air_exchange_m3_s{
    5, "m3/s", "", "a light air through a few square metres", Trust::judgement, 2, 500};
// Volume of air around each person in the open, and heat capacity of the node for their radiant surroundings:
// small enough that air and surroundings follow the weather within a minute, large enough not to be stiff.
inline constexpr Sourced open_volume_m3{10, "m3", "", "per person", Trust::judgement, 2, 20};
inline constexpr Sourced open_radiant_J_K{40000, "J/K", "", "20 s at the coupling below", Trust::judgement,
                                          1e4,   1e5};
// Coupling of the radiant surroundings of people in the open to air and sky.
inline constexpr Sourced open_radiant_W_K{2000, "W/K", "", "large against any person's 10 W/K",
                                          Trust::judgement};
inline constexpr Sourced open_sky_share{
    0.4, "-", "", "of a seated person's view that is sky; the rest is sea", Trust::judgement, 0.3, 0.5};
// Sun on a person in the open.
inline constexpr Sourced raft_reflects_sun{
    0.25,
    "-",
    "",
    "tubes and floor: between black rubber (0.05) and the cloth of canopies (0.45)",
    Trust::judgement,
    0.05,
    0.45};
inline constexpr Sourced person_sun_absorbed{
    0.7, "-", "ashrae2017", "ch. 9: skin and ordinary clothing; recalled", Trust::from_memory, 0.5, 0.9};
// Floor fabric under the water.
inline constexpr Sourced floor_mass_kg_m2{
    1.5, "kg/m2", "", "coated cloth of a double floor", Trust::judgement, 0.5, 2.5};
// Heat capacity of the contents of a crowded cabin besides air: gear, the skins of tubes.
inline constexpr Sourced contents_J_Km2{
    2000, "J/(K m2)", "", "a kilogram or two of gear per m2 of floor", Trust::judgement, 500, 6000};

// Latent heat and radiation are evaluated at a typical skin or cloth temperature.
inline constexpr Sourced typical_surface_degC{
    25, "degC", "", "latent heat differs by 1 % from 15 to 35 degC", Trust::judgement, 15, 35};

}  // namespace bide::constants
