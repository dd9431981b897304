// Children: composition, resting heat and what goes with size.
//
// Validity: 2 to 18 years. All recalled; nobody has measured children adrift.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

inline constexpr Sourced grown_years{18.0, "years", "", "from here on a person counts as an adult",
                                     Trust::judgement};

// ---- resting heat, kcal/d = per_kg x mass + fixed (Schofield 1985, recalled), by age: under 3, 3 to 10, 10
// on
inline constexpr Sourced toddler_until_years{3.0, "years", "schofield1985", "the groups of ages",
                                             Trust::from_memory};
inline constexpr Sourced child_until_years{10.0, "years", "schofield1985", "the groups of ages",
                                           Trust::from_memory};
inline constexpr double schofield_per_kg[2][3] = {{59.512, 22.706, 17.686}, {58.317, 20.315, 13.384}};
inline constexpr double schofield_fixed[2][3] = {{-30.4, 504.3, 658.2}, {-31.1, 485.9, 692.6}};

// ---- body water, kg = fixed + per_kg mass + per_cm height (Mellits & Cheek 1970, recalled), for heights
// below and above a threshold, boys and girls
inline constexpr Sourced water_boys_up_to_cm{132.7, "cm", "mellits1970", "boys below and above",
                                             Trust::from_memory};
inline constexpr Sourced water_girls_up_to_cm{110.8, "cm", "mellits1970", "girls below and above",
                                              Trust::from_memory};
inline constexpr double mellits[2][2][3] = {{{-1.927, 0.465, 0.045}, {-21.993, 0.406, 0.209}},
                                            {{0.076, 0.507, 0.013}, {-10.313, 0.252, 0.154}}};

// ---- body fat, % = 1.51 BMI - 0.70 age - 3.6 (boys) + 1.4, to 15 years (Deurenberg 1991, recalled; 3.8 %
// off)
inline constexpr Sourced child_fat_per_bmi{1.51, "% m2/kg", "deurenberg1991", "children to 15 years",
                                           Trust::from_memory};
inline constexpr Sourced child_fat_per_year{0.70, "%/year", "deurenberg1991", "subtracted",
                                            Trust::from_memory};
inline constexpr Sourced child_fat_boys{3.6, "%", "deurenberg1991", "subtracted for boys",
                                        Trust::from_memory};
inline constexpr Sourced child_fat_fixed{1.4, "%", "deurenberg1991", "the same", Trust::from_memory};

// ---- size about the median of age and sex (priors.json): height normal, body mass index lognormal
inline constexpr Sourced child_height_sd_share{
    0.045, "-", "kuczmarski2002", "sd over median of stature, 4 to 16 years", Trust::from_memory, 0.04, 0.05};
inline constexpr Sourced child_bmi_gsd{1.12,
                                       "-",
                                       "kuczmarski2002",
                                       "P5 and P95 of body mass index, 4 to 16 years: 1.08 to 1.16",
                                       Trust::from_memory,
                                       1.08,
                                       1.16};
inline constexpr Sourced child_fat_rmse_pct{3.8, "%", "deurenberg1991", "error of the regression above",
                                            Trust::from_memory};

// ---- greatest oxygen uptake: for the kilogram it does not change with age below 11 (Jurov 2023, abstract,
// boys), nor from 11 to 16 in boys
inline constexpr Sourced vo2max_boys_mL_kg_min{
    47, "mL/(kg min)", "childrenuptake2002", "abstract: boys 47 +- 2, not trained", Trust::seen, 45, 49};
inline constexpr Sourced vo2max_girls_mL_kg_min{
    40, "mL/(kg min)", "childrenuptake2002", "abstract: girls 40 +- 3, less after puberty", Trust::seen, 37,
    43};

// ---- shivering from child to child, sd of the logarithm
inline constexpr Sourced spread_child_shivering_drive{
    0.5,
    "-",
    "smolander1992",
    "in the cold boys of 11 and 12 raised their heat more than men (abstract), boys of 8 less (Inoue 1996): "
    "not even the sign is settled, so twice the spread of adults",
    Trust::judgement,
    0.25,
    0.7};

// ---- sweat of children over that of adults, for each square metre
inline constexpr Sourced child_sweat{
    0.74,           "-",  "falk1992", "before puberty 4.9, late in it 6.6 mL/(min m2), at 42 degC",
    Trust::derived, 0.66, 0.85};
inline constexpr Sourced child_sweat_until_years{12.0, "years", "falk1992", "before puberty",
                                                 Trust::judgement};

}  // namespace bide::constants
