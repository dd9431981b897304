// Fuel: stores, what is burnt when, gas exchange, nitrogen, starvation.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

// ---- energy of fuels
inline constexpr Sourced carbohydrate_kJ_g{
    17.0, "kJ/g", "storescode", "glycogen in public code and handbooks", Trust::second_hand, 15.6, 17.6};
inline constexpr Sourced fat_kJ_g{39.36, "kJ/g", "elia1992", "9.40 kcal/g", Trust::seen, 37.0, 39.7};
inline constexpr Sourced protein_kJ_g{18.59, "kJ/g", "elia1992", "4.44 kcal/g", Trust::seen, 16.7, 18.7};
inline constexpr Sourced protein_per_nitrogen{6.25, "g/g", "", "16 % nitrogen in protein",
                                              Trust::common_practice};
inline constexpr Sourced g_kg{1000, "g/kg", "", "kilo", Trust::definition};
inline constexpr Sourced kJ_J{1000, "J/kJ", "", "kilo", Trust::definition};

// ---- gas exchange: energy per oxygen = (0.23 RQ + 0.77) 5.88 Wh/L
inline constexpr Sourced oxygen_energy_J_L{21168, "J/L", "iso8996", "5.88 Wh/L, recalled",
                                           Trust::from_memory};
inline constexpr Sourced oxygen_energy_slope{0.23, "-", "iso8996", "same", Trust::from_memory};
inline constexpr Sourced oxygen_energy_offset{0.77, "-", "iso8996", "same", Trust::from_memory};
inline constexpr Sourced carbohydrate_rq{1.0, "-", "", "C6H12O6 + 6 O2", Trust::definition};
inline constexpr Sourced fat_rq{0.707, "-", "lusk1924", "mixed body fat, recalled", Trust::from_memory};
inline constexpr Sourced protein_rq{0.80, "-", "lusk1924", "protein to urea, recalled", Trust::from_memory,
                                    0.80, 0.84};
inline constexpr Sourced litres_m3{1000, "L/m3", "", "cubic metre", Trust::definition};

// ---- glycogen
inline constexpr Sourced normal_glycogen_g{
    450, "g", "storescode", "liver about 100 and muscle about 350 of the standard man", Trust::second_hand,
    400, 500};
inline constexpr Sourced loaded_glycogen_ratio{
    1.6,
    "-",
    "haman2004",
    "store at which the high-carbohydrate share of 65 % is met; the most that is kept",
    Trust::derived,
    1.4,
    1.8};
inline constexpr Sourced glycogen_margin_ratio{
    0.2,
    "-",
    "",
    "carbohydrate turns into fat over this last stretch below the loaded store",
    Trust::judgement,
    0.05,
    0.4};

// ---- carbohydrate share of heat
inline constexpr Sourced carbohydrate_share{
    0.40,        "-",
    "haman2002", "2 h at 2.6 times rest, normal stores: muscle glycogen 30 % + plasma glucose 10 %",
    Trust::seen, 0.28,
    0.53};
inline constexpr Sourced carbohydrate_moderate_intensity{
    0.41, "-", "haman2002", "2.6 times rest: (2.6 - 1) / (4.9 - 1)", Trust::derived};
inline constexpr Sourced carbohydrate_share_per_intensity{
    0.64,
    "-",
    "haman2005",
    "100 W more from 10 to 5 degC, all carbohydrate: share (94 + 100) / 334 = 0.58 at intensity 0.69, from "
    "0.40 at 0.41, resting heat taken as 90 W",
    Trust::derived,
    0.0,
    0.8};
inline constexpr Sourced carbohydrate_share_greatest{0.65, "-", "haman2004", "high stores", Trust::seen};
inline constexpr Sourced carbohydrate_fasting_divisor{
    2.4,
    "-",
    "haman2016",
    "carbohydrate use between 6 and 12 h of a cold, underfed day; recalled",
    Trust::from_memory,
    1.5,
    3.0};
inline constexpr Sourced carbohydrate_fasting_from_h{
    12, "h", "haman2002", "overnight-fasted men still had the share above", Trust::judgement, 10, 16};
inline constexpr Sourced carbohydrate_fasting_full_h{
    24, "h", "", "liver glycogen is used up in about a day of fasting (recalled)", Trust::judgement, 18, 36};

// ---- nitrogen lost by a fasting person of 61 kg lean mass
inline constexpr Sourced nitrogen_start_g_day{13.0,
                                              "g/d",
                                              "nitrogenfast72",
                                              "14.5 in men's first days, about 12 "
                                              "in the classic curve",
                                              Trust::derived,
                                              12.0,
                                              14.5};
inline constexpr Sourced nitrogen_fat_end_g_day{
    3.5, "g/d", "mcdonald", "week 3 of an obese fast: 3 to 4", Trust::second_hand, 3.0, 4.0};
inline constexpr Sourced nitrogen_lean_end_g_day{
    11.5,
    "g/d",
    "elia1992",
    "lean man: 4.6 kg of protein in 64 days = 72 g/d; the share does not fall",
    Trust::derived,
    8.0,
    14.5};
inline constexpr Sourced nitrogen_time_days{
    7.0, "d", "mcdonald", "reaches 4 g/d in week 3: 3.5 + 9.5 exp(-21/7) = 4.0", Trust::derived, 5.0, 10.0};
inline constexpr Sourced nitrogen_lean_fat_share{0.129, "-", "elia1992", "9 kg of fat in 70 kg",
                                                 Trust::derived};
inline constexpr Sourced nitrogen_obese_fat_share{
    0.40, "-", "", "body fat of the obese women of the trials", Trust::judgement, 0.35, 0.5};
inline constexpr Sourced nitrogen_lean_mass_kg{61.0, "kg", "elia1992", "70 less 9 kg of fat", Trust::derived};
inline constexpr Sourced protein_of_shivering{
    0.058,          "-", "haman2002", "10 % of 234 W less 15 W at rest, over 144 W of shivering",
    Trust::derived, 0.0, 0.12};
inline constexpr Sourced sparing_greatest{0.5,
                                          "-",
                                          "gamble1947",
                                          "100 g of glucose a day about halves protein breakdown; recalled",
                                          Trust::from_memory,
                                          0.4,
                                          0.6};
inline constexpr Sourced sparing_carbohydrate_g_day{100, "g/d", "gamble1947", "another 100 g adds little",
                                                    Trust::from_memory};
inline constexpr Sourced nitrogen_without_protein_g_day{
    2.56,
    "g/d",
    "proteinfree1968",
    "abstract: 36.6 (SD 3.0) mg of urinary nitrogen a kg and day, eight men, food enough without protein, "
    "days 7 "
    "to 10; of 70 kg",
    Trust::derived,
    2.1,
    3.0};

// ---- food in the gut
inline constexpr Sourced food_absorption_h{
    2.0, "h", "", "time constant; a mixed meal is taken up in 4 to 6 h", Trust::judgement, 1.0, 4.0};

// ---- blood glucose
inline constexpr Sourced glucose_fed_mmol_L{
    5.0, "mmol/L", "guyton", "normal 4 to 6, textbook", Trust::from_memory, 4.0, 6.0};
inline constexpr Sourced glucose_fasted_mmol_L{3.5,
                                               "mmol/L",
                                               "tikuisis2002",
                                               "3.44 at the start of long shivering trials, and it rose",
                                               Trust::judgement,
                                               3.2,
                                               3.9};
inline constexpr Sourced glucose_drunk_mmol_L{
    1.8,         "mmol/L", "haight1973", "exhausted and 28 mL of ethanol: 2.17 -> 1.77; neither alone did it",
    Trust::seen, 1.6,      2.2};
inline constexpr Sourced glucose_alcohol_mg_dL{
    46,
    "mg/dL",
    "haight1973",
    "28 mL x 0.79 g/mL in 0.68 L/kg x 70 kg of water: where new glucose is stopped",
    Trust::derived,
    20,
    60};
inline constexpr Sourced glucose_glycogen_empty{
    0.1,  "-", "", "share of the normal store at which the liver has none to give", Trust::judgement,
    0.05, 0.3};
inline constexpr Sourced glucose_glycogen_enough{
    0.5, "-", "", "share of the normal store above which blood glucose is held", Trust::judgement, 0.3, 0.7};
inline constexpr Sourced brain_glucose_W{
    24,
    "W",
    "guyton",
    "120 g of glucose a day, textbook: food that brings as much lifts the blood level",
    Trust::from_memory,
    20,
    28};

// ---- alcohol in blood
inline constexpr Sourced alcohol_burn_mg_dL_h{
    15, "mg/(dL h)", "widmark1932", "10 to 20, recalled", Trust::from_memory, 10, 20};
inline constexpr Sourced alcohol_half_burn_mg_dL{
    5,
    "mg/dL",
    "widmark1932",
    "level at which burning is halved (Michaelis constant of the liver enzyme), recalled",
    Trust::from_memory,
    2,
    10};

// ---- starvation
inline constexpr Sourced protein_per_lean_kg{0.2, "kg/kg", "elia1992", "12.2 kg in 61 kg of lean mass",
                                             Trust::derived};
inline constexpr Sourced lethal_fat_left_kg{
    1.0, "kg", "elia1992", "8 of 9 kg used at death, lean 70 kg man", Trust::derived, 0.5, 3.0};
inline constexpr Sourced lethal_fat_share_of_start{
    0.5,
    "kg/kg",
    "",
    "of the fat at the start, for people who start with less than twice the fat left at death: nobody has"
    " measured them",
    Trust::judgement,
    0.1,
    0.9};
// Resting heat falls with the tissue that is gone, and tissue that is left makes less.
inline constexpr Sourced spared_heat{
    0.14,           "-",
    "grande1958",   "basal heat per unit of cells -11.8 % after 19 and -16.6 % after 13 days on 1000 kcal",
    Trust::derived, 0.118,
    0.166};
inline constexpr Sourced spared_heat_at_loss{0.06,
                                             "-",
                                             "grande1958",
                                             "fat and protein over body mass: 2270 kcal a day for 19 and "
                                             "2970 for 13 days at 9 kcal/g are 4.8 and 4.3 of "
                                             "some 72 kg",
                                             Trust::derived,
                                             0.05,
                                             0.08};
inline constexpr Sourced basal_fall{
    0.39, "-", "keys1950", "basal heat -39 to -40 % at 25 % of mass lost; recalled", Trust::from_memory,
    0.30, 0.40};
inline constexpr Sourced basal_fall_at_loss{
    0.25, "-", "keys1950", "share of mass lost after 24 weeks; recalled", Trust::from_memory};

}  // namespace bide::constants
