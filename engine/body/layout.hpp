// Layout of one person's state: the place of each entry.
//
// States: temperatures of 6 segments x 5 layers, central blood and fingers (solved implicitly); water, salt,
// fuel, fatigue, seasickness and sweat (non-stiff); running totals (integrals of fluxes, from which the
// ledgers are made). Inputs: none. Validity: not applicable. Source: segment and layer scheme of Stolwijk
// 1971 (NASA CR-1855), with a clothing layer and a finger node added.
#pragma once

namespace bide::body {

inline constexpr int head = 0, trunk = 1, arms = 2, hands = 3, legs = 4, feet = 5, segment_count = 6;
inline constexpr int core = 0, muscle = 1, fat = 2, skin = 3, clothing = 4, layer_count = 5;
inline constexpr int tissue_count = 4;  // core, muscle, fat, skin

// Offsets within a person's block of the state vector.
namespace at {
// Place of the temperature of a segment's layer.
// @param segment a segment, [0, segment_count)
// @param layer   one of its layers, [0, layer_count)
inline constexpr int node(int segment, int layer) {
  return segment * layer_count + layer;
}
enum : int {
  blood = segment_count * layer_count,
  finger,
  thermal_count,  // everything above is a temperature, degC

  // Non-stiff states
  clothing_water = thermal_count,               // kg, one per segment
  body_water = clothing_water + segment_count,  // kg, whole body less the gut
  gut_water,                                    // kg, drunk and not yet absorbed
  extracellular_osmoles,                        // mOsm, effective
  urea,                                         // mOsm, not effective
  fluid_shift,                                  // L, lost so far to cold and immersion diuresis
  glycogen,                                     // kJ
  fat_mass,                                     // kg
  protein_mass,                                 // kg
  gut_carbohydrate,
  gut_fat,
  gut_protein,  // kJ, eaten and not yet absorbed
  fatigue,      // of shivering, 0..1
  motion_dose,  // m2/s3, integral of weighted acceleration squared
  adaptation,   // to motion, 0..1
  alcohol,      // mg/dL
  fasted,       // s since the last meal
  arms_used,    // of their endurance in cold water, at least 0
  sweat,        // W, evaporative heat of what the glands give, at least 0

  // Running totals
  total_metabolic,  // J, all heat made
  total_to_air,
  total_to_canopy,
  total_to_floor,
  total_to_floor_water,
  total_to_sea,
  total_to_tube,  // J
  total_evaporation,
  total_breath,         // J
  total_sun,            // J, gained
  total_stored,         // J, sum of capacity x temperature change
  total_absolute_heat,  // J, sum of absolute fluxes
  total_urine,
  total_breath_water,
  total_skin_water,
  total_sweat_drip,
  total_overboard,
  total_vomit,
  total_metabolic_water,       // kg
  total_clothing_evaporation,  // kg, from the clothing outward
  total_distilled,             // kg, from the skin into wet clothing
  total_wetting,               // kg of rain and spray into the clothing
  total_clothing_drain,        // kg, to the floor
  total_salt_lost,             // mOsm
  total_oxidised,              // kJ
  total_nitrogen,              // g
  total_shivering,             // J
  total_cold_feet,             // s of exposure to non-freezing cold injury
  total_frozen,                // s of exposure to freezing of digits
  total_face,                  // of the time in which a bare face may freeze
  count
};
}  // namespace at

}  // namespace bide::body
