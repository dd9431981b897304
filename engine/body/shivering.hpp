// Shivering heat: the drive from temperatures, what weakens or stops it, and fatigue.
//
// States: fatigue, 0 fresh to 1 spent (share of the endurance used up). Inputs: core and mean skin
// temperature, body fat, blood glucose, alcohol, intensity relative to the person's ceiling (both above
// rest). Validity: the drive rests on 14 men of 18 % fat, core 33.3 to 37.5 degC, up to some hours; colder
// cores and longer shivering are extrapolations. Sources: each function's own; numbers in
// constants/shivering.hpp.
#pragma once

#include "bide/constants/body.hpp"
#include "bide/constants/shivering.hpp"
#include "bide/core/scalar.hpp"
#include "bide/core/units.hpp"

namespace bide::body {

// Shivering heat above rest (Tikuisis & Giesbrecht 1999):
// [155.5 (37 - Tc) + 47.0 (33 - Ts) - 1.57 (33 - Ts)^2] / sqrt(fat %), never negative. The quadratic falls
// below a skin of 18.0 degC for no physiological reason; there the skin term keeps its peak value.
// @param core_degC      Tc, degC, data from 33.3 to 37.5
// @param mean_skin_degC Ts, degC
// @param body_fat_pct   % of mass, above 0
// @return W/m2 of skin, at least 0
template <class T>
inline T shivering_drive_W_m2(T core_degC, T mean_skin_degC, T body_fat_pct) {
  using namespace constants;
  const T peak_K(shiver_per_skin_W_m2K / (2 * shiver_per_skin2_W_m2K2));
  const T skin_K = smaller(T(shiver_skin_degC) - mean_skin_degC, peak_K);
  const T by_skin = skin_K * (T(shiver_per_skin_W_m2K) - T(shiver_per_skin2_W_m2K2) * skin_K);
  const T by_core = T(shiver_per_core_W_m2K) * (T(shiver_core_degC) - core_degC);
  return positive_part(by_core + by_skin) / sqrt(body_fat_pct);
}

// Shivering heat above rest in air (Fiala 2001, regression over exposures to air of 5 to 50 degC), from the
// errors of skin and core temperature:
// {10 [tanh(0.48 dTs + 3.62) - 1] dTs - 27.9 dTc - 28.6} W on 1.86 m2, never negative; dTs counts as 0 above
// neutral. Its term in the rate of skin cooling is left out: it acts in the first minutes. The law above,
// applied to a mild skin over a warm core, predicts shivering at 18 degC, where none was observed. Fatness as
// in air: by its square root (Tikuisis 1991). Written with tanh(x) - 1 = -2 / (1 + exp(2 x)).
// @param core_error_K dTc, core less its neutral temperature, K
// @param skin_error_K dTs, mean skin less its neutral temperature, K
// @param body_fat_pct % of mass, above 0
// @return W/m2 of skin, at least 0
template <class T>
inline T shivering_in_air_W_m2(T core_error_K, T skin_error_K, T body_fat_pct) {
  using namespace constants;
  const T cold_K = smaller(skin_error_K, T(0));
  const T x = T(shiver_air_per_K) * cold_K + T(shiver_air_offset);
  const T by_skin = -(T(2 * shiver_air_scale_W_K) * cold_K / (T(1) + exp(T(T(2) * x))));
  const T heat_W = by_skin - T(shiver_air_per_core_W_K) * core_error_K - T(shiver_air_threshold_W);
  static_assert(shiver_air_fat_power.value == 0.5);
  return positive_part(heat_W) * T(1 / shiver_air_area_m2) * sqrt(T(T(shiver_air_fat_pct) / body_fat_pct));
}

// Weight of the law in air aboard: 1 while the core is more than a spread above the mean of the other law's
// data, 0 a spread below it, smooth between. The change from one law to the other is our choice; over half
// this range it would be too steep for steps of 150 s and more (0.045 K off the reference in the core).
// @param core_degC core temperature, degC
// @return [0, 1]
template <class T>
inline T shivering_air_share(T core_degC) {
  return smoothstep(core_degC, constants::shiver_air_to_core_degC, constants::shiver_air_from_core_degC);
}

// Factor of a cold core on shivering: 1 above 32 degC, 0 below 30, smooth between.
// @param core_degC core temperature, degC
// @return [0, 1]
template <class T>
inline T shivering_core_cutoff(T core_degC) {
  return smoothstep(core_degC, constants::shiver_stops_core_degC, constants::shiver_full_core_degC);
}

// Factor of low blood glucose on shivering: 0 below 2.5 mmol/L (Gale 1981), 1 above 3.0 (after Passias 1996),
// smooth between.
// @param blood_glucose_mmol_L mmol/L
// @return [0, 1]
template <class T>
inline T glucose_factor(T blood_glucose_mmol_L) {
  return smoothstep(blood_glucose_mmol_L, constants::shiver_stops_glucose_mmol_L,
                    constants::shiver_full_glucose_mmol_L);
}

// Factor of alcohol on shivering, without its effect on glucose: -13 % at 82 mg/dL (Fox 1979), in proportion,
// at most the largest fall reported.
// @param alcohol_mg_dL blood alcohol, mg/dL, at least 0
// @return [0, 1]
template <class T>
inline T alcohol_factor(T alcohol_mg_dL) {
  using namespace constants;
  const T fall = T(shiver_alcohol_fall / shiver_alcohol_mg_dL) * positive_part(alcohol_mg_dL);
  return T(1) - smaller(fall, T(shiver_alcohol_greatest_fall));
}

// Slope of the fatigue state in the endurance law "tires". Shivering at relative intensity r can go on for
//   2.5 h x ((1 - r_s) / (r - r_s))^2,  r above r_s = 0.26,
// and uses the endurance up in proportion to time; below r_s fatigue recovers, at rest with a time constant
// of 12 h. Fatigue cannot exceed 1: shivering is then 0. Data: 2-3 h near the peak (Adolph & Molnar 1946), no
// fall within 6.5 h at r = 0.56 (Tikuisis 2002), nine days at r_s; the rest is a judgement with wide bounds.
// In the other law, "never tires", the factor of fatigue is 1.
// @param relative_intensity r, shivering after fatigue over the ceiling, both above rest, [0, 1]
// @param fatigue            share of the endurance used, [0, 1]
// @return 1/s
template <class T>
inline T fatigue_rate_per_s(T relative_intensity, T fatigue) {
  using namespace constants;
  const T sustained(shiver_sustained_intensity);
  const T overload = positive_part(T((relative_intensity - sustained) / (T(1) - sustained)));
  static_assert(shiver_endurance_power.value == 2);
  const T tiring = overload * overload / T(shiver_peak_endurance_h * hour_s);
  const T idle = positive_part(T(1) - relative_intensity / sustained);
  return tiring - idle * fatigue / T(shiver_recovery_h * hour_s);
}

// Factor of fatigue on shivering: 1 until half of the endurance is used, 0 when all is used, smooth between.
// @param fatigue share of the endurance used, [0, 1]
// @return [0, 1]
template <class T>
inline T fatigue_factor(T fatigue) {
  return T(1) - smoothstep(fatigue, constants::shiver_fatigue_onset, 1.0);
}

}  // namespace bide::body
