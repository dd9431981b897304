// Heat and mass transfer at surfaces: films of air and water, radiation, closed air gaps.
#pragma once

#include <array>

#include "bide/core/sourced.hpp"

namespace bide::constants {

inline constexpr Sourced stefan_boltzmann_W_m2K4{5.670374419e-8, "W/(m2 K4)", "", "2019 SI",
                                                 Trust::definition};
inline constexpr Sourced air_heat_capacity_J_kgK{1004.67, "J/(kg K)", "coare36", "c_pa", Trust::seen};
inline constexpr Sourced lewis_number{
    0.85, "-", "ashrae2017", "ch. 6: thermal over vapour diffusivity of air", Trust::from_memory, 0.84, 0.87};
inline constexpr Sourced lewis_power{2.0 / 3.0, "-", "ashrae2017", "ch. 6: h/h_m = rho c_p Le^(2/3)",
                                     Trust::from_memory};
// Evaporative over convective coefficient, used where clothing standards are written in it.
inline constexpr Sourced lewis_relation_K_kPa{
    16.5, "K/kPa", "ashrae2017", "ch. 9, by a public transcription; ISO 9920 has 16.7", Trust::second_hand,
    16.5, 16.7};

// ---- natural convection inside, h = a |dT|^n; dT -10 to +30 K, surfaces 1 to 3 m long
inline constexpr Sourced film_up_scale{2.0, "W/(m2 K^1.31)", "glueck2008",
                                       "eq. 1.27, heat flowing up; by a public transcription",
                                       Trust::second_hand};
inline constexpr Sourced film_down_scale{0.54, "W/(m2 K^1.31)", "glueck2008",
                                         "eq. 1.28, heat flowing down; by a public transcription",
                                         Trust::second_hand};
inline constexpr Sourced film_level_power{0.31, "-", "glueck2008", "eq. 1.27 and 1.28", Trust::second_hand};
inline constexpr Sourced film_upright_scale{
    1.6, "W/(m2 K^1.3)", "glueck2008", "eq. 1.26, upright; by a public transcription", Trust::second_hand};
inline constexpr Sourced film_upright_power{0.3, "-", "glueck2008", "eq. 1.26", Trust::second_hand};
inline constexpr Sourced stirring_K{
    0.5,
    "K",
    "",
    "people, waves and draughts keep cabin air moving as this difference would",
    Trust::judgement,
    0.1,
    2.0};

// ---- wind outside, h = a + b v
inline constexpr Sourced outer_film_still_W_m2K{4.0, "W/(m2 K)", "iso6946", "annex, h = 4 + 4 v",
                                                Trust::second_hand};
inline constexpr Sourced outer_film_per_wind{4.0, "W s/(m3 K)", "iso6946", "annex, h = 4 + 4 v",
                                             Trust::second_hand};

// ---- people in air
inline constexpr Sourced seated_film_still_W_m2K{
    3.0,
    "W/(m2 K)",
    "gagge1971",
    "two-node model, least value; by a public transcription; ASHRAE has 3.1",
    Trust::second_hand,
    3.0,
    3.1};
inline constexpr Sourced seated_film_scale{8.6, "-", "gagge1971", "8.6 v^0.53; by a public transcription",
                                           Trust::second_hand};
inline constexpr Sourced seated_film_power{0.53, "-", "gagge1971", "8.6 v^0.53", Trust::second_hand};
inline constexpr Sourced wind_film_still_W_m2K{3.5, "W/(m2 K)", "iso7933", "3.5 + 5.2 v to 1 m/s",
                                               Trust::second_hand};
inline constexpr Sourced wind_film_per_speed{5.2, "W s/(m3 K)", "iso7933", "3.5 + 5.2 v to 1 m/s",
                                             Trust::second_hand};
inline constexpr Sourced wind_film_scale{8.7, "-", "iso7933", "8.7 v^0.6 above 1 m/s", Trust::second_hand};
inline constexpr Sourced wind_film_power{0.6, "-", "iso7933", "8.7 v^0.6 above 1 m/s", Trust::second_hand};
inline constexpr Sourced wind_in_lee{0.25,
                                     "-",
                                     "windbreakpages",
                                     "about a quarter of the speed near a wind break, least near a solid one",
                                     Trust::second_hand,
                                     0.1,
                                     0.5};
inline constexpr Sourced sitting_height_m{
    0.9, "m", "", "seat to crown of a tall woman or a middling man, recalled", Trust::from_memory, 0.8, 1.0};
inline constexpr Sourced still_air_speed_m_s{
    0.1, "m/s", "iso9920", "static air layer is measured at 0.10 to 0.15 m/s", Trust::second_hand, 0.1, 0.15};

// ---- people in water
inline constexpr Sourced water_film_still_W_m2K{
    100.0,
    "W/(m2 K)",
    "nadel1974",
    "at rest: between 43-60 of free convection (Boutelier 1977) and 230 (Nadel 1974); geometric middle",
    Trust::from_memory,
    43.0,
    230.0};
inline constexpr Sourced water_film_moving_W_m2K{460.0, "W/(m2 K)", "nadel1974",
                                                 "at rest in water moving at 0.5 m/s", Trust::from_memory};
inline constexpr Sourced water_film_swimming_W_m2K{580.0, "W/(m2 K)", "nadel1974",
                                                   "swimming, whatever the speed", Trust::from_memory};
inline constexpr Sourced water_film_speed_m_s{0.5, "m/s", "nadel1974", "speed of the moving water",
                                              Trust::from_memory};
inline constexpr Sourced water_film_power{
    0.65, "-", "", "forced flow over a cylinder of body size, between 0.6 and 0.7", Trust::judgement,
    0.5,  0.8};
inline constexpr Sourced orbital_slip{
    0.2,
    "-",
    "",
    "share of the waves' orbital speed at which water passes a floating person",
    Trust::judgement,
    0.05,
    0.5};

// ---- sea under a floor: turbulent flow along a plate, Nu = 0.037 Re^0.8 Pr^(1/3)
inline constexpr Sourced plate_flow_scale{0.037, "-", "incropera2007", "mean over a plate, tripped",
                                          Trust::from_memory};
inline constexpr Sourced plate_flow_power{0.8, "-", "incropera2007", "mean over a plate, tripped",
                                          Trust::from_memory};
inline constexpr Sourced water_conductivity_W_mK{
    0.586, "W/(m K)", "sharqawy2010", "eq. 13 at 10 degC and 35 g/kg", Trust::derived, 0.570, 0.615};
inline constexpr Sourced water_viscosity_m2_s{
    1.4e-6, "m2/s", "sharqawy2010", "sea water at 10 degC", Trust::from_memory, 0.9e-6, 1.85e-6};
inline constexpr Sourced water_heat_capacity_J_kgK{
    3990.0, "J/(kg K)", "teos10", "sea water at 10 degC, S = 35", Trust::seen, 3986.0, 4002.0};
inline constexpr Sourced water_density_kg_m3{1026.95,     "kg/m3", "teos10", "sea water at 10 degC, S = 35",
                                             Trust::seen, 1021.7,  1028.2};

// ---- radiation
inline constexpr Sourced cloth_emissivity{
    0.93, "-", "", "coated cloth 0.90 to 0.95, recalled", Trust::judgement, 0.90, 0.95};
inline constexpr Sourced clothed_emissivity{
    0.95, "-", "ashrae2017", "ch. 9, skin and clothing", Trust::second_hand, 0.95, 0.98};
inline constexpr Sourced seated_radiating_share{
    0.70,
    "-",
    "ashrae2017",
    "ch. 9: effective radiating area of a seated person; by a public transcription",
    Trust::second_hand,
    0.70,
    0.73};

// ---- closed air gaps between surfaces of high emissivity, m2 K/W; the empty gap has none
struct GapResistance {
  double gap_mm;
  Sourced up, level, down;
};
// @param value resistance of a gap, m2 K/W, above 0
constexpr Sourced gap_value(double value) {
  return {value, "m2 K/W", "iso6946", "table of air gaps, 2007; by a public transcription",
          Trust::second_hand};
}
inline constexpr std::array gap_resistances{
    GapResistance{0, gap_value(0), gap_value(0), gap_value(0)},
    GapResistance{5, gap_value(0.11), gap_value(0.11), gap_value(0.11)},
    GapResistance{7, gap_value(0.13), gap_value(0.13), gap_value(0.13)},
    GapResistance{10, gap_value(0.15), gap_value(0.15), gap_value(0.15)},
    GapResistance{15, gap_value(0.16), gap_value(0.17), gap_value(0.17)},
    GapResistance{25, gap_value(0.16), gap_value(0.18), gap_value(0.19)},
    GapResistance{50, gap_value(0.16), gap_value(0.18), gap_value(0.21)},
    GapResistance{100, gap_value(0.16), gap_value(0.18), gap_value(0.22)},
    GapResistance{300, gap_value(0.16), gap_value(0.18), gap_value(0.23)}};

}  // namespace bide::constants
