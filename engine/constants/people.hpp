// Default body fat and aerobic capacity of a person of whom neither is known, and the range of the people who
// were measured.
//
// Validity: adults of 20 and over (surveys of the United States population).
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

// ---- body fat, % = intercept - slope / BMI - male (if male) + per_year x age; R2 0.84, RMSE 3.5 %
inline constexpr Sourced body_fat_intercept_pct{61.93, "%", "nhanesfat2015", "regression on NHANES DXA",
                                                Trust::seen};
inline constexpr Sourced body_fat_per_inverse_bmi{680.06, "% kg/m2", "nhanesfat2015", "same", Trust::seen};
inline constexpr Sourced body_fat_male_pct{12.05, "%", "nhanesfat2015", "same, subtracted for men",
                                           Trust::seen};
inline constexpr Sourced body_fat_per_year_pct{0.08, "%/year", "nhanesfat2015", "same", Trust::seen};
inline constexpr Sourced body_fat_lowest_pct{4.0, "%", "", "essential fat of lean men is 3-5 (recalled)",
                                             Trust::judgement};
inline constexpr Sourced body_fat_highest_pct{60.0, "%", "", "above the heaviest surveyed", Trust::judgement};

inline constexpr Sourced body_fat_rmse_pct{3.5, "%", "nhanesfat2015", "RMSE of the regression", Trust::seen};

// ---- size of a person of whom nothing is known: adults of the United States, all ages of 20 and over
inline constexpr Sourced height_male_m{1.753, "m", "fryar2021", "mean of men, by a public transcription",
                                       Trust::second_hand};
inline constexpr Sourced height_female_m{1.613, "m", "fryar2021", "mean of women, by the same",
                                         Trust::second_hand};
inline constexpr Sourced height_sd_male_m{
    0.074,          "m",   "fryar2021", "15.1 % of men above 1.829 m: (1.829 - 1.753) / 1.03",
    Trust::derived, 0.070, 0.078};
inline constexpr Sourced height_sd_female_m{
    0.069, "m", "fryar2021", "72.0 % of women from 1.524 to 1.676 m, solved", Trust::derived, 0.066, 0.073};
// Body mass index, lognormal: median, and geometric spread exp(ln(P95 / P5) / 3.29), averaged over decades.
inline constexpr Sourced bmi_young_below_years{30.0, "years", "fryar2016", "end of the first decade",
                                               Trust::second_hand};
inline constexpr Sourced bmi_young_male{25.5, "kg/m2", "fryar2016", "P50, men 20-29", Trust::second_hand};
inline constexpr Sourced bmi_male{
    28.0, "kg/m2", "fryar2016", "P50 of men 30-79: 27.5 to 28.5, averaged", Trust::derived, 27.5, 28.5};
inline constexpr Sourced bmi_young_female{25.6, "kg/m2", "fryar2016", "P50, women 20-29", Trust::second_hand};
inline constexpr Sourced bmi_female{
    28.3, "kg/m2", "fryar2016", "P50 of women 30-79: 27.6 to 28.9, averaged", Trust::derived, 27.6, 28.9};
inline constexpr Sourced bmi_gsd_young_male{1.24, "-", "fryar2016", "P5 19.3, P95 39.2", Trust::derived};
inline constexpr Sourced bmi_gsd_male{
    1.21, "-", "fryar2016", "ln(P95/P5) of 0.59 to 0.65, averaged 0.617", Trust::derived, 1.20, 1.22};
inline constexpr Sourced bmi_gsd_young_female{1.28, "-", "fryar2016", "P5 18.6, P95 42.0", Trust::derived};
inline constexpr Sourced bmi_gsd_female{
    1.27, "-", "fryar2016", "ln(P95/P5) of 0.74 to 0.82, averaged 0.782", Trust::derived, 1.25, 1.29};

// ---- spread from person to person, beyond what size, sex and age explain: sd of the logarithm
inline constexpr Sourced spread_shivering_ceiling{
    0.16,
    "-",
    "eyolfson2001",
    "0.8 / 4.9; less what the regression explains (r2 0.872) it would be 0.06",
    Trust::derived,
    0.06,
    0.16};
inline constexpr Sourced spread_shivering_drive{
    0.25,
    "-",
    "",
    "people of like fatness shiver a fifth to a third more or less for the same cold (recalled)",
    Trust::judgement,
    0.15,
    0.40};
inline constexpr Sourced spread_resting_metabolism{
    0.09, "-", "", "8 to 10 % about the regressions on size, sex and age (recalled)", Trust::judgement,
    0.08, 0.10};
inline constexpr Sourced spread_sweat{
    0.25, "-", "", "as for shivering; fitness and acclimatisation are in it", Trust::judgement, 0.15, 0.40};
inline constexpr Sourced spread_core_limit_K{
    1.0, "K", "", "stages of consciousness in case reports overlap by a few kelvin", Trust::judgement,
    0.5, 2.0};

// ---- maximal oxygen uptake, 50th percentile; linear in age between the middles of the two decades
inline constexpr Sourced vo2max_male_25_mL_kg_min{48.0, "mL/(kg min)", "kaminsky2015", "men 20-29",
                                                  Trust::seen};
inline constexpr Sourced vo2max_male_75_mL_kg_min{24.4, "mL/(kg min)", "kaminsky2015", "men 70-79",
                                                  Trust::seen};
inline constexpr Sourced vo2max_female_25_mL_kg_min{37.6, "mL/(kg min)", "kaminsky2015", "women 20-29",
                                                    Trust::seen};
inline constexpr Sourced vo2max_female_75_mL_kg_min{18.3, "mL/(kg min)", "kaminsky2015", "women 70-79",
                                                    Trust::seen};
inline constexpr Sourced vo2max_younger_age_years{25.0, "years", "kaminsky2015", "middle of 20-29",
                                                  Trust::derived};
inline constexpr Sourced vo2max_older_age_years{75.0, "years", "kaminsky2015", "middle of 70-79",
                                                Trust::derived};
inline constexpr Sourced vo2max_youngest_years{20.0, "years", "", "start of the youngest decade: held below",
                                               Trust::judgement};
inline constexpr Sourced vo2max_oldest_years{80.0, "years", "", "end of the oldest decade: held above",
                                             Trust::judgement};

// ---- who was measured: outside these a result is extrapolated, and says so
inline constexpr Sourced youngest_measured_years{18.0, "years", "", "trials enrolled adults",
                                                 Trust::judgement};
inline constexpr Sourced oldest_measured_years{60.0, "years", "", "trials rarely enrolled older people",
                                               Trust::judgement};
inline constexpr Sourced essential_fat_pct{
    3.0, "%", "", "essential fat of men, textbook value", Trust::from_memory, 2.0, 5.0};
inline constexpr Sourced leanest_measured_pct{7.0, "%", "", "lean subjects of the immersion trials",
                                              Trust::judgement};
inline constexpr Sourced fattest_measured_pct{45.0, "%", "", "above the fat subjects of the trials",
                                              Trust::judgement};

// Mass without fat over height squared, of adults. Outside these a stated body fat contradicts mass and
// height.
inline constexpr Sourced least_lean_index_kg_m2{
    10.0, "kg/m2", "", "adults starved to a body mass index of 10 to 12, with next to no fat (recalled)",
    Trust::from_memory};
inline constexpr Sourced greatest_lean_index_kg_m2{
    32.0, "kg/m2", "", "athletes to 25, with anabolic steroids to 32 (recalled: Kouri 1995)",
    Trust::from_memory};

// ---- what a body can be: bounds beyond which age, height and mass are refused as no person's. Wide on
// purpose, and no published limits: the growth charts they were set outside of were recalled.
inline constexpr Sourced growth_from_years{1.0, "years", "", "where the lines of growth below begin",
                                           Trust::judgement};
inline constexpr Sourced shortest_infant_m{
    0.60, "m", "", "at 1 year; growth charts have 0.67 m three standard deviations down (recalled)",
    Trust::judgement};
inline constexpr Sourced shortest_growth_m_year{
    0.03, "m/year", "",
    "0.87 m at 10 years, where growth charts have 1.18 m three standard deviations down "
    "(recalled)",
    Trust::judgement};
inline constexpr Sourced shortest_adult_m{
    1.0, "m", "",
    "short statures of 1.1 to 1.4 m are common among their kind (recalled); shorter people lived",
    Trust::judgement};
inline constexpr Sourced tallest_infant_m{
    0.95, "m", "", "at 1 year; growth charts have 0.84 m three standard deviations up (recalled)",
    Trust::judgement};
inline constexpr Sourced tallest_growth_m_year{
    0.10, "m/year", "",
    "1.85 m at 10 years, where growth charts have 1.58 m three standard deviations up "
    "(recalled)",
    Trust::judgement};
inline constexpr Sourced least_bmi{9.0, "kg/m2", "",
                                   "the starved were seen alive at 10 to 11, single ones below (recalled)",
                                   Trust::judgement};
inline constexpr Sourced greatest_bmi{110.0, "kg/m2", "", "above the heaviest on record (recalled)",
                                      Trust::judgement};

}  // namespace bide::constants
