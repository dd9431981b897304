// Size, build and resting metabolism of a person, and the 25-node table of the standard man.
//
// Validity: adults. Source: named at each number; the node table is NASA CR-1855 (Stolwijk 1971) through two
// independent public transcriptions that agree to the last digit (second-hand).
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

// ---- surface, resting metabolism
inline constexpr Sourced dubois_scale{0.202, "m2/(kg^0.425 m^0.725)", "dubois1916",
                                      "area = 0.202 mass^0.425 height^0.725", Trust::second_hand};
inline constexpr Sourced dubois_mass_power{0.425, "-", "dubois1916", "same", Trust::second_hand};
inline constexpr Sourced dubois_height_power{0.725, "-", "dubois1916", "same", Trust::second_hand};

inline constexpr Sourced mifflin_per_kg{10.0, "kcal/(d kg)", "mifflin1990",
                                        "10 mass + 6.25 height_cm - 5 age + 5 (men) or - 161 (women)",
                                        Trust::second_hand};
inline constexpr Sourced mifflin_per_cm{6.25, "kcal/(d cm)", "mifflin1990", "same", Trust::second_hand};
inline constexpr Sourced mifflin_per_year{5.0, "kcal/(d year)", "mifflin1990", "same, subtracted",
                                          Trust::second_hand};
inline constexpr Sourced mifflin_male{5.0, "kcal/d", "mifflin1990", "same", Trust::second_hand};
inline constexpr Sourced mifflin_female{-161.0, "kcal/d", "mifflin1990", "same", Trust::second_hand};

inline constexpr Sourced kcal_J{4186.8, "J/kcal", "", "international table calorie", Trust::definition};

// ---- body water, Watson 1980, litres (taken as kg)
inline constexpr Sourced watson_male{
    2.447, "L", "watson1980", "men: 2.447 - k age + 0.1074 height_cm + 0.3362 mass", Trust::second_hand};
inline constexpr Sourced watson_male_per_year{
    0.09516,
    "L/year",
    "watson1980",
    "the k above; calculators spread 0.09156, which looks like two digits swapped (0.14 L at 40 years)",
    Trust::from_memory,
    0.09156,
    0.09516};
inline constexpr Sourced watson_male_per_cm{0.1074, "L/cm", "watson1980", "men", Trust::second_hand};
inline constexpr Sourced watson_male_per_kg{0.3362, "L/kg", "watson1980", "men", Trust::second_hand};
inline constexpr Sourced watson_female{-2.097, "L", "watson1980",
                                       "women: -2.097 + 0.1069 height_cm + 0.2466 mass", Trust::second_hand};
inline constexpr Sourced watson_female_per_cm{0.1069, "L/cm", "watson1980", "women", Trust::second_hand};
inline constexpr Sourced watson_female_per_kg{0.2466, "L/kg", "watson1980", "women", Trust::second_hand};

// ---- ageing: factors of the 17-segment descendant, per decade, here held at the middle of each decade and
// joined by straight lines so that nobody changes on a birthday.
inline constexpr double ageing_years[] = {25, 35, 45, 55, 65, 75, 85};
inline constexpr double ageing_shivering[] = {1.0, 0.975, 0.950, 0.928, 0.901, 0.862, 0.826};
inline constexpr Sourced old_age_years{60.0, "years", "takahashi2021", "sweating and dilatation change here",
                                       Trust::seen};
inline constexpr Sourced old_age_spread_years{5.0, "years", "", "the step at 60 spread over ten years",
                                              Trust::judgement};
inline constexpr Sourced old_age_sweat{
    0.575, "-", "takahashi2021", "middle of 0.40 to 0.75 by segment", Trust::derived, 0.40, 0.75};
inline constexpr Sourced old_age_dilatation{
    0.61, "-", "takahashi2021", "middle of 0.31 to 0.91 by segment", Trust::derived, 0.31, 0.91};

// ---- the standard man of the node table
inline constexpr Sourced standard_mass_kg{74.4, "kg", "stolwijk1971", "standard man, 74.1 to 74.4",
                                          Trust::second_hand};
inline constexpr Sourced standard_fat_kg{11.16, "kg", "stolwijk1971", "15 % of 74.4 kg", Trust::second_hand};
inline constexpr Sourced standard_area_m2{1.8877, "m2", "stolwijk1971", "sum of the segments",
                                          Trust::second_hand};
inline constexpr Sourced blood_capacity_kcal_K{2.25, "kcal/K", "stolwijk1971", "central blood",
                                               Trust::second_hand};
inline constexpr Sourced blood_setpoint_degC{36.71, "degC", "stolwijk1971", "central blood",
                                             Trust::second_hand};

// ---- lean tissue of the table's nodes, and how well it conducts
inline constexpr Sourced lean_specific_heat_kcal_kgK{
    0.9,  "kcal/(kg K)", "stolwijk1971", "of muscle, viscera and skin, recalled", Trust::from_memory,
    0.85, 0.92};
inline constexpr Sourced lean_density_kg_m3{
    1050, "kg/m3", "fiala1999", "muscle and viscera 1050 to 1090, recalled", Trust::from_memory, 1040, 1090};
inline constexpr Sourced viscera_conductivity_W_mK{
    0.53, "W/(m K)", "fiala1999", "abdominal viscera, recalled; lung has less, bone more", Trust::from_memory,
    0.28, 0.75};
inline constexpr Sourced muscle_conductivity_W_mK{
    0.42, "W/(m K)", "fiala1999", "muscle, recalled", Trust::from_memory, 0.40, 0.54};
inline constexpr Sourced skin_conductivity_W_mK{
    0.47, "W/(m K)", "fiala1999", "skin, recalled", Trust::from_memory, 0.20, 0.47};

// ---- blood flow of resting muscle
inline constexpr Sourced resting_muscle_flow_mL_100g_min{
    1.6,
    "mL/(100 g min)",
    "lassen1965",
    "abstract: calf at rest by clearance of xenon; the whole calf had 3.0 by plethysmography, and the 1971"
    " table's flows are 0.57",
    Trust::seen,
    1.0,
    3.0};

// ---- fat as an insulator
inline constexpr Sourced fat_specific_heat_kcal_kgK{0.6003, "kcal/(kg K)", "stolwijk1971",
                                                    "fat layers 6.70 kcal/K over 11.16 kg", Trust::derived};
inline constexpr Sourced fat_density_kg_m3{
    900, "kg/m3", "fiala1999", "adipose tissue, 900 to 920, recalled", Trust::from_memory, 900, 930};
inline constexpr Sourced fat_conductivity_W_mK{0.20,
                                               "W/(m K)",
                                               "fiala1999",
                                               "human fat in vitro and in descendants of the model, recalled",
                                               Trust::from_memory,
                                               0.16,
                                               0.21};

// One row of the node table: heat capacity, conductance to the next layer outward (0: skin), basal heat,
// basal blood flow, set point. Rows: core, muscle, fat, skin.
struct NodeRow {
  double capacity_kcal_K, conductance_kcal_hK, basal_kcal_h, flow_L_h, setpoint_degC;
};
// NASA CR-1855, both sides of the body together; head, trunk, arms, hands, legs, feet.
inline constexpr NodeRow stolwijk_nodes[6][4] = {
    {{2.22, 1.38, 12.84, 45.00, 36.96},
     {0.33, 11.40, 0.10, 0.12, 35.07},
     {0.22, 13.80, 0.11, 0.13, 34.81},
     {0.24, 0, 0.08, 1.44, 34.58}},
    {{9.82, 1.37, 45.38, 210.00, 36.89},
     {16.15, 4.75, 5.00, 6.00, 36.28},
     {4.25, 19.80, 2.13, 2.56, 34.53},
     {1.21, 0, 0.40, 2.10, 33.62}},
    {{1.41, 1.20, 0.70, 0.84, 35.53},
     {3.04, 8.90, 0.95, 1.14, 34.12},
     {0.58, 26.20, 0.17, 0.20, 33.59},
     {0.43, 0, 0.13, 0.50, 33.25}},
    {{0.14, 5.50, 0.08, 0.10, 35.41},
     {0.06, 9.65, 0.20, 0.24, 35.38},
     {0.09, 9.90, 0.03, 0.04, 35.30},
     {0.17, 0, 0.05, 2.00, 35.22}},
    {{4.24, 9.00, 2.23, 2.69, 35.81},
     {9.17, 12.40, 2.86, 3.43, 35.30},
     {1.43, 64.00, 0.43, 0.52, 35.31},
     {1.08, 0, 0.32, 2.85, 34.10}},
    {{0.23, 14.00, 0.13, 0.16, 35.14},
     {0.06, 17.70, 0.02, 0.02, 35.03},
     {0.13, 14.10, 0.04, 0.05, 35.11},
     {0.22, 0, 0.07, 3.00, 35.04}},
};

// Area m2 and the shares of receptors, sweat, dilatation, constriction, work and shivering. The shivering
// column sums to 0.99 in both transcriptions; whoever uses it divides by the sum.
struct SegmentRow {
  double area_m2, receptor, sweat, dilatation, constriction, work, shiver;
};
inline constexpr SegmentRow stolwijk_segments[6] = {
    {0.1326, 0.0695, 0.081, 0.132, 0.05, 0.00, 0.02}, {0.6804, 0.4935, 0.481, 0.322, 0.15, 0.30, 0.85},
    {0.2536, 0.0686, 0.154, 0.095, 0.05, 0.08, 0.05}, {0.0946, 0.1845, 0.031, 0.121, 0.35, 0.01, 0.00},
    {0.5966, 0.1505, 0.218, 0.230, 0.05, 0.60, 0.07}, {0.1299, 0.0334, 0.035, 0.100, 0.35, 0.01, 0.00},
};

// ---- breath (Fanger 1970)
inline constexpr Sourced breath_dry_per_K{0.0014, "1/K", "fanger1970", "0.0014 M (34 - Ta)",
                                          Trust::second_hand};
inline constexpr Sourced breath_temperature_degC{34.0, "degC", "fanger1970", "same: expired air",
                                                 Trust::second_hand};
inline constexpr Sourced breath_latent_per_kPa{0.0173, "1/kPa", "fanger1970", "0.0173 M (5.87 - pa)",
                                               Trust::second_hand};
inline constexpr Sourced breath_vapour_kPa{5.87, "kPa", "fanger1970", "same: expired air",
                                           Trust::second_hand};
inline constexpr Sourced kPa_Pa{1000, "Pa/kPa", "", "kilo", Trust::definition};

}  // namespace bide::constants
