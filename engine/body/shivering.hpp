// Shivering heat: the drive from temperatures, what weakens or stops it, and fatigue.
//
// States: fatigue, 0 fresh to 1 spent (share of the endurance used up). Inputs: core and mean skin
// temperature, body fat, blood glucose, alcohol, intensity relative to the person's ceiling (both above
// rest). Validity: the drive rests on 14 men of 18 % fat, core 33.25 to 37.5 degC, up to some hours; colder
// cores and longer shivering are extrapolations. Sources: each function's own; numbers in
// constants/shivering.hpp.
#pragma once

#include "bide/constants/body.hpp"
#include "bide/constants/shivering.hpp"
#include "bide/core/scalar.hpp"
#include "bide/core/units.hpp"

namespace bide::body {

// Two laws for a person of 1 % of fat: each falls with the root of fatness.
namespace detail {
template <class T>
inline T drive_by_temperatures_W_m2(T core_degC, T mean_skin_degC) {
  using namespace constants;
  const T peak_K(shiver_per_skin_W_m2K / (2 * shiver_per_skin2_W_m2K2));
  const T skin_K = smaller(T(shiver_skin_degC) - mean_skin_degC, peak_K);
  const T by_skin = skin_K * (T(shiver_per_skin_W_m2K) - T(shiver_per_skin2_W_m2K2) * skin_K);
  const T by_core = T(shiver_per_core_W_m2K) * (T(shiver_core_degC) - core_degC);
  return positive_part(by_core + by_skin);
}
// By skin and core together: a term of the skin alone below a threshold, and a product of what core and skin
// lack (Stolwijk 1971), weakened by the root of fatness (Tikuisis 1991).
//
// The term of the skin is the slope of two-hour means in air of 15 to 25 degC (Timbal 1976); it starts the
// shivering of the first minutes, before the core has fallen, for which the product alone asks for nothing.
// The product waits for the core: over a warm core it asks for less than the law above, over a core that has
// fallen by a kelvin for more.
// @param core_degC      core, as the law above takes it, degC
// @param mean_skin_degC mean skin, degC
// @param skin_cold_K    what the skin lacks, summed by receptors and never negative, K
// @return W/m2 of skin, at least 0
template <class T>
inline T by_skin_and_core_W_m2(T core_degC, T mean_skin_degC, T skin_cold_K) {
  using namespace constants;
  static_assert(shiver_fat_power.value == 0.5);
  const double lean = std::sqrt(shiver_fat_pct.value);
  const T by_skin =
      T(lean * shiver_per_cold_skin_W_m2K) * positive_part(T(T(shiver_cold_skin_degC) - mean_skin_degC));
  const T by_both = T(lean * (shiver_product_W_K2 / standard_area_m2)) *
                    positive_part(T(T(shiver_core_degC) - core_degC)) * skin_cold_K;
  return by_skin + by_both;
}
}  // namespace detail

// Shivering heat above rest (Tikuisis & Giesbrecht 1999):
// [155.5 (37 - Tc) + 47.0 (33 - Ts) - 1.57 (33 - Ts)^2] / sqrt(fat %), never negative. The quadratic falls
// below a skin of 18.0 degC for no physiological reason; there the skin term keeps its peak value.
// @param core_degC      Tc, degC, data from 33.25 to 37.5
// @param mean_skin_degC Ts, degC
// @param body_fat_pct   % of mass, above 0
// @return W/m2 of skin, at least 0
template <class T>
inline T shivering_drive_W_m2(T core_degC, T mean_skin_degC, T body_fat_pct) {
  return detail::drive_by_temperatures_W_m2(core_degC, mean_skin_degC) / sqrt(body_fat_pct);
}

// Shivering heat above rest, in air and water alike: the smaller of the two laws. Each was measured where it
// is the smaller: the first in cold water to low cores, where the product would run away, the second in air
// and mild water over warm cores, where the first shivers at 22 degC in clothes. A core above 37 degC stops
// it, wholly at 37.3, however cold the skin (Benzinger 1961).
// @param core_degC      core, normal 37, degC
// @param mean_skin_degC mean skin, degC
// @param skin_cold_K    what the skin lacks, summed by receptors, K, at least 0
// @param body_fat_pct   % of mass, above 0
// @return W/m2 of skin, at least 0
template <class T>
inline T shivering_W_m2(T core_degC, T mean_skin_degC, T skin_cold_K, T body_fat_pct) {
  using namespace constants;
  const T warm = smoothstep(core_degC, shiver_core_degC, shiver_stops_warm_core_degC);
  return (T(1) - warm) / sqrt(body_fat_pct) *
         smaller(detail::drive_by_temperatures_W_m2(core_degC, mean_skin_degC),
                 detail::by_skin_and_core_W_m2(core_degC, mean_skin_degC, skin_cold_K));
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

// Slope of the fatigue state. Shivering at relative intensity r can go on unweakened for a time of
//   t ((1 - s) / (r - s))^2,  r above the sustainable s, t = 2.5 h at the peak,
// and uses the endurance up in proportion to time; below s fatigue recovers, at rest with a time constant
// of 12 h. Fatigue cannot exceed 1. Data: 2-3 h near the peak (Adolph & Molnar 1946), no fall within 6.5 h at
// r = 0.56 (Tikuisis 2002), nine days at s; the rest is a judgement with wide bounds.
// Work tires as shivering of the same heat does: it takes its place.
// @param relative_intensity r, shivering after fatigue and work over the ceiling of shivering, all above
//                           rest, at least 0
// @param fatigue            share of the endurance used, [0, 1]
// @param sustained          s, the person's, (0, 1)
// @param tiring_per_s       1/t, 1/s
// @return 1/s
template <class T>
inline T fatigue_rate_per_s(T relative_intensity, T fatigue, T sustained, T tiring_per_s) {
  using namespace constants;
  const T overload = positive_part(T((relative_intensity - sustained) / (T(1) - sustained)));
  static_assert(shiver_endurance_power.value == 2);
  const T tiring = overload * overload * tiring_per_s;
  const T idle = positive_part(T(1) - relative_intensity / sustained);
  return tiring - idle * fatigue * T(1 / (shiver_recovery_h * hour_s));
}

// Factor of fatigue on the shivering that tires: 1 until half of the endurance is used, 0 when all is used,
// smooth between.
// @param fatigue share of the endurance used, [0, 1]
// @return [0, 1]
template <class T>
inline T fatigue_factor(T fatigue) {
  return T(1) - smoothstep(fatigue, constants::shiver_fatigue_onset, 1.0);
}

// What fatigue leaves of shivering. Exhaustion takes away what lies above the sustainable intensity, the form
// of critical power (Monod & Scherrer 1965): what can be kept up for days is not lost by having done more.
// @param fresh_W     what would be made without fatigue, W, at least 0
// @param fatigue     share of the endurance used, [0, 1]
// @param sustained_W what can be kept up, W; 0: exhaustion takes all ("gives out")
// @return W, at least 0
template <class T>
inline T shivering_left_W(T fresh_W, T fatigue, T sustained_W) {
  const T kept = smaller(fresh_W, sustained_W);
  return kept + (fresh_W - kept) * fatigue_factor(fatigue);
}

}  // namespace bide::body
