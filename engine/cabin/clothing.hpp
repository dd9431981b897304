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

// Clothed over nude area, 1 + 0.28 I_cl (ISO 9920).
template <class T>
inline T clothing_area_factor(T intrinsic_m2K_W) {
  return T(1) + T(constants::fcl_per_clo / constants::clo_m2K_W) * intrinsic_m2K_W;
}

// Factor on the dry intrinsic insulation at a wetness, evaporation apart: 1 dry, `soaked` when soaked (a
// fitted number, constants/fitted.hpp). Loss follows the cubic (3 w - w^3) / 2: third degree in added water
// is the published form for wet underwear, steep at first and flat at the end.
template <class T>
inline T wet_insulation_factor(T wetness, T soaked) {
  constexpr double three = 3;
  const T w = clamp(wetness, 0.0, 1.0);
  return T(1) - (T(1) - soaked) * T(0.5) * w * (T(three) - w * w);
}

// Share of the clothing's surface that evaporates like open water.
template <class T>
inline T evaporating_share(T wetness) {
  return smoothstep(wetness, 0.0, constants::wholly_wet_surface.value);
}

// Water above what the soaked cloth holds runs to the floor, kg/s.
template <class T>
inline T drain_kg_s(T water_kg, T capacity_kg) {
  return positive_part(T(water_kg - capacity_kg)) * T(1 / constants::drain_time_s);
}

// Cloth that lies in a puddle fills up, kg/s; `puddle_share` of the segment's clothing is reached.
template <class T>
inline T wicking_kg_s(T water_kg, T capacity_kg, T puddle_share) {
  return positive_part(T(puddle_share * capacity_kg - water_kg)) * T(1 / constants::wick_time_s);
}

// What stays in after wringing by hand, kg; drier clothes keep what they have.
template <class T>
inline T wrung_water_kg(T water_kg, T capacity_kg) {
  return smaller(water_kg, T(T(constants::wrung_share) * capacity_kg));
}

// Vapour a layer passes per heat it passes, m3/s of vapour density per W/K: R_v T i_m L / (1000 latent),
// which is R/R_e (ISO 9920) in those units.
template <class T>
inline T vapour_per_heat_m3K_J(T permeability_index, T t_degC) {
  constexpr double kPa_per_Pa = 1e-3;
  return T(constants::vapour_gas_constant_J_kgK * kPa_per_Pa * constants::lewis_relation_K_kPa) *
         (t_degC + T(constants::zero_celsius_K)) * permeability_index / latent_heat_J_kg(t_degC);
}

// The same layer as a conductance to vapour density, m/s. A layer without thickness is no obstacle: give it
// at least the resistance of one cloth.
template <class T>
inline T vapour_conductance_m_s(T resistance_m2K_W, T permeability_index, T t_degC) {
  return vapour_per_heat_m3K_J(permeability_index, t_degC) / resistance_m2K_W;
}

// Two vapour conductances in series, m/s: clothing, then the film at its surface.
template <class T>
inline T in_series(T a, T b) {
  return a * b / (a + b);
}

// Resistance that a thermal protective aid adds over the clothing, m2 K/W: its own is practically nothing
// (LSA Code 2.5.1), the loose bag traps air where it does not lie on the clothes (gap of ISO 6946, heat
// flowing level; bag touching and not touching side by side is taken as shares of resistance). Worth 0.09.
double aid_resistance_m2K_W();

// Skin to open water through an immersed ensemble, W/(m2 K): immersed insulation and water film in series.
template <class T>
inline T immersed_W_m2K(T immersed_m2K_W, T water_film_W_m2K) {
  return T(1) / (immersed_m2K_W + T(1) / water_film_W_m2K);
}

}  // namespace bide::cabin
