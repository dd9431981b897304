// Fingers, and cold injury of hands, feet and face.
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
// With the body's mean temperature, two thirds core and one third skin: the finger's flow in 5 degC water was
// 22 units at 36.1 and 21.2 degC, 57 at 36.8 and 31.8.
inline constexpr Sourced body_core_share{
    2.0 / 3.0,          "-",  "burton1935", "of core in the mean temperature of a body, recalled",
    Trust::from_memory, 0.64, 0.80};
inline constexpr Sourced cold_dilatation_no_body_degC{
    28.7,
    "degC",
    "daanen1999",
    "the line through 22 units at 31.1 and 57 at 35.1 degC, at nothing",
    Trust::derived,
    27,
    31};
inline constexpr Sourced cold_dilatation_whole_body_degC{
    35.1, "degC", "daanen1999", "the neutral body, 36.8 and 31.8 degC", Trust::derived, 34.5, 36.5};

// ---- toes, without a node of their own
inline constexpr Sourced toe_area_share{
    0.20,
    "-",
    "",
    "cylinders with tips, a great toe of 5.5 by 2.6 cm and four of 3 by 1.7, are 131 of 650 cm2",
    Trust::judgement,
    0.15,
    0.25};

// ---- cold injury
inline constexpr Sourced wet_cold_injury_degC{
    15.0, "degC", "orrlifecraft", "lifecraft immersion injured feet at 15.6 to -3.9 degC", Trust::seen,
    10.0, 21.1};
inline constexpr Sourced wet_cold_injury_h{
    12, "h", "orrlifecraft", "the shortest stay in wet cold of which injured feet were told", Trust::seen,
    8,  24};
inline constexpr Sourced dry_cold_injury_h{
    72,
    "h",
    "armymd0152",
    "trench foot at 0 to 10 degC: mean 3 days, hours to 14 days; taken for feet that are cold and "
    "not wet",
    Trust::judgement,
    24,
    336};
inline constexpr Sourced frostbite_degC{-0.55, "degC", "tissuefreezing", "freezing point of tissue",
                                        Trust::second_hand};
inline constexpr Sourced frostbite_h{
    1, "h", "armymd0152", "mean 10, range 1 to 20: the shortest", Trust::seen, 1, 20};
// Skin freezes later than at the freezing point of tissue, and then at once.
inline constexpr Sourced skin_freezes_degC{
    -4.8,
    "degC",
    "danielsson1996",
    "surface of skin at which 5 % of fingers freeze, recalled; the minutes of a face have the same number",
    Trust::from_memory,
    -8,
    -2};
inline constexpr Sourced skin_freezes_min{
    1,
    "min",
    "",
    "ice spreads through skin below its freezing point within seconds to minutes",
    Trust::judgement,
    0.1,
    10};

// ---- bare faces: minutes = (at rest - per wind x wind) x (skin freezes at - air)^-exponent
inline constexpr Sourced face_minutes{2111, "min K^1.668", "ducharme2005",
                                      "formula of minutes to frostbite, recalled", Trust::from_memory};
inline constexpr Sourced face_minutes_per_km_h{24.5, "min K^1.668 h/km", "ducharme2005",
                                               "the same formula, recalled", Trust::from_memory};
inline constexpr Sourced face_exponent{1.668, "-", "ducharme2005", "the same formula, recalled",
                                       Trust::from_memory};
inline constexpr Sourced face_least_wind_km_h{
    16,
    "km/h",
    "ducharme2005",
    "the lesser wind of its trial; the formula was published from 21.5 on",
    Trust::seen,
    16,
    21.5};
inline constexpr Sourced face_greatest_wind_km_h{
    58.2,
    "km/h",
    "ducharme2005",
    "0.667 x 80 + 4.8: wind at a walker's face where the published table ends, 80 km/h at 10 m, recalled",
    Trust::from_memory,
    45,
    62};
inline constexpr Sourced face_longest_min{30,
                                          "min",
                                          "ducharme2005",
                                          "longest time for which the formula was published, recalled",
                                          Trust::from_memory,
                                          15,
                                          45};

}  // namespace bide::constants
