// Physiological thresholds: when a person stops being able, conscious or alive.
//
// Validity: adults at rest in a raft or in the water. Nobody has measured these ends on purpose: each is read
// from casualties and stopped trials, so every one carries a spread, and a scenario may override the central
// value (scenario::Limits). Temperatures are deep body ("core") unless the name says finger.
#pragma once

#include "bide/core/sourced.hpp"

namespace bide::constants {

// ---- cold and heat
inline constexpr Sourced able_core_low_degC{
    33.0,
    "degC",
    "",
    "between loss of useful consciousness at 34-33 (recalled) and Swiss stage II below 32",
    Trust::judgement,
    32.0,
    34.0};
inline constexpr Sourced able_core_high_degC{
    40.0,
    "degC",
    "bouchama2002",
    "heat stroke: core above 40 with disturbed consciousness; recalled",
    Trust::from_memory,
    39.5,
    40.5};
inline constexpr Sourced unconscious_core_degC{
    30.0,
    "degC",
    "hayward1975",
    "end point taken as unconsciousness; Swiss stages put it at 32-28",
    Trust::second_hand,
    28.0,
    32.0};
inline constexpr Sourced lethal_core_low_degC{
    24.0,
    "degC",
    "deslarzes2016",
    "Swiss stage IV, no vital signs, below 24; lowest survived 13.7; arrest risk"
    " rises steeply below 28",
    Trust::seen,
    13.7,
    28.0};
inline constexpr Sourced lethal_core_high_degC{
    42.5, "degC", "bouchama2002", "often fatal at 42-43; recalled", Trust::from_memory, 42.0, 43.0};

// ---- water
inline constexpr Sourced able_water_deficit_pct{
    10.0,
    "% of body mass",
    "gisolfi1993",
    "p. 87 after Adolph: life-threatening; collapse is possible from 7;"
    " the upper end is a judgement",
    Trust::seen,
    7.0,
    12.0};
inline constexpr Sourced lethal_water_deficit_pct{
    15.0,
    "% of body mass",
    "adolph1947",
    "15 in air above 32 degC, 25 at any temperature (probable, not observed);"
    " the lower end is a judgement",
    Trust::second_hand,
    12.0,
    25.0};
inline constexpr Sourced lethal_osmolality_mOsm_kg{
    430.0,
    "mOsm/kg",
    "arieff1976",
    "convulsions above 400, usually fatal above 430; recalled, the upper end is a"
    " judgement",
    Trust::from_memory,
    400.0,
    450.0};

inline constexpr Sourced able_osmolality_low_mOsm_kg{250.0,
                                                     "mOsm/kg",
                                                     "acihyponatraemia",
                                                     "plasma sodium below 120 mmol/L: headache, lethargy, "
                                                     "clouded mind, seizures; 2 x 120 + 10. Mild signs come "
                                                     "from 125 on, seizures and coma mostly below 115",
                                                     Trust::derived,
                                                     240.0,
                                                     260.0};
inline constexpr Sourced lethal_osmolality_low_mOsm_kg{
    230.0,
    "mOsm/kg",
    "arieff1976",
    "sodium of 110 mmol/L: of people who fell to some 112 within a day all were clouded or in coma and half "
    "died; recalled, and the level is a judgement",
    Trust::from_memory,
    220.0,
    245.0};

// ---- air
inline constexpr Sourced able_co2_ppm{40000.0,
                                      "ppm",
                                      "niosh1994co2",
                                      "revised IDLH; 30,000 is the short-term limit, 50,000 gives signs of"
                                      " intoxication in 30 min",
                                      Trust::seen,
                                      30000.0,
                                      50000.0};
inline constexpr Sourced lethal_co2_ppm{
    100000.0,
    "ppm",
    "niosh1994co2",
    "immediately dangerous; lowest reported lethal 90,000 (5 min); 100,000 to"
    " 150,000 unconscious in minutes",
    Trust::seen,
    90000.0,
    150000.0};

// ---- airway in the water
inline constexpr Sourced airway_wave_height_m{
    2.0, "m", "", "waves that wash over the face of an unconscious person in a lifejacket", Trust::judgement,
    1.0, 4.0};

// ---- hands
inline constexpr Sourced dexterity_finger_degC{
    16.0,
    "degC",
    "brajkovic2001",
    "dexterity falls below this finger temperature; breakpoint 22.9 in progressive"
    " cold (2025), 15 the classic knee",
    Trust::seen,
    15.0,
    22.9};
inline constexpr Sourced hand_function_lost_degC{
    8.0,         "degC",
    "ray2019",   "loss of function below a hand temperature of 8; tactile block recalled at 6-8",
    Trust::seen, 6.0,
    8.0};

// ---- starvation
inline constexpr Sourced lethal_protein_loss_pct{
    38.0, "% of body protein", "elia1992", "lean 70 kg man model: 4.6 of 12.2 kg used at death", Trust::seen};

// ---- nearness to a limit
inline constexpr Sourced near_margin{
    0.25, "-", "", "of the way from the normal value to a limit: the last quarter", Trust::judgement, 0, 1};

}  // namespace bide::constants
