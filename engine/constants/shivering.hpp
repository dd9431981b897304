// Shivering: drive, ceiling, suppression and fatigue.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

// ---- drive: [155.5 (37 - Tc) + 47.0 (33 - Ts) - 1.57 (33 - Ts)^2] / sqrt(body fat %), W/m2 above rest
inline constexpr Sourced shiver_per_core_W_m2K{
    155.5, "W/(m2 K)", "tikuisis1999", "coefficients by two public transcriptions", Trust::second_hand};
inline constexpr Sourced shiver_core_degC{37.0, "degC", "tikuisis1999", "same", Trust::second_hand};
inline constexpr Sourced shiver_per_skin_W_m2K{47.0, "W/(m2 K)", "tikuisis1999", "same", Trust::second_hand};
inline constexpr Sourced shiver_per_skin2_W_m2K2{1.57, "W/(m2 K2)", "tikuisis1999", "same",
                                                 Trust::second_hand};
inline constexpr Sourced shiver_skin_degC{33.0, "degC", "tikuisis1999", "same", Trust::second_hand};

// ---- drive by skin and core: 5.01 (31.4 - Ts) W/m2 and 24.4 dTc dTs W of the standard man
inline constexpr Sourced shiver_product_W_K2{24.4, "W/K2", "stolwijk1971",
                                             "PCHIL 21.0 kcal/(h K2), of head core and skin by receptors",
                                             Trust::second_hand};
inline constexpr Sourced shiver_per_cold_skin_W_m2K{
    5.01,         "W/(m2 K)",
    "timbal1976", "abstract: metabolic rate in air, 41.3 - 5.01 (Ts - Ts0) when steady",
    Trust::seen,  2.5,
    7.5};
inline constexpr Sourced shiver_cold_skin_degC{31.4,
                                               "degC",
                                               "timbal1976",
                                               "where 41.3 - 5.01 (Ts - 33.7) reaches the heat of a seated "
                                               "man, 52.8 W/m2 (1.15 x 45.9); neutral skin 33.7"
                                               " (Gagge 1971)",
                                               Trust::derived,
                                               29.5,
                                               32.0};
inline constexpr Sourced shiver_fat_pct{15.0,
                                        "%",
                                        "stolwijk1971",
                                        "the standard man, of whom the product is; the other study's men are"
                                        " not told of",
                                        Trust::judgement,
                                        12.0,
                                        18.0};
inline constexpr Sourced shiver_fat_power{0.5, "-", "tikuisis1991",
                                          "abstract: for a given fall of mean skin temperature in air, "
                                          "the rise is attenuated by the square root of fatness",
                                          Trust::seen};
inline constexpr Sourced shiver_stops_warm_core_degC{
    37.3,
    "degC",
    "benzinger1961",
    "a core above 37.1 degC suppresses the answer to a cold skin, recalled",
    Trust::from_memory,
    37.1,
    37.5};

// ---- ceiling: peak oxygen uptake, mL/(kg min), resting part included
inline constexpr Sourced shiver_peak{
    30.5, "mL/(kg min)", "eyolfson2001",
    "abstract: 30.5 + 0.348 VO2max - 0.909 BMI - 0.233 age, r2 0.872, n = 15", Trust::seen};
inline constexpr Sourced shiver_peak_per_vo2max{0.348, "-", "eyolfson2001", "same", Trust::seen};
inline constexpr Sourced shiver_peak_per_bmi{0.909, "mL m2/(kg2 min)", "eyolfson2001", "same, subtracted",
                                             Trust::seen};
inline constexpr Sourced shiver_peak_per_year{0.233, "mL/(kg min year)", "eyolfson2001", "same, subtracted",
                                              Trust::seen};
inline constexpr Sourced shiver_rest_mL_kg_min{
    4.51, "mL/(kg min)", "eyolfson2001", "observed peak 22.1 over 4.9", Trust::derived, 3.5, 5.0};
// Range of the people it was measured on, estimated from mean and spread in the abstract; the inputs of the
// regression are limited to it.
inline constexpr Sourced shiver_peak_youngest_years{
    18.0, "years", "eyolfson2001", "abstract: mean 24.7 less 2 x 6 is 13; adults are taken", Trust::judgement,
    13.0, 20.0};
inline constexpr Sourced shiver_peak_oldest_years{
    37.0, "years", "eyolfson2001", "abstract: age 24.7 (6), mean and two spreads", Trust::derived,
    31.0, 43.0};
inline constexpr Sourced shiver_peak_lightest_bmi{
    19.0,
    "kg/m2",
    "eyolfson2001",
    "abstract: 72.1 kg at 1.76 m is 23.3; its spread, taken as a tenth, twice",
    Trust::judgement,
    17.0,
    21.0};
inline constexpr Sourced shiver_peak_heaviest_bmi{
    28.0, "kg/m2", "eyolfson2001", "same; mass alone varies by a sixth", Trust::judgement, 26.0, 31.0};
// What the peaks of that group were of their maximal oxygen uptake bounds it for others: nobody is given a
// share beyond two spreads. Maximal uptake itself falls with age and is lower in women.
inline constexpr Sourced shiver_peak_share{
    0.417, "-", "eyolfson2001", "abstract: 41.7 (5.1) % of VO2max", Trust::seen, 0.366, 0.468};
inline constexpr Sourced shiver_peak_share_spread{0.051, "-", "eyolfson2001", "abstract: 41.7 (5.1) %",
                                                  Trust::seen};
inline constexpr Sourced shiver_least_peak_over_rest{
    2.0,
    "-",
    "",
    "the regression falls to nothing in heavy old people; 2.6 times rest was held for 2 h by "
    "ordinary men (Haman 2002), a little less is taken as within everybody's reach",
    Trust::judgement,
    1.5,
    2.6};

// ---- what stops it
inline constexpr Sourced shiver_stops_core_degC{
    30.0, "degC", "deslarzes2016", "lower end of 32 to 30; Swiss stage II: (not) shivering", Trust::seen,
    28.0, 31.0};
inline constexpr Sourced shiver_full_core_degC{
    32.0, "degC", "deslarzes2016", "upper end of 32 to 30; stage I shivers", Trust::seen, 31.0, 33.0};
inline constexpr Sourced shiver_stops_glucose_mmol_L{
    2.5,         "mmol/L", "gale1981", "abstract: below it shivering stops, back within seconds with glucose",
    Trust::seen, 2.2,      2.5};
inline constexpr Sourced shiver_full_glucose_mmol_L{
    3.0,
    "mmol/L",
    "passias1996",
    "at 2.8 the onset is late but it comes; at 3.44 nothing was missing",
    Trust::judgement,
    2.8,
    3.4};
inline constexpr Sourced shiver_alcohol_fall{
    0.13,        "-", "fox1979", "abstract: -13 % at 82 mg/dL (a thesis on it says about 20 %)",
    Trust::seen, 0.0, 0.20};
inline constexpr Sourced shiver_alcohol_mg_dL{82.0, "mg/dL", "fox1979", "abstract", Trust::seen};
inline constexpr Sourced shiver_alcohol_greatest_fall{
    0.20,
    "-",
    "fox1979",
    "largest fall reported, taken as the cap beyond the measured dose",
    Trust::judgement,
    0.13,
    0.50};

// ---- endurance. Measured: no fall in 105 to 388 min at 61 to 69 % of the peak. Beyond, two anchors and one
// exponent make a law that is a judgement.
inline constexpr Sourced shiver_held_intensity{
    0.56,
    "-",
    "tikuisis2002",
    "65 % of the peak, of which rest is 1/4.9: (0.65 x 4.9 - 1) / (4.9 - 1) = 0.56",
    Trust::derived,
    0.50,
    0.61};
inline constexpr Sourced shiver_sustained_over_basal{
    2.3,
    "-",
    "coldnights1962",
    "all heat made over basal: twice the resting rate, 2 x 1.15, kept up for nine days near-nude at 8 degC; "
    "people at large 2.2 to 2.5 (Westerterp 2001, abstract), events of long duration below 3 (Thurber "
    "2019, abstract)",
    Trust::derived,
    2.2,
    2.5};
// For the kindest law: what endurance events level off at. Racers who eat all day hold more for weeks.
inline constexpr Sourced shiver_sustained_late_over_basal{
    3.0,
    "-",
    "thurber2019",
    "abstract: over 0.5 to 250 days the greatest expenditure levels off below 3 times basal; 4.9 in a cycle "
    "race of three weeks (second hand)",
    Trust::seen,
    2.5,
    4.9};
inline constexpr Sourced shiver_peak_endurance_h{
    2.5,
    "h",
    "adolphmolnar1946",
    "abstract: muscular fatigue after 2-3 h at up to five times rest",
    Trust::seen,
    2.0,
    6.5};
// The same for the kindest law: the longest trial without a fall, which was at 0.56 of the peak.
inline constexpr Sourced shiver_peak_endurance_late_h{
    6.5,
    "h",
    "tikuisis2002",
    "388 min without a fall at 65 % of the peak, taken for the peak itself",
    Trust::judgement,
    2.5,
    6.5};
inline constexpr Sourced shiver_endurance_power{
    2.0,
    "-",
    "",
    "of a young man, s = 0.26: 2.5 h x (0.74 / (r - 0.26))^n is 15 h at r = 0.56; n above 1.06 is what 6.5 h"
    " there demands (Tikuisis 2002, longest trial without a fall)",
    Trust::judgement,
    1.06,
    4.0};
inline constexpr Sourced shiver_recovery_h{
    12.0, "h", "", "tired muscle at rest: a night; glycogen needs a day and food", Trust::judgement,
    4.0,  48.0};
inline constexpr Sourced shiver_fatigue_onset{
    0.5,
    "-",
    "",
    "share of the endurance used before shivering weakens; 6.5 h at r = 0.56 uses 0.43 unseen",
    Trust::judgement,
    0.43,
    0.9};

}  // namespace bide::constants
