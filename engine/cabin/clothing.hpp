// Clothing as a thermal and wet layer: ISO 9920 insulation, wetness, vapour resistance, protective aid.
//
// States: none here (carried water is the caller's). Inputs: insulation in m2 K/W (or clo where the standard
// has it), wetness as carried over held water, 0 to 1. Validity: dry equations 0.2-1.7 clo, wind 0.15-3.5 m/s
// and walking 0-1.2 m/s (held outside); wet rules are fitted to one trial or estimated, see each. Source:
// ISO 9920 by public transcriptions; Mak et al. 2009; Hall 1958.
#pragma once

#include "bide/cabin/films.hpp"
#include "bide/constants/clothing.hpp"
#include "bide/core/moist_air.hpp"
#include "bide/core/scalar.hpp"

namespace bide::cabin {

// Ensemble from the sum of its garments, clo (ISO 9920).
template <class T>
inline T ensemble_clo(T garments_clo) {
  return T(constants::icl_offset_clo) + T(constants::icl_slope) * garments_clo;
}

// Clothed over nude area, 1 + 0.28 I_cl (ISO 9920).
template <class T>
inline T clothing_area_factor(T intrinsic_m2K_W) {
  return T(1) + T(constants::fcl_per_clo / constants::clo_m2K_W) * intrinsic_m2K_W;
}

// Skin to surroundings with a still air layer: I_T = I_cl + I_a / f_cl (ISO 9920).
template <class T>
inline T total_insulation_m2K_W(T intrinsic_m2K_W, T air_layer_m2K_W) {
  return intrinsic_m2K_W + air_layer_m2K_W / clothing_area_factor(intrinsic_m2K_W);
}

namespace detail {
template <class T>
inline T wind_correction(T wind_m_s, T walking_m_s, double a, double b, double c, double d) {
  using namespace constants;
  const T v = clamp(wind_m_s, wind_reference_m_s.value, wind_highest_m_s.value) - T(wind_reference_m_s);
  const T w = clamp(walking_m_s, 0.0, walk_highest_m_s.value);
  return exp(T(T(a) * v + T(b) * v * v + T(c) * w + T(d) * w * w));
}
}  // namespace detail

// Wind and walking on the total insulation of dressed people (above 0.6 clo), 1 when still (ISO 9920).
template <class T>
inline T dressed_wind_factor(T wind_m_s, T walking_m_s) {
  using namespace constants;
  return detail::wind_correction(wind_m_s, walking_m_s, dressed_wind, dressed_wind_squared, dressed_walk,
                                 dressed_walk_squared);
}
// The same on the bare air layer.
template <class T>
inline T bare_wind_factor(T wind_m_s, T walking_m_s) {
  using namespace constants;
  return detail::wind_correction(wind_m_s, walking_m_s, bare_wind, bare_wind_squared, bare_walk,
                                 bare_walk_squared);
}

// Factor on intrinsic insulation by wind alone: what is left of I_T once the corrected air layer is taken off
// again, so that total insulation obeys the standard and the caller adds its own film.
template <class T>
inline T intrinsic_wind_factor(T intrinsic_m2K_W, T wind_m_s) {
  const T still_air(constants::air_layer_m2K_W), no_walking(0);
  const T total =
      total_insulation_m2K_W(intrinsic_m2K_W, still_air) * dressed_wind_factor(wind_m_s, no_walking);
  const T air = still_air * bare_wind_factor(wind_m_s, no_walking) / clothing_area_factor(intrinsic_m2K_W);
  constexpr double tiny = 1e-9;
  // Thin clothing is outside the dressed correction; it never gains from wind.
  return clamp(T((total - air) / (intrinsic_m2K_W + T(tiny))), 0.0, 1.0);
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

// Wetness after `t_s` in the water: soaked with a time constant of a minute (Hall 1958: 15 s to 2 min).
template <class T>
inline T wetness_after_immersion(T wetness, T t_s) {
  return T(1) - (T(1) - wetness) * exp(T(-t_s / T(constants::soak_time_s)));
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

// Evaporative resistance of a layer, R_e = R / (i_m L), m2 kPa/W (ISO 9920).
template <class T>
inline T evaporative_resistance_m2kPa_W(T resistance_m2K_W, T permeability_index) {
  return resistance_m2K_W / (permeability_index * T(constants::lewis_relation_K_kPa));
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

// The permeability index of clothing under an aid, by resistances in series: each layer's R / i_m adds up.
template <class T>
inline T layered_permeability_index(T inner_m2K_W, T inner_index, T outer_m2K_W, T outer_index) {
  return (inner_m2K_W + outer_m2K_W) / (inner_m2K_W / inner_index + outer_m2K_W / outer_index);
}

// Skin to open water through an immersed ensemble, W/(m2 K): immersed insulation and water film in series.
template <class T>
inline T immersed_W_m2K(T immersed_m2K_W, T water_film_W_m2K) {
  return T(1) / (immersed_m2K_W + T(1) / water_film_W_m2K);
}

}  // namespace bide::cabin
