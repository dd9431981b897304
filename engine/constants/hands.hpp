// Fingers, and cold injury of hands and feet.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

// ---- the finger node: a part of the hands' table entries
inline constexpr Sourced finger_area_share{
    0.47,
    "-",
    "",
    "five cylinders of 8 cm by 1.7 cm with their tips are 225 cm2 of a hand's 473 cm2",
    Trust::judgement,
    0.42,
    0.55};
inline constexpr Sourced finger_mass_share{
    0.27, "-", "", "the same five cylinders are 91 cm3 of a hand of 0.34 kg", Trust::judgement, 0.22, 0.40};
inline constexpr Sourced hand_specific_heat_J_kgK{2830, "J/(kg K)", "takahashi2021",
                                                  "1926 J/K of both hands (1971 table) over 2 x 0.34 kg",
                                                  Trust::derived};
inline constexpr Sourced finger_least_flow{
    0.5, "mL/(100 mL min)", "burton1939", "fully constricted finger, recalled", Trust::from_memory, 0.2, 1.0};
inline constexpr Sourced finger_greatest_flow{
    90, "mL/(100 mL min)", "burton1939", "fully dilated finger, recalled", Trust::from_memory, 60, 120};
// In water: a cylinder of 1.7 cm.
inline constexpr Sourced finger_still_film_W_m2K{
    520,
    "W/(m2 K)",
    "churchill1975",
    "free convection about a level cylinder of 17 mm, 15 K, water of 12 degC: Ra 5.2e5, Nu 15, 0.59 W/(m K)",
    Trust::derived,
    350,
    650};
inline constexpr Sourced finger_inside_W_m2K{198,
                                             "W/(m2 K)",
                                             "incropera2007",
                                             "mean to surface of an evenly heated cylinder, 8 k / D: 8 x "
                                             "0.42 / 0.017; a finger that cools without heat"
                                             " from within has 5.8 k / D = 143",
                                             Trust::derived,
                                             143,
                                             254};
// Cold-induced dilatation, the mean over its waves.
inline constexpr Sourced cold_dilatation_flow{
    4.7,
    "mL/(100 mL min)",
    "shitzer1997",
    "2.8 mL/(mL h), the least of the averages of seven hands in 0 degC air (2.8 to 17): those are of"
    " tips, which carry more than whole fingers",
    Trust::derived,
    2,
    28};
inline constexpr Sourced cold_dilatation_onset_degC{
    15, "degC", "", "waves are told of in fingers below 10 to 15 degC", Trust::from_memory, 12, 18};
inline constexpr Sourced cold_dilatation_whole_degC{
    10, "degC", "", "the same range, its lower end", Trust::from_memory, 8, 12};
inline constexpr Sourced cold_dilatation_least_core_degC{
    35,          "degC", "daanen2003", "almost absent in hypothermia, which begins at a core of 35",
    Trust::seen, 34.5,   36.5};

// ---- cold injury
inline constexpr Sourced wet_cold_injury_degC{
    15.0, "degC", "orrlifecraft", "lifecraft immersion injured feet at 15.6 to -3.9 degC", Trust::seen,
    10.0, 21.1};
inline constexpr Sourced wet_cold_injury_mean_h{
    72, "h", "armymd0152", "trench foot at 0-10 degC: mean 3 days, hours to 14 days", Trust::seen, 12, 336};
inline constexpr Sourced frostbite_degC{-0.55, "degC", "tissuefreezing", "freezing point of tissue",
                                        Trust::second_hand};
inline constexpr Sourced frostbite_mean_h{10, "h", "armymd0152", "mean 10, range 1 to 20", Trust::seen,
                                          1,  20};

}  // namespace bide::constants
