// Clothing as a thermal and wet layer: surface area, wetness, vapour resistance, protective aid.
//
// States: none here (carried water is the caller's). Inputs: insulation in m2 K/W, wetness as carried over
// held water, 0 to 1. Validity: the dry equations 0.2-1.7 clo; wet rules are fitted to one trial or
// estimated, see each. Source: ISO 9920 by public transcriptions; Mak et al. 2009.
#pragma once

#include "bide/cabin/films.hpp"
#include "bide/constants/clothing.hpp"
#include "bide/core/moist_air.hpp"
#include "bide/core/scalar.hpp"

namespace bide::cabin {

// Surface area of the clothed over the nude body, 1 + 0.28 I_cl with I_cl in clo (ISO 9920).
// @param intrinsic_m2K_W intrinsic insulation, m2 K/W
// @return ratio, at least 1
template <class T>
inline T clothing_area_factor(T intrinsic_m2K_W) {
  return T(1) + T(constants::fcl_per_clo / constants::clo_m2K_W) * intrinsic_m2K_W;
}

// Factor on the dry intrinsic insulation of wet clothing, without evaporation. The loss follows the cubic
// (3 w - w^3) / 2: third degree in added water is the published form for wet underwear, steep at first and
// flat at the end.
// @param wetness carried over held water, 0 dry to 1 soaked; clamped
// @param soaked  factor when soaked, (0, 1] (a fitted number, constants/fitted.hpp)
// @return 1 when dry to `soaked`
template <class T>
inline T wet_insulation_factor(T wetness, T soaked) {
  constexpr double three = 3;
  const T w = clamp(wetness, 0.0, 1.0);
  return T(1) - (T(1) - soaked) * T(0.5) * w * (T(three) - w * w);
}

// Share of the clothing's surface that evaporates like open water.
// @param wetness carried over held water, 0 dry to 1 soaked
// @return [0, 1]
template <class T>
inline T evaporating_share(T wetness) {
  return smoothstep(wetness, 0.0, constants::wholly_wet_surface.value);
}

// Drainage to the floor of water above what the soaked cloth holds.
// @param water_kg    in the clothing, kg, at least 0
// @param capacity_kg that soaked cloth holds, kg
// @return kg/s
template <class T>
inline T drain_kg_s(T water_kg, T capacity_kg) {
  return positive_part(T(water_kg - capacity_kg)) * T(1 / constants::drain_time_s);
}

// Water taken up by clothing that lies in a puddle.
// @param water_kg     in the segment's clothing, kg, at least 0
// @param capacity_kg  that it holds when soaked, kg
// @param puddle_share of the clothing that the water reaches, [0, 1]
// @return kg/s
template <class T>
inline T wicking_kg_s(T water_kg, T capacity_kg, T puddle_share) {
  return positive_part(T(puddle_share * capacity_kg - water_kg)) * T(1 / constants::wick_time_s);
}

// Water left in the clothing after wringing by hand; drier clothes keep what they have.
// @param water_kg    before wringing, kg, at least 0
// @param capacity_kg that soaked cloth holds, kg
// @return kg
template <class T>
inline T wrung_water_kg(T water_kg, T capacity_kg) {
  return smaller(water_kg, T(T(constants::wrung_share) * capacity_kg));
}

// Ratio of the vapour conductance of a layer to its heat conductance: R_v T i_m L / (1000 latent), which is
// R/R_e (ISO 9920) in the unit m3/s of vapour density per W/K.
// @param permeability_index i_m, [0, 1]
// @param t_degC             temperature of the layer, degC
// @return m3 K/J
template <class T>
inline T vapour_per_heat_m3K_J(T permeability_index, T t_degC) {
  constexpr double kPa_per_Pa = 1e-3;
  return T(constants::vapour_gas_constant_J_kgK * kPa_per_Pa * constants::lewis_relation_K_kPa) *
         (t_degC + T(constants::zero_celsius_K)) * permeability_index / latent_heat_J_kg(t_degC);
}

// Vapour conductance of the same layer.
// @param resistance_m2K_W   to heat, m2 K/W, above 0: give at least the resistance of one cloth
// @param permeability_index i_m, [0, 1]
// @param t_degC             temperature of the layer, degC
// @return m/s, times a difference of vapour density
template <class T>
inline T vapour_conductance_m_s(T resistance_m2K_W, T permeability_index, T t_degC) {
  return vapour_per_heat_m3K_J(permeability_index, t_degC) / resistance_m2K_W;
}

// Two vapour conductances in series: clothing, then the film at its surface.
// @param a, b m/s, at least 0, not both 0
// @return m/s
template <class T>
inline T in_series(T a, T b) {
  return a * b / (a + b);
}

// Resistance that a thermal protective aid adds over the clothing. That of the material is negligible (LSA
// Code 2.5.1); the loose bag traps air where it does not touch the clothes (gap of ISO 6946, horizontal heat
// flow; the parts that touch and do not touch are averaged as resistances).
// @return m2 K/W, 0.09
double aid_resistance_m2K_W();

// Skin to open water through immersed clothing: insulation and water film in series.
// @param immersed_m2K_W   insulation of the clothing under water, m2 K/W, at least 0
// @param water_film_W_m2K film coefficient of the water, W/(m2 K), above 0
// @return W/(m2 K)
template <class T>
inline T immersed_W_m2K(T immersed_m2K_W, T water_film_W_m2K) {
  return water_film_W_m2K / (immersed_m2K_W * water_film_W_m2K + T(1));
}

}  // namespace bide::cabin
