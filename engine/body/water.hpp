// Water and salt: osmolality, kidney, diuresis of cold and immersion, gut. Thirst is in thirst.hpp.
//
// States: body water kg, extracellular effective osmoles and urea mOsm, gut water kg, fluid shift L. Inputs:
// as named. Validity: healthy kidneys, adults, water loss to some 15 % of body mass; overdrinking to a urine
// flow of 0.8 L/h. Osmolality is on the scale of plasma with a normal urea of 5 mmol/L: effective osmoles
// start at 287 mOsm per kg of body water, and urea beyond normal (which moves no water) is left out. Faeces
// are dry while fasting. Sources: each function's own; numbers in constants/water.hpp.
#pragma once

#include "bide/constants/body.hpp"
#include "bide/constants/fuel.hpp"
#include "bide/constants/water.hpp"
#include "bide/core/scalar.hpp"
#include "bide/core/units.hpp"

namespace bide::body {

// Densest urine of a rested person: linear in age (Dontas 1972).
// @param age_years years; constant outside [24, 79]
// @return mOsm/kg
double greatest_urine_osmolality_mOsm_kg(double age_years);

// Osmolality of body water: water moves until it is equal on both sides of the cell wall.
// @param extracellular_mOsm, intracellular_mOsm effective osmoles, mOsm
// @param body_water_kg                          kg, above 0
// @return mOsm/kg
template <class T>
inline T osmolality_mOsm_kg(T extracellular_mOsm, T intracellular_mOsm, T body_water_kg) {
  return (extracellular_mOsm + intracellular_mOsm) / body_water_kg;
}

// Osmolality as thirst and vasopressin answer to it. Beyond a tenth of the extracellular volume its loss
// counts as if the plasma were denser, so that people who lose salt without end drink, and keep what they
// drink, at the price of dilution (Robertson 1984,
// from memory).
// @param osmolality_mOsm_kg      of body water, mOsm/kg
// @param extracellular_kg        water outside the cells now, kg
// @param normal_extracellular_kg the same without loss, kg, above 0
// @return mOsm/kg, at least osmolality_mOsm_kg
template <class T>
inline T felt_osmolality_mOsm_kg(T osmolality_mOsm_kg, T extracellular_kg, T normal_extracellular_kg) {
  using namespace constants;
  return osmolality_mOsm_kg +
         T(volume_reset_mOsm_kg) *
             positive_part(T(T(1 - volume_thirst_from) - extracellular_kg / normal_extracellular_kg));
}

// Water deficit.
// @param body_water_kg        now, kg
// @param normal_body_water_kg without deficit, kg
// @param mass_kg              body mass, kg
// @return % of body mass; negative after overdrinking
template <class T>
inline T water_deficit_pct(T body_water_kg, T normal_body_water_kg, T mass_kg) {
  return T(pct) * (normal_body_water_kg - body_water_kg) / mass_kg;
}

// Urine osmolality that the kidney aims at: the thinnest below a plasma osmolality of 284 mOsm/kg, the
// densest above 295. Vasopressin rises in proportion between the two; urine osmolality follows it steeply at
// first and levels off (Robertson 1984).
// @param osmolality_mOsm_kg of body water as it is felt, mOsm/kg
// @param greatest_mOsm_kg   densest urine of this person, mOsm/kg
// @return mOsm/kg
template <class T>
inline T urine_osmolality_mOsm_kg(T osmolality_mOsm_kg, T greatest_mOsm_kg) {
  using namespace constants;
  const T vasopressin = clamp(T((osmolality_mOsm_kg - T(vasopressin_threshold_mOsm_kg)) *
                                T(1 / (vasopressin_full_mOsm_kg - vasopressin_threshold_mOsm_kg))),
                              0.0, 1.0);
  // v (1 + k) / (v + k), 1 at v = 1, and 1/2 where the constant says: k = h / (1 - 2 h).
  constexpr double k = urine_half_dense_vasopressin.value / (1 - 2 * urine_half_dense_vasopressin.value);
  const T density = vasopressin * T(1 + k) / (vasopressin + T(k));
  return T(urine_thinnest_mOsm_kg) + density * (greatest_mOsm_kg - T(urine_thinnest_mOsm_kg));
}

// Urine flow: solute over the concentration aimed at, limited to 15 to 800 mL/h. All solute is excreted.
// @param solute_mOsm_s      salt, urea and ketone solute excreted, mOsm/s, at least 0
// @param greatest_mOsm_kg   densest urine of this person, mOsm/kg
// @param osmolality_mOsm_kg of body water as it is felt, mOsm/kg
// @return kg/s
template <class T>
inline T urine_rate_kg_s(T solute_mOsm_s, T greatest_mOsm_kg, T osmolality_mOsm_kg) {
  using namespace constants;
  constexpr double mL_per_kg = 1000;
  return clamp(T(solute_mOsm_s / urine_osmolality_mOsm_kg(osmolality_mOsm_kg, greatest_mOsm_kg)),
               urine_least_mL_h / (mL_per_kg * hour_s), urine_greatest_mL_h / (mL_per_kg * hour_s));
}

// Urea excreted, in proportion to the content of the body.
// @param urea_mOsm in the body, mOsm
// @return mOsm/s
template <class T>
inline T urea_excretion_mOsm_s(T urea_mOsm) {
  return urea_mOsm * T(1 / (constants::urea_time_h * hour_s));
}

// Time constant with which a person's salt settles after a change of intake (Epstein & Hollenberg 1976).
// @param age_years years; constant outside [25, 67]
// @return s
double salt_balance_s(double age_years);

// Salt excreted in urine: the habitual output at the normal extracellular content, and more or less in
// proportion to what is there beyond it (Walser 1985, recalled). Without salt eaten it falls exponentially,
// as measured, and a day's output times the time constant has gone in the end: in the first week of a fast
// the extracellular water shrinks by that. What used tissue sets free is passed in the same way.
// @param extracellular_mOsm        effective osmoles now, mOsm
// @param normal_extracellular_mOsm content on the habitual diet, mOsm
// @param per_balance_time_s        inverse of salt_balance_s(), 1/s
// @return mOsm/s of effective osmoles, at least 0
template <class T>
inline T salt_excretion_mOsm_s(T extracellular_mOsm, T normal_extracellular_mOsm, T per_balance_time_s) {
  return positive_part(T(constants::salt_fed_mOsm_day / day_s) +
                       (extracellular_mOsm - normal_extracellular_mOsm) * per_balance_time_s);
}

// Minimum urine flow that can excrete what is not urea (salt, ammonium, ketone acids): at most 600 mOsm/kg of
// it, whatever the urea, which crosses the wall of the last tubes and draws no water there (Soroka).
// @param without_urea_mOsm_s excreted, mOsm/s, at least 0
// @return kg/s
template <class T>
inline T urine_without_urea_kg_s(T without_urea_mOsm_s) {
  using namespace constants;
  constexpr double mL_per_kg = 1000;
  return smaller(T(without_urea_mOsm_s * T(1 / urine_greatest_without_urea_mOsm_kg)),
                 T(urine_greatest_mL_h / (mL_per_kg * hour_s)));
}

// Ketone acids and ammonium in urine: made by metabolism, not taken from the body's osmoles. They begin in
// the second and third day of a fast and rise until two weeks have passed, when ammonium carries half of 5 g
// of nitrogen a day (Hannaford 1982) and an equal number of acid anions with it.
// @param fasted_s time since the last meal, s, at least 0
// @return mOsm/s
template <class T>
inline T ketone_excretion_mOsm_s(T fasted_s) {
  using namespace constants;
  return T(ketone_solute_first_mOsm_day / day_s) *
             smoothstep(fasted_s, ketosis_from_h * hour_s, ketosis_full_h * hour_s) +
         T((ketone_solute_mOsm_day - ketone_solute_first_mOsm_day) / day_s) *
             smoothstep(fasted_s, ketosis_full_h * hour_s, ketone_solute_full_h * hour_s);
}

// Nitrogen in that ammonium, which does not become urea: half of the solute is ammonium, with one atom each.
// @param fasted_s time since the last meal, s, at least 0
// @return g/s
template <class T>
inline T ammonium_nitrogen_g_s(T fasted_s) {
  return T(0.5) * ketone_excretion_mOsm_s(fasted_s) * T(constants::nitrogen_g_mmol);
}

// Slope of the fluid shift: cold and water pressure drive blood to the chest, and the body excretes the
// apparent excess with a time constant of 2.3 h. This happens once: after rewarming the water does not come
// back, and the next cold night excretes no more.
// @param shift_L      water excreted so far, L, at least 0
// @param constriction 0 none to 1 full skin constriction
// @param immersed     0 dry, 1 in the water to the neck
// @return L/s, at least 0
template <class T>
inline T fluid_shift_rate_L_s(T shift_L, T constriction, T immersed) {
  using namespace constants;
  const T target = T(cold_shift_L) * constriction + T(immersion_shift_L) * immersed;
  return positive_part(T(target - shift_L)) * T(1 / (shift_time_h * hour_s));
}

// Urine flow added by the fluid shift.
// @param shift_L, constriction, immersed as fluid_shift_rate_L_s()
// @return kg/s
template <class T>
inline T diuresis_rate_kg_s(T shift_L, T constriction, T immersed) {
  return fluid_shift_rate_L_s(shift_L, constriction, immersed);
}

// Salt lost with the water of diuresis.
// @param diuresis_kg_s water lost so, kg/s, at least 0
// @return mOsm/s
template <class T>
inline T diuresis_salt_mOsm_s(T diuresis_kg_s) {
  return T(constants::shift_salt_mOsm_kg) * diuresis_kg_s;
}
// Salt of sweat. Without salt to spare the glands hold it back as the kidney does, only days later (Robinson
// 1956, abstract, year from memory), down to what they let go after ten days of heat (Klous 2020). Here they
// follow the kidney, which itself takes a day or two.
// @param fresh_mOsm_kg   of this person with salt to spare, mOsm/kg, above 0
// @param kidney_mOsm_s   salt excreted in urine now, mOsm/s, at least 0
// @param habitual_mOsm_s the same on the habitual diet, mOsm/s, above 0
// @return mOsm/kg
template <class T>
inline T sweat_salt_now_mOsm_kg(T fresh_mOsm_kg, T kidney_mOsm_s, T habitual_mOsm_s) {
  const T least = smaller(fresh_mOsm_kg, T(constants::sweat_salt_acclimatised_mOsm_kg));
  return least + (fresh_mOsm_kg - least) * smaller(T(kidney_mOsm_s / habitual_mOsm_s), T(1));
}
// Salt lost by vomiting.
// @param vomit_kg_s water lost so, kg/s, at least 0
// @return mOsm/s
template <class T>
inline T vomit_salt_mOsm_s(T vomit_kg_s) {
  return T(constants::vomit_salt_mOsm_kg) * vomit_kg_s;
}

// Water absorbed from the gut, in proportion to its content, at most 0.9 L/h.
// @param gut_water_kg drunk and not yet absorbed, kg
// @return kg/s
template <class T>
inline T gut_absorption_kg_s(T gut_water_kg) {
  using namespace constants;
  return smaller(positive_part(gut_water_kg) * T(1 / (gut_emptying_h * hour_s)),
                 T(gut_absorption_L_h / hour_s));
}

// Water made by burning fuel.
// @param carbohydrate_W, fat_W, protein_W heat from each fuel, W, at least 0
// @return kg/s
template <class T>
inline T metabolic_water_kg_s(T carbohydrate_W, T fat_W, T protein_W) {
  using namespace constants;
  constexpr double to_kg_J = 1e-6;  // g/kJ to kg/J
  return T(water_per_g_carbohydrate / carbohydrate_kJ_g * to_kg_J) * carbohydrate_W +
         T(water_per_g_fat / fat_kJ_g * to_kg_J) * fat_W +
         T(water_per_g_protein / protein_kJ_g * to_kg_J) * protein_W;
}

// Rise of the core threshold of sweating and skin dilatation with the water deficit.
// @param deficit_pct water deficit that is felt, % of body mass; below 0 counts as 0
// @return K
template <class T>
inline T sweating_shift_K(T deficit_pct) {
  return T(constants::sweat_shift_K_per_pct) * positive_part(deficit_pct);
}

}  // namespace bide::body
