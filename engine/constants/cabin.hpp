// The shelter: canopy, air leakage and openings, floor, condensation, carbon dioxide, water on the floor.
//
// No heat loss or air change of a raft canopy has been measured: those rows carry wide ranges, and `low` and
// `high` are the ends of the scenario's position in the range.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

// ---- canopy heat loss, W/(m2 K), inside to outside air, by wind at raft height
#define BIDE_CANOPY_U(name, low, value, high, wind)                                           \
  inline constexpr Sourced name {                                                             \
    value, "W/(m2 K)", "mihara1979", "greenhouse films and glazing as stand-ins, wind " wind, \
        Trust::judgement, low, high                                                           \
  }
BIDE_CANOPY_U(canopy_u_single_calm, 3.5, 5.0, 6.0, "below 1 m/s");
BIDE_CANOPY_U(canopy_u_single_2_m_s, 5.0, 6.0, 7.0, "2 m/s");
BIDE_CANOPY_U(canopy_u_single_5_m_s, 6.5, 7.5, 9.0, "5 m/s");
BIDE_CANOPY_U(canopy_u_single_10_m_s, 7.5, 8.5, 10.0, "10 m/s and above");
BIDE_CANOPY_U(canopy_u_double_calm, 2.3, 3.0, 3.5, "below 1 m/s, gap held open");
BIDE_CANOPY_U(canopy_u_double_5_m_s, 3.0, 3.6, 4.2, "5 m/s, gap held open");
BIDE_CANOPY_U(canopy_u_double_10_m_s, 3.3, 4.0, 5.0, "10 m/s and above, gap held open");
#undef BIDE_CANOPY_U
inline constexpr Sourced canopy_calm_m_s{
    0.5, "m/s", "", "middle of the calm column, 0 to 1 m/s", Trust::judgement, 0.0, 1.0};

// Factor on both air films of the canopy that makes inner film + cloth + outer film, with radiation apart
// (cabin/envelope.hpp), give the single-skin row above at that wind.
#define BIDE_FILM_FACTOR(name, low, value, high, wind)                                                       \
  inline constexpr Sourced name {                                                                            \
    value, "-", "mihara1979", "solves the layer sum for the canopy heat loss at " wind, Trust::derived, low, \
        high                                                                                                 \
  }
BIDE_FILM_FACTOR(canopy_film_factor_calm, 0.43, 0.99, 1.36, "0.5 m/s");
BIDE_FILM_FACTOR(canopy_film_factor_2_m_s, 0.70, 0.98, 1.27, "2 m/s");
BIDE_FILM_FACTOR(canopy_film_factor_5_m_s, 0.85, 1.09, 1.45, "5 m/s");
BIDE_FILM_FACTOR(canopy_film_factor_10_m_s, 0.90, 1.12, 1.46, "10 m/s");
#undef BIDE_FILM_FACTOR
inline constexpr Sourced canopy_gap_factor{
    1.19,
    "-",
    "mihara1979",
    "on the gap's conductance, the same for the double-skin row; mean over winds, spread 0.9-1.6",
    Trust::derived,
    1.0,
    1.42};
inline constexpr Sourced layer_inner_film_W_m2K{
    5.0, "W/(m2 K)", "iso6946", "convective part inside, heat flowing up", Trust::second_hand};
inline constexpr Sourced layer_radiation_W_m2K{4.7, "W/(m2 K)", "ashrae2017", "ch. 9, linear coefficient",
                                               Trust::second_hand};
inline constexpr Sourced cloth_resistance_m2K_W{
    0.002, "m2 K/W", "", "0.3-0.5 mm of coated nylon at 0.2-0.25 W/(m K), recalled", Trust::judgement,
    0.001, 0.003};
inline constexpr Sourced canopy_gap_mm{
    25.0, "mm", "", "two skins over the same arch tubes", Trust::common_practice, 10.0, 50.0};
inline constexpr Sourced cloth_mass_kg_m2{
    0.30, "kg/m2", "", "coated nylon or polyester", Trust::common_practice, 0.15, 0.5};
inline constexpr Sourced cloth_heat_J_kgK{
    1500.0, "J/(kg K)", "", "nylon and polyurethane, recalled", Trust::judgement, 1200.0, 1700.0};

// ---- canopy and sun, one skin of orange or yellow coated cloth
inline constexpr Sourced cloth_sun_transmitted{
    0.20,
    "-",
    "",
    "between white coated cloth (0.04-0.10) and thin translucent cloth; nothing measured",
    Trust::from_memory,
    0.10,
    0.30};
inline constexpr Sourced cloth_sun_absorbed{
    0.35, "-", "", "between makers' white and khaki cloths", Trust::from_memory, 0.25, 0.45};

// ---- leakage with everything shut, per m2 of floor: the larger of the two
inline constexpr Sourced leakage_calm_L_s_m2{
    0.12,
    "L/(s m2)",
    "",
    "parked cars, tents: 0.1 / 0.5 / 3 air changes an hour at 0.9 m height",
    Trust::judgement,
    0.03,
    0.75};
inline constexpr Sourced leakage_per_wind_L_m2{
    0.12, "L/m3", "", "greenhouse default 0.15, thirty-fold spread of moving cars", Trust::judgement,
    0.02, 0.55};

// ---- openings
inline constexpr Sourced de_gids_wind{0.001, "-", "degids1982", "eq., on U10^2", Trust::second_hand};
inline constexpr Sourced de_gids_stack{0.0035, "m/(s2 K)", "degids1982", "eq., on H dT", Trust::second_hand};
inline constexpr Sourced de_gids_turbulence{0.01, "m2/s2", "degids1982", "eq., constant", Trust::second_hand};
inline constexpr Sourced cross_wind_facing{0.55, "-", "ashrae2009", "C_w, wind onto the opening",
                                           Trust::second_hand};
inline constexpr Sourced cross_wind_turned{0.25, "-", "ashrae2009", "C_w falls by this when turned 180 deg",
                                           Trust::second_hand};
inline constexpr Sourced cross_discharge{0.40, "-", "ashrae2009", "C_d at no temperature difference",
                                         Trust::second_hand};
inline constexpr Sourced cross_discharge_per_K{0.0045, "1/K", "ashrae2009", "C_d", Trust::second_hand};
inline constexpr Sourced entrance_height_m{
    0.6, "m", "", "fully open entrance above the tubes", Trust::common_practice, 0.4, 0.8};
inline constexpr Sourced torn_canopy_opening_m2{
    0.3, "m2", "", "a seam open for half a metre or more", Trust::judgement, 0.05, 1.0};

// ---- floor resistance, skin of the seated person to the sea, m2 K/W
inline constexpr Sourced floor_single_m2K_W{
    0.0093, "m2 K/W", "drdc2001", "non-inflatable, 0.06 (0.01) clo", Trust::seen, 0.0078, 0.0109};
inline constexpr Sourced floor_inflated_m2K_W{
    0.1015,         "m2 K/W", "drdc2001", "mean of two inflatable floors, 0.71 (0.25) and 0.60 (0.16) clo",
    Trust::derived, 0.093,    0.110};
inline constexpr Sourced floor_foam_m2K_W{
    0.1015,         "m2 K/W",
    "mak2009",      "closed-cell foam: whole-person insulation as with an inflated floor",
    Trust::derived, 0.085,
    0.110};
inline constexpr Sourced floor_unloaded_gap_mm{
    75.0, "mm", "", "unpressed inflated floor", Trust::common_practice, 50.0, 100.0};
inline constexpr Sourced under_floor_least_W_m2K{
    100.0,
    "W/(m2 K)",
    "",
    "sea under a still floor: a warm plate above cold water, stirred by waves",
    Trust::judgement,
    50.0,
    1000.0};
inline constexpr Sourced under_floor_length_m{2.0, "m", "", "floor of a raft for 4 to 10", Trust::judgement,
                                              1.0, 4.0};
inline constexpr Sourced leeway_share{
    0.02, "-", "", "drift through the water over wind, ballasted raft, recalled", Trust::judgement,
    0.01, 0.04};
inline constexpr Sourced floor_water_film_W_m2K{
    200.0,
    "W/(m2 K)",
    "",
    "skin or wet cloth to shallow stirred water: textbook case of a person in water",
    Trust::judgement,
    60.0,
    460.0};

// ---- sitting: share of each segment's skin (head, trunk, arms, hands, legs, feet)
inline constexpr Sourced seat_share_trunk{
    0.08, "-", "", "buttocks pressed on the floor: about 0.05 of 0.65 m2", Trust::judgement, 0.05, 0.12};
inline constexpr Sourced seat_share_legs{
    0.12, "-", "", "backs of thighs and calves: about 0.07 of 0.6 m2", Trust::judgement, 0.06, 0.25};
inline constexpr Sourced seat_share_feet{
    0.20, "-", "", "heels, or soles with knees drawn up", Trust::judgement, 0.1, 0.4};
inline constexpr Sourced back_share_trunk{
    0.15, "-", "", "back and shoulders against the tube", Trust::judgement, 0.05, 0.25};
inline constexpr Sourced back_share_arms{0.05, "-", "", "upper arms against the tube", Trust::judgement,
                                         0.0,  0.15};
inline constexpr Sourced huddle_share_trunk{0.15, "-", "", "both flanks against neighbours", Trust::judgement,
                                            0.05, 0.30};
inline constexpr Sourced huddle_share_arms{0.30, "-", "", "outer arms against neighbours", Trust::judgement,
                                           0.1,  0.45};
inline constexpr Sourced huddle_share_legs{0.12, "-", "", "outer thighs against neighbours", Trust::judgement,
                                           0.03, 0.25};
inline constexpr Sourced seat_pressed_insulation{
    0.5,
    "-",
    "",
    "clothing under the seat keeps this share of its thickness and insulation",
    Trust::judgement,
    0.3,
    0.8};
inline constexpr Sourced lifejacket_seat_m2K_W{
    0.50, "m2 K/W", "", "25 mm of pressed closed-cell foam at 0.04-0.05 W/(m K)", Trust::judgement,
    0.25, 0.9};
inline constexpr Sourced lifejacket_seat_cover{
    0.5, "-", "", "buttocks only of what touches the floor", Trust::judgement, 0.35, 0.7};
inline constexpr Sourced foam_pad_m2K_W{
    0.25, "m2 K/W", "", "10 mm of closed-cell foam at 0.04 W/(m K)", Trust::judgement, 0.15, 0.40};
inline constexpr Sourced foam_pad_cover{
    0.7, "-", "", "buttocks and thighs of what touches the floor", Trust::judgement, 0.5, 0.9};
inline constexpr Sourced tube_resistance_m2K_W{
    0.13,
    "m2 K/W",
    "iso6946",
    "inside surface film of an upright wall stands for air convecting in the tube",
    Trust::judgement,
    0.05,
    0.20};
inline constexpr Sourced loose_crowding{
    0.5,
    "-",
    "",
    "people who do not huddle touch nobody below this share of the rated floor",
    Trust::judgement,
    0.3,
    0.7};
inline constexpr Sourced plan_area_seated_m2{
    0.35, "m2", "", "seated with legs out, seen from above; 0.372 is allotted", Trust::judgement,
    0.25, 0.372};

// ---- condensation and wet surfaces
inline constexpr Sourced condensing_width_kg_m3{
    1e-4,
    "kg/m3",
    "",
    "1-2 % of saturation: the span over which condensation on a dry skin sets in",
    Trust::judgement,
    2e-5,
    3e-4};
inline constexpr Sourced whole_film_kg_m2{
    0.01, "kg/m2", "", "dew covers the skin from here on", Trust::judgement, 0.002, 0.03};
inline constexpr Sourced drip_threshold_kg_m2{
    0.08, "kg/m2", "", "drops on a sloping film hold 0.05 to 0.15 before they run", Trust::judgement,
    0.03, 0.2};
inline constexpr Sourced drip_time_s{
    300.0, "s", "", "time in which water above the threshold runs off", Trust::judgement, 60.0, 1200.0};
inline constexpr Sourced fog_relaxation_s{
    10.0,
    "s",
    "korolev2003",
    "1/(4 pi D N r), formula from memory: D 2.2e-5 m2/s, 72 droplets of 5 um in a cm3",
    Trust::derived,
    1.0,
    20.0};
inline constexpr Sourced fog_width{0.01,  "-", "", "of saturation: rounds the onset of fog", Trust::judgement,
                                   0.005, 0.02};
inline constexpr Sourced wet_floor_L_m2{
    0.5, "L/m2", "", "half a millimetre: the whole floor is wet", Trust::judgement, 0.2, 1.0};

// ---- carbon dioxide
inline constexpr Sourced outdoor_co2_ppm{
    420.0, "ppm", "", "open ocean, early 2020s, recalled", Trust::from_memory, 410.0, 440.0};

// ---- water on the floor
inline constexpr Sourced whitecap_scale{3.84e-6, "-", "monahan1980", "W = 3.84e-6 U10^3.41",
                                        Trust::from_memory};
inline constexpr Sourced whitecap_power{3.41, "-", "monahan1980", "W = 3.84e-6 U10^3.41", Trust::from_memory};
inline constexpr Sourced whitecap_most{0.3, "-", "", "U10 about 27 m/s; the fit rests on less",
                                       Trust::judgement};
inline constexpr Sourced spray_kg_s_m2{
    0.015,
    "kg/(s m2)",
    "",
    "per whitecap fraction: 1 L/h through 0.5 m2 open at 15 m/s; nothing measured",
    Trust::judgement,
    0.003,
    0.08};
inline constexpr Sourced seep_area_m2{
    0.003, "m2", "", "closures shut, in the spray and rain laws: seams, zips", Trust::judgement, 0.0, 0.01};
inline constexpr Sourced rain_fall_speed_m_s{
    6.5, "m/s", "", "drops of 2 mm, terminal speed, recalled", Trust::judgement, 4.0, 8.0};
inline constexpr Sourced rain_facing_share{
    0.3, "-", "", "share of the openings that faces the wind", Trust::judgement, 0.1, 0.6};
inline constexpr Sourced tube_leak_spray_factor{
    3.0, "-", "", "freeboard lost by a soft tube lets in more sea", Trust::judgement, 1.5, 10.0};
inline constexpr Sourced capsize_water_L_m2{
    40.0, "L/m2", "", "left inside after righting, 4 cm deep", Trust::judgement, 10.0, 150.0};
inline constexpr Sourced pool_firm_L{
    2.0, "L", "", "per person: pools under two thirds of the seat, firm floor", Trust::judgement, 0.7, 5.0};
inline constexpr Sourced pool_slack_L{
    0.7, "L", "", "per person: the same on a floor that sags under bodies", Trust::judgement, 0.3, 2.0};
inline constexpr Sourced seated_trunk_height_m{0.60, "m", "", "seat to shoulder", Trust::judgement,
                                               0.5,  0.65};
inline constexpr Sourced seated_leg_height_m{
    0.14, "m", "", "leg lying on the floor: mean thickness", Trust::judgement, 0.11, 0.17};
inline constexpr Sourced seated_foot_height_m{0.24, "m", "", "foot standing on its heel", Trust::judgement,
                                              0.2,  0.27};
inline constexpr Sourced seated_head_bottom_m{0.65, "m", "", "chin above the floor", Trust::judgement,
                                              0.55, 0.75};
inline constexpr Sourced seated_head_height_m{0.25, "m", "", "chin to crown", Trust::judgement, 0.2, 0.28};

inline constexpr Sourced seated_arm_bottom_m{0.15, "m", "", "elbows above the floor", Trust::judgement,
                                             0.1,  0.25};
inline constexpr Sourced seated_arm_height_m{0.45, "m", "", "elbow to shoulder", Trust::judgement, 0.35, 0.5};
inline constexpr Sourced seated_hand_bottom_m{0.20, "m", "", "hands in the lap", Trust::judgement, 0.0, 0.4};
inline constexpr Sourced seated_hand_height_m{0.10, "m", "", "hands in the lap", Trust::judgement, 0.05, 0.2};
inline constexpr Sourced seated_displaced_m2{
    0.20, "m2", "", "floor that a seated body keeps water from", Trust::judgement, 0.1, 0.3};
inline constexpr Sourced least_free_floor{
    0.2, "-", "", "share of the floor that water reaches in a full raft", Trust::judgement, 0.1, 0.4};

// ---- bailing
inline constexpr Sourced bail_strokes_per_min{8.0, "1/min", "", "cramped, with a bailer", Trust::judgement,
                                              4.0, 15.0};
inline constexpr Sourced sponge_strokes_per_min{
    4.0, "1/min", "", "mop up, wring out over the side", Trust::judgement, 2.0, 8.0};
inline constexpr Sourced bailer_leaves_L_m2{
    4.0, "L/m2", "", "too shallow to scoop below this", Trust::judgement, 1.0, 10.0};
inline constexpr Sourced sponge_leaves_L_m2{0.2,  "L/m2", "", "left in folds and as a film", Trust::judgement,
                                            0.05, 0.5};
inline constexpr Sourced bail_work_W{
    150.0, "W", "", "heat above rest: between 2 and 3.5 met of arm work", Trust::judgement, 80.0, 300.0};
inline constexpr Sourced bail_bout_min{20.0, "min", "", "one turn at bailing", Trust::judgement, 5.0, 30.0};

}  // namespace bide::constants
