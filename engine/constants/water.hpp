// Water and salt: compartments, kidney, losses, thirst.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

// ---- plasma
inline constexpr Sourced normal_osmolality_mOsm_kg{
    287.0,
    "mOsm/kg",
    "guyton",
    "middle of the usual 280 to 295, recalled; urea of 5 included",
    Trust::from_memory,
    280.0,
    295.0};
inline constexpr Sourced normal_glucose_and_urea_mOsm_kg{
    10.0,
    "mOsm/kg",
    "guyton",
    "5 mmol/L each in osmolality = 2 Na + glucose + urea, recalled",
    Trust::from_memory,
    8.0,
    12.0};
inline constexpr Sourced extracellular_share{
    1.0 / 3.0, "-", "bodywaterpage", "of body water and of its osmoles, textbook", Trust::second_hand,
    0.33,      0.40};

// ---- kidney
inline constexpr Sourced urine_greatest_young_mOsm_kg{
    1089, "mOsm/kg", "dontas1972", "men, mean age 24, in the water intakes report p. 82", Trust::seen};
inline constexpr Sourced urine_greatest_old_mOsm_kg{
    825, "mOsm/kg", "dontas1972", "mean age 79: men 808, women 843", Trust::derived, 808, 843};
inline constexpr Sourced urine_young_years{24, "years", "dontas1972", "mean age", Trust::seen};
inline constexpr Sourced urine_old_years{79, "years", "dontas1972", "mean age", Trust::seen};
inline constexpr Sourced ketosis_from_h{
    24, "h", "", "blood acetone is low at 12 h and tens of mg/dL at 36 h of fasting", Trust::judgement,
    12, 36};
inline constexpr Sourced ketosis_full_h{
    72, "h", "", "ketones level off in the third day (recalled)", Trust::judgement, 48, 120};
inline constexpr Sourced urine_least_mL_h{15,          "mL/h", "iom2005", "p. 83, after Adolph 1947",
                                          Trust::seen, 13,     20};
inline constexpr Sourced urine_greatest_mL_h{
    800, "mL/h", "iom2005", "p. 83: 600 to 1000 under a water load", Trust::seen, 600, 1000};
inline constexpr Sourced urine_thinnest_mOsm_kg{
    60, "mOsm/kg", "guyton", "50 to 100 without vasopressin, recalled", Trust::from_memory, 50, 100};
inline constexpr Sourced vasopressin_threshold_mOsm_kg{
    284, "mOsm/kg", "robertson1984", "280 to 285, recalled", Trust::from_memory, 280, 287};
inline constexpr Sourced vasopressin_full_mOsm_kg{
    295, "mOsm/kg", "robertson1984", "urine is as dense as it gets near here, recalled", Trust::from_memory,
    292, 300};

// Vasopressin level, as a share of the level of densest urine, at which urine is half as dense (1 against
// 5 pg/mL).
inline constexpr Sourced urine_half_dense_vasopressin{
    0.2, "-", "robertson1984", "1 of 5 pg/mL, recalled", Trust::from_memory, 0.15, 0.4};

// ---- solutes of the urine
inline constexpr Sourced urea_mOsm_per_g_nitrogen{35.7, "mOsm/g", "fomon2000", "1000 / 28", Trust::seen};
inline constexpr Sourced urea_time_h{
    15.6, "h", "soroka", "5 mmol/L x 42 L over 324 mmol/d excreted on a normal diet", Trust::derived, 10, 24};
inline constexpr Sourced salt_fed_mOsm_day{
    337, "mOsm/d", "soroka", "661 less 324 of urea, normal diet", Trust::derived, 200, 450};
// Sodium in urine falls exponentially after a cut of intake to 10 mEq a day: half-times of 89 people by age,
// 17.6 (0.7), 23.4 (1.1) and 30.9 (2.8) h, over ln 2. The middles of the groups are a judgement.
inline constexpr double salt_balance_years[] = {25, 45, 67};
inline constexpr Sourced salt_balance_young_h{
    25.4, "h", "epstein1976", "abstract: half-time 17.6 h under 30 years", Trust::derived, 24.4, 26.4};
inline constexpr Sourced salt_balance_middle_h{
    33.8, "h", "epstein1976", "abstract: half-time 23.4 h from 30 to 59 years", Trust::derived, 32.2, 35.3};
inline constexpr Sourced salt_balance_old_h{
    44.6, "h", "epstein1976", "abstract: half-time 30.9 h over 60 years", Trust::derived, 40.5, 48.6};
inline constexpr Sourced ketone_solute_first_mOsm_day{
    200,
    "mOsm/d",
    "soroka",
    "ammonium and ketone acids once ketosis is full, fasted week 1 (recalled)",
    Trust::from_memory,
    100,
    300};
inline constexpr Sourced ketone_solute_mOsm_day{
    357,
    "mOsm/d",
    "hannaford1982",
    "after 2 weeks half of 5 g N/d is ammonium: 2.5 / 14 = 178 mmol, and as many acid anions (the two go "
    "together, r = 0.95, Sapir 1972); Soroka's fasters passed 434 non-urea in all",
    Trust::derived,
    250,
    434};
inline constexpr Sourced ketone_solute_full_h{
    336, "h", "hannaford1982", "the plateau is reached after 2 weeks", Trust::seen, 240, 504};
inline constexpr Sourced nitrogen_g_mmol{0.014, "g/mmol", "", "atomic mass of nitrogen", Trust::definition};
inline constexpr Sourced urine_greatest_without_urea_mOsm_kg{
    600,
    "mOsm/kg",
    "obligatoryurine",
    "sodium chloride at its densest: a litre of sea water of 1200 mOsm needs 2 L of urine; long fasters 16 h "
    "dry passed 587 (SE 25) that was not urea, nearly all of it ammonium and ketone acids (Soroka)",
    Trust::seen,
    475,
    690};

// ---- water in tissue
inline constexpr Sourced tissue_water_per_g_glycogen{
    3.0,
    "g/g",
    "fernandezelias2015",
    "at least 3 g in human muscle; 2.6 to 4 elsewhere (Olsson & Saltin 1970 recalled, Kreitzman 1992 read)",
    Trust::seen,
    2.6,
    4.0};
inline constexpr Sourced tissue_water_per_g_protein{
    3.0,
    "g/g",
    "elia1992",
    "middle of 0.73 / 0.20 = 3.65, all water of lean mass over its protein, and two thirds of it, 2.4, the "
    "cells' part alone, which is what goes while extracellular water is kept",
    Trust::judgement,
    2.4,
    3.84};

// ---- cold and immersion diuresis: once, not daily
inline constexpr Sourced immersion_shift_L{
    0.68,
    "L",
    "tajima1988",
    "seven men who did not drink, neck deep for 3 h, passed 0.494 L (SE 0.089) more than in air; over "
    "1 - exp(-3 / 2.33) = 0.724",
    Trust::derived,
    0.5,
    1.5};
inline constexpr Sourced cold_shift_L{
    0.5, "L", "", "the part that full skin constriction brings without water pressure", Trust::judgement,
    0.2, 1.0};
inline constexpr Sourced shift_time_h{
    2.33,
    "h",
    "stadeager1992",
    "12 h to the neck: urine flow is back at the control's within 7 h, taken as three time constants",
    Trust::derived,
    1.5,
    4.0};
inline constexpr Sourced shift_salt_mOsm_kg{
    150,
    "mOsm/kg",
    "coldwater14",
    "1 h in 14 degC water: sodium excretion +65 % for urine +97 %, so 0.67 x the 337 mOsm/d of a fed day in "
    "about 1.5 L",
    Trust::derived,
    100,
    287};

// ---- losses and gains
inline constexpr Sourced sweat_salt_mOsm_kg{90,
                                            "mOsm/kg",
                                            "lossesalgorithm",
                                            "middle of Na 5-80, K 5-15, Cl 5-70 mmol/L: 42.5 + 10 + 37.5",
                                            Trust::derived,
                                            15,
                                            165};
inline constexpr Sourced sweat_salt_acclimatised_mOsm_kg{
    58,
    "mOsm/kg",
    "klous2020",
    "abstract: after ten days in heat sodium and chloride are at some 60 % of the first day's, potassium "
    "unchanged: 0.6 x 80 + 10",
    Trust::derived,
    45,
    70};
inline constexpr Sourced vomit_salt_mOsm_kg{
    139,
    "mOsm/kg",
    "lossesalgorithm",
    "middle of acid gastric juice Na 20-70, K 5-15, Cl 8-160: 45 + 10 + 84",
    Trust::derived,
    33,
    245};
inline constexpr Sourced gut_absorption_L_h{
    0.9, "L/h", "absorptionpage", "ceiling of gut and kidney, 0.8 to 1.0", Trust::second_hand, 0.8, 1.0};
inline constexpr Sourced gut_emptying_h{0.25,
                                        "h",
                                        "guyton",
                                        "water leaves the stomach with a time constant near this, "
                                        "recalled",
                                        Trust::from_memory,
                                        0.15,
                                        0.5};
inline constexpr Sourced water_per_g_carbohydrate{
    0.56, "g/g", "guyton", "oxidation of glycogen and starch, recalled", Trust::from_memory, 0.55, 0.60};
inline constexpr Sourced water_per_g_fat{1.07, "g/g", "guyton", "oxidation of fat, recalled",
                                         Trust::from_memory};
inline constexpr Sourced water_per_g_protein{0.41, "g/g", "guyton", "oxidation of protein to urea, recalled",
                                             Trust::from_memory};

// ---- what lack of water does
inline constexpr Sourced sweat_shift_K_per_pct{
    0.15,
    "K per % of mass",
    "heatdryrest",
    "core rise 0.09 at rest at 40 degC (derived), 0.1 to 0.25 in reviews",
    Trust::second_hand,
    0.09,
    0.25};
inline constexpr Sourced thirst_from_mOsm_kg{
    290, "mOsm/kg", "robertson1984", "threshold 290 to 295, recalled", Trust::from_memory, 288, 295};
inline constexpr Sourced thirst_full_mOsm_kg{
    302, "mOsm/kg", "", "strong thirst: about 2.5 % of body mass of pure water gone", Trust::judgement,
    298, 310};
inline constexpr Sourced thirst_from_pct{
    0.5, "% of mass", "", "half of the 1 % at which thirst is told of", Trust::judgement, 0.3, 1.0};
inline constexpr Sourced thirst_full_pct{
    3.0, "% of mass", "grandjean", "1 thirst, 2 stronger, 3 dry mouth", Trust::seen, 2.0, 4.0};

inline constexpr Sourced volume_thirst_from{0.1,
                                            "-",
                                            "robertson1984",
                                            "share of the extracellular volume: blood volume has to fall by "
                                            "8 to 10 % before thirst and vasopressin answer "
                                            "it, recalled",
                                            Trust::from_memory,
                                            0.08,
                                            0.15};

inline constexpr Sourced volume_reset_mOsm_kg{
    70.0,
    "mOsm/kg",
    "robertson1984",
    "for each whole of the extracellular volume lost beyond that tenth: lines of vasopressin and thirst over "
    "osmolality move down by some 5 to 10 mOsm/kg from a tenth to a fifth less blood, recalled; carried on "
    "beyond a fifth, where nobody measured",
    Trust::from_memory,
    50.0,
    100.0};

// ---- thirst past sixty
inline constexpr Sourced old_age_thirst_mOsm_kg{
    4,
    "mOsm/kg",
    "kenneychiu2001",
    "abstract: a higher osmotic operating point of thirst with little or no change of slope; its size is "
    "recalled",
    Trust::from_memory,
    2,
    6};
inline constexpr Sourced old_age_thirst_by_deficit{
    0.5,
    "-",
    "kenneychiu2001",
    "abstract: thirst by lack of volume is diminished; by how much is a judgement",
    Trust::judgement,
    0.2,
    0.8};

}  // namespace bide::constants
