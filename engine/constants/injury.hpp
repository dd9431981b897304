// Blood loss, burns and fever: what they do to water, heat and work.
//
// Validity: adults, untreated, in the first days. Infection, shock from burns and the waste of weeks are not
// in these numbers.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

// ---- blood loss
inline constexpr Sourced blood_L_kg{0.070,
                                    "L/kg",
                                    "haemorrhageclasses",
                                    "blood of an adult, 7 % of body mass; children 0.08 to 0.09",
                                    Trust::seen,
                                    0.065,
                                    0.080};
inline constexpr Sourced blood_cell_share{
    0.44, "-", "bloodlossexercise", "resting haematocrit of seven men", Trust::seen, 0.38, 0.48};
inline constexpr Sourced plasma_water_kg_L{
    0.93, "kg/L", "guyton", "93 % of plasma is water; recalled", Trust::from_memory, 0.92, 0.94};
inline constexpr Sourced blood_cell_water_kg_L{
    0.72, "kg/L", "guyton", "water of red cells; recalled", Trust::from_memory, 0.65, 0.73};
inline constexpr Sourced blood_class_two_pct{15.0, "% of blood", "rossaint2010",
                                             "table 2: class II is 15 to 30 %", Trust::seen};
inline constexpr Sourced blood_class_three_pct{
    30.0, "% of blood", "rossaint2010",
    "table 2: class II is 15 to 30 %, beyond it pressure falls and people are confused", Trust::seen};
inline constexpr Sourced oxygen_uptake_per_blood{0.60,
                                                 "-",
                                                 "bloodlossexercise",
                                                 "1 L lost took the greatest uptake of seven men from 4.00 "
                                                 "to 3.54 L/min, 11.5 %, back in two weeks; 1 L is"
                                                 " 19 % of the blood of 75 kg",
                                                 Trust::derived,
                                                 0.50,
                                                 1.00};

// ---- burns
inline constexpr Sourced burnt_skin_vapour_conductance_m_s{
    3.6e-3,
    "m/s",
    "lamke1977",
    "178 (partial) and 143 g/(m2 h) (full thickness) of the 310 of a wet surface of 32 degC in air of 23 degC"
    " and 40 %: that film passes 310 g/(m2 h) / 0.0256 kg/m3 = 3.4e-3 m/s, and the skin 160 / (310 - 160) of"
    " it; a tenth of normal skin's resistance or less (Martin 1985) agrees. High end: nine tenths of a wet "
    "surface",
    Trust::derived,
    2.2e-3,
    30e-3};
inline constexpr Sourced burn_of_shock_pct{
    20.0,
    "% of skin",
    "",
    "adults burnt over more are given fluid by vein; 15 to 20 is taught",
    Trust::common_practice,
    10.0,
    20.0};

// ---- fever
inline constexpr Sourced fever_heat_per_K{
    0.13,        "1/K", "feveroxygen", "13 % more oxygen for each kelvin; 10 to 12.5 % is told as well",
    Trust::seen, 0.10,  0.13};

inline constexpr Sourced fever_bound_degC{
    41.0,
    "degC",
    "mackowiak1996",
    "abstract: the core is almost never let rise above 41 to 42 degC in a fever; the lower end",
    Trust::seen,
    41.0,
    42.0};

// Said, not computed.
inline constexpr Sourced fever_sweat_L_day{
    0.6, "L/d", "lamke1980",
    "abstract: 74 patients in rooms of some 23.5 degC lost no more through the skin than the well, but for "
    "bouts of sweat, 4 to 7 h a day, above a rectal temperature of 39.5 degC",
    Trust::seen};
inline constexpr Sourced fever_sweat_from_degC{39.5, "degC", "lamke1980", "same", Trust::seen};

}  // namespace bide::constants
