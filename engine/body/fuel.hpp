// Fuel: oxidation, stores, products (urea, water), blood glucose, starvation.
//
// States: glycogen kJ, fat and protein kg, food in the gut kJ by kind, time since the last meal s, alcohol
// mg/dL. Inputs: heat made and the part of it that is shivering. Validity: rest and shivering, adults, some
// weeks; hard work is not covered. Energy closes: absorbed less oxidised equals the change of the stores.
// Sources: each function's own; numbers in constants/fuel.hpp.
#pragma once

#include "bide/body/gas_exchange.hpp"
#include "bide/body/water.hpp"
#include "bide/constants/body.hpp"
#include "bide/constants/fuel.hpp"
#include "bide/core/scalar.hpp"
#include "bide/core/units.hpp"

namespace bide::body {

// Normal stores of a person.
// @param lean_kg mass without fat, kg
double normal_glycogen_kJ(double lean_kg);
double body_protein_kg(double lean_kg);

// Nitrogen from the body's own protein at rest. From 13 g/d at the last meal towards 11.5 g/d in a lean
// person (Elia 1992: the share of protein does not fall) and 3.5 g/d in a fat one, within a week; linear in
// body fat between 13 and 40 %. In proportion to lean mass. Absorbed carbohydrate spares up to half of it, at
// 100 g/d (Gamble 1947), and food in proportion to the heat made the rest of what is spared in people who eat
// enough, but no protein. Theirs takes some days to fall so far; here it is at once.
// @param fasted_s                time since the last meal, s, at least 0
// @param lean_kg                 mass without fat, kg
// @param body_fat_pct            % of mass; constant outside [13, 40]
// @param carbohydrate_absorbed_W from the gut, W, at least 0
// @param absorbed_share          of the heat made, what all absorbed food brings; above 1 counts as 1
// @return g/s
template <class T>
inline T nitrogen_rest_g_s(T fasted_s, T lean_kg, T body_fat_pct, T carbohydrate_absorbed_W,
                           T absorbed_share) {
  using namespace constants;
  const T fatness = clamp(T((body_fat_pct - T(pct * nitrogen_lean_fat_share)) *
                            T(1 / (pct * (nitrogen_obese_fat_share - nitrogen_lean_fat_share)))),
                          0.0, 1.0);
  const T end = T(nitrogen_lean_end_g_day) + fatness * T(nitrogen_fat_end_g_day - nitrogen_lean_end_g_day);
  const T g_day =
      end + (T(nitrogen_start_g_day) - end) * exp(-fasted_s * T(1 / (nitrogen_time_days * day_s)));
  const double full_W = sparing_carbohydrate_g_day * carbohydrate_kJ_g * kJ_J / day_s;
  constexpr double fed = 1 - nitrogen_without_protein_g_day.value / nitrogen_start_g_day.value;
  const T sparing = T(sparing_greatest) * clamp(T(carbohydrate_absorbed_W * T(1 / full_W)), 0.0, 1.0) +
                    T(fed - sparing_greatest) * clamp(absorbed_share, 0.0, 1.0);
  return g_day * T(1 / (day_s * nitrogen_lean_mass_kg)) * lean_kg * (T(1) - sparing);
}

// Nitrogen of the protein burnt from the heat of protein, and back.
// @param protein_W heat of protein, W
// @return g/s
template <class T>
inline T nitrogen_g_s(T protein_W) {
  using namespace constants;
  return protein_W * T(1 / (protein_kJ_g * kJ_J * protein_per_nitrogen));
}
// @param nitrogen_g_s nitrogen of the protein burnt, g/s
// @return W
template <class T>
inline T protein_W(T nitrogen_g_s) {
  using namespace constants;
  return nitrogen_g_s * T(protein_kJ_g * kJ_J * protein_per_nitrogen);
}
// Urea made.
// @param nitrogen_g_s nitrogen that does not leave as ammonium, g/s
// @return mOsm/s
template <class T>
inline T urea_made_mOsm_s(T nitrogen_g_s) {
  return T(constants::urea_mOsm_per_g_nitrogen) * nitrogen_g_s;
}

// Heat from protein: absorbed protein is burnt first and the body's own makes up the difference (nitrogen
// balance); a part of shivering comes on top.
// @param rest_nitrogen_g_s  from the body's own protein at rest, g/s
// @param shivering_W        shivering heat, W, at least 0
// @param protein_absorbed_W from the gut, W, at least 0
// @return W
template <class T>
inline T protein_heat_W(T rest_nitrogen_g_s, T shivering_W, T protein_absorbed_W) {
  return larger(protein_W(rest_nitrogen_g_s), protein_absorbed_W) +
         T(constants::protein_of_shivering) * shivering_W;
}

// Shares of the heat made. Carbohydrate: 40 % at rest and up to 2.6 times rest, more above (Haman 2002,
// 2005), in proportion to the glycogen left (Haman 2004: 28 to 65 %), divided by 2.4 as a fast goes from 12
// to 24 h. Protein as given. Fat supplies the rest.
// @param heat_W              all heat made, W, above 0
// @param shivering_intensity above rest, over the person's ceiling, [0, 1]
// @param protein_heat_W      heat from protein, W, at least 0
// @param glycogen_kJ         store now, kJ
// @param normal_glycogen_kJ  normal store, kJ, above 0
// @param fasted_s            time since the last meal, s, at least 0
template <class T>
inline FuelMix<T> fuel_mix(T heat_W, T shivering_intensity, T protein_heat_W, T glycogen_kJ,
                           T normal_glycogen_kJ, T fasted_s) {
  using namespace constants;
  const T beyond = positive_part(shivering_intensity - T(carbohydrate_moderate_intensity));
  const T share = T(carbohydrate_share) + T(carbohydrate_share_per_intensity) * beyond;
  const T fasting = T(1) - T(1 - 1 / carbohydrate_fasting_divisor) *
                               smoothstep(fasted_s, carbohydrate_fasting_from_h * hour_s,
                                          carbohydrate_fasting_full_h * hour_s);
  const T stores = positive_part(glycogen_kJ) / normal_glycogen_kJ;
  FuelMix<T> mix;
  mix.protein = clamp(T(protein_heat_W / heat_W), 0.0, 1.0);
  mix.carbohydrate =
      smaller(smaller(share * stores * fasting, T(carbohydrate_share_greatest)), T(1) - mix.protein);
  mix.fat = T(1) - mix.protein - mix.carbohydrate;
  return mix;
}

// Food absorbed from the gut, the same law for each kind.
// @param gut_kJ eaten and not yet absorbed, kJ
// @return kJ/s
template <class T>
inline T food_absorption_kJ_s(T gut_kJ) {
  return positive_part(gut_kJ) * T(1 / (constants::food_absorption_h * hour_s));
}

// Rates of the stores, positive when they grow, and of the products.
template <class T>
struct FuelRates {
  T glycogen_kJ_s, fat_kg_s, protein_kg_s;
  T oxidised_kJ_s, nitrogen_g_s, metabolic_water_kg_s;
};

// Rates of the stores and products. Absorbed carbohydrate goes to glycogen and, in the last fifth below the
// loaded store, increasingly to fat.
// @param heat_W             all heat made, W, above 0
// @param mix                shares of that heat, sum 1
// @param glycogen_kJ        store now, kJ
// @param normal_glycogen_kJ normal store, kJ, above 0
// @param carbohydrate_absorbed_kJ_s, fat_absorbed_kJ_s, protein_absorbed_kJ_s from the gut, kJ/s, at least 0
template <class T>
inline FuelRates<T> fuel_rates(T heat_W, const FuelMix<T>& mix, T glycogen_kJ, T normal_glycogen_kJ,
                               T carbohydrate_absorbed_kJ_s, T fat_absorbed_kJ_s, T protein_absorbed_kJ_s) {
  using namespace constants;
  const T heat_kJ_s = heat_W * T(1 / kJ_J);
  const T spilled = carbohydrate_absorbed_kJ_s * smoothstep(T(glycogen_kJ / normal_glycogen_kJ),
                                                            loaded_glycogen_ratio - glycogen_margin_ratio,
                                                            loaded_glycogen_ratio);
  FuelRates<T> r;
  r.glycogen_kJ_s = carbohydrate_absorbed_kJ_s - spilled - mix.carbohydrate * heat_kJ_s;
  r.fat_kg_s = (fat_absorbed_kJ_s + spilled - mix.fat * heat_kJ_s) * T(1 / (fat_kJ_g * g_kg));
  r.protein_kg_s = (protein_absorbed_kJ_s - mix.protein * heat_kJ_s) * T(1 / (protein_kJ_g * g_kg));
  r.oxidised_kJ_s = heat_kJ_s;
  r.nitrogen_g_s = nitrogen_g_s(T(mix.protein * heat_W));
  r.metabolic_water_kg_s =
      metabolic_water_kg_s(T(mix.carbohydrate * heat_W), T(mix.fat * heat_W), T(mix.protein * heat_W));
  return r;
}

// Blood glucose, an estimate: 5.0 mmol/L when fed; 3.5 when glycogen is used up and the body makes glucose;
// 1.8 if alcohol stops that as well (Haight & Keatinge 1973: it takes both). Absorbed carbohydrate raises it
// again.
// @param glycogen_kJ             store now, kJ
// @param normal_glycogen_kJ      normal store, kJ, above 0
// @param carbohydrate_absorbed_W from the gut, W, at least 0
// @param alcohol_mg_dL           blood alcohol, mg/dL, at least 0
// @return mmol/L, [1.8, 5.0]
template <class T>
inline T blood_glucose_mmol_L(T glycogen_kJ, T normal_glycogen_kJ, T carbohydrate_absorbed_W,
                              T alcohol_mg_dL) {
  using namespace constants;
  const T empty =
      T(1) - smoothstep(T(glycogen_kJ / normal_glycogen_kJ), glucose_glycogen_empty, glucose_glycogen_enough);
  const T unfed = T(1) - clamp(T(carbohydrate_absorbed_W * T(1 / brain_glucose_W)), 0.0, 1.0);
  const T stopped = smoothstep(alcohol_mg_dL, 0.0, glucose_alcohol_mg_dL);
  const T lowest = T(glucose_fasted_mmol_L) - T(glucose_fasted_mmol_L - glucose_drunk_mmol_L) * stopped;
  return T(glucose_fed_mmol_L) - empty * unfed * (T(glucose_fed_mmol_L) - lowest);
}

// Slope of blood alcohol: -15 mg/dL per hour at high levels (Widmark 1932).
// @param alcohol_mg_dL blood alcohol, mg/dL
// @return mg/dL per s, never positive
template <class T>
inline T alcohol_rate_mg_dL_s(T alcohol_mg_dL) {
  using namespace constants;
  const T level = positive_part(alcohol_mg_dL);
  return -(T(alcohol_burn_mg_dL_h / hour_s) * level / (level + T(alcohol_half_burn_mg_dL)));
}

// Factor on basal heat of people who live on themselves. What tissue is left makes up to 14 % less, in
// proportion to the fat and protein lost up to 6 % of the starting mass (Grande 1958); the rest of the -39 %
// at a quarter of the mass (Keys 1950) is the tissue that is gone, in proportion. Constant beyond.
// @param tissue_lost_kg   fat and protein lost since the start, kg
// @param starting_mass_kg body mass at the start, kg
// @return [0.61, 1]
template <class T>
inline T starved_basal_factor(T tissue_lost_kg, T starting_mass_kg) {
  using namespace constants;
  constexpr double gone = 1 - (1 - basal_fall.value) / (1 - spared_heat.value);
  const T lost = tissue_lost_kg / starting_mass_kg;
  return (T(1) - T(spared_heat) * clamp(T(lost / T(spared_heat_at_loss)), 0.0, 1.0)) *
         (T(1) - T(gone) * clamp(T(lost / T(basal_fall_at_loss)), 0.0, 1.0));
}

}  // namespace bide::body
