// Water between air and surfaces: condensation on the canopy, evaporation from the floor, drips.
//
// States: none. Inputs: transfer coefficients in m/s (films.hpp), vapour densities in kg/m3, water in kg.
// Validity: surfaces above freezing: frost is treated as supercooled water, which overstates vapour pressure
// over ice by 10 % at -10 degC. Source: Lewis relation; thresholds are our own estimates.
#pragma once

#include "bide/cabin/range.hpp"
#include "bide/constants/cabin.hpp"
#include "bide/core/scalar.hpp"

namespace bide::cabin {

// Share of the canopy that takes part in vapour transfer. A film of condensate evaporates and condenses; a
// dry skin takes part only when the air is above saturation at the skin's temperature.
// @param vapour_kg_m3             vapour density of the air, kg/m3
// @param saturation_at_skin_kg_m3 at the temperature of the skin, kg/m3
// @param film_kg_m2               condensate on the skin, kg/m2, at least 0
// @return [0, 1]
template <class T>
inline T condensing_share(T vapour_kg_m3, T saturation_at_skin_kg_m3, T film_kg_m2) {
  const T dew =
      smoothstep(T(vapour_kg_m3 - saturation_at_skin_kg_m3), 0.0, constants::condensing_width_kg_m3.value);
  return larger(dew, smoothstep(film_kg_m2, 0.0, constants::whole_film_kg_m2.value));
}

// Vapour conductance from air to canopy: times (vapour density - saturation at the skin) it gives the
// condensation in kg/s.
// @param transfer_m_s             transfer coefficient (films.hpp), m/s
// @param canopy_area_m2           m2, above 0
// @param vapour_kg_m3             vapour density of the air, kg/m3
// @param saturation_at_skin_kg_m3 at the temperature of the skin, kg/m3
// @param film_kg                  condensate on the canopy, kg, at least 0
// @return m3/s
template <class T>
inline T condensation_m3_s(T transfer_m_s, T canopy_area_m2, T vapour_kg_m3, T saturation_at_skin_kg_m3,
                           T film_kg) {
  return transfer_m_s * canopy_area_m2 *
         condensing_share(vapour_kg_m3, saturation_at_skin_kg_m3, T(film_kg / canopy_area_m2));
}

// Rate of fog formation, linear in the excess of vapour over saturation: per_density_m3_s x (excess -
// from_excess_kg_m3), kg/s, near the excess at which it was linearised.
template <class T>
struct Fog {
  T per_density_m3_s, from_excess_kg_m3;
};

// Fog: vapour beyond saturation turns to droplets within the relaxation time tau, V excess / tau (Korolev and
// Mazin 2003); below saturation there is none. The corner is rounded, V w ln(1 + exp(excess/w)) / tau with w
// 1 % of saturation, and the result is its tangent. With a sharper corner or a faster fog (0.2 %, 5 s) the
// result oscillates from step to step, because latent heat shifts saturation past the corner within one step.
// The price is some haze above 97 %. Droplets take minutes to fall a metre; here they fall at once.
// @param excess_kg_m3     vapour density less saturation, kg/m3
// @param saturation_kg_m3 at the temperature of the air, kg/m3
// @param volume_m3        V, of air, m3
// @return positive from vapour to liquid
template <class T>
inline Fog<T> fog(T excess_kg_m3, T saturation_kg_m3, T volume_m3) {
  const T width = saturation_kg_m3 * T(constants::fog_width);
  constexpr double far = 30;  // exp(-30) is nothing beside 1
  const T grown = exp(clamp(T(excess_kg_m3 / width), -far, far));
  const T share = grown / (T(1) + grown);
  const T rounded = width * log(T(T(1) + grown));
  return {volume_m3 * T(1 / constants::fog_relaxation_s) * share, excess_kg_m3 - rounded / share};
}

// Run-off of the condensate above the drip threshold, within minutes.
// @param film_kg        condensate on the canopy, kg, at least 0
// @param canopy_area_m2 m2
// @return kg/s
template <class T>
inline T drip_kg_s(T film_kg, T canopy_area_m2) {
  return positive_part(T(film_kg - T(constants::drip_threshold_kg_m2) * canopy_area_m2)) /
         T(constants::drip_time_s);
}

// Share of the drips that falls on people; the rest falls on the floor.
// @param persons       number aboard
// @param floor_area_m2 m2
// @return [0, 1]
template <class T>
inline T drip_on_people_share(T persons, T floor_area_m2) {
  return clamp(T(persons * T(constants::plan_area_seated_m2) / floor_area_m2), 0.0, 1.0);
}

// Share of the free floor that is wet.
// @param water_L       water on the floor, L, at least 0
// @param floor_area_m2 m2
// @return [0, 1]
template <class T>
inline T wet_floor_share(T water_L, T floor_area_m2) {
  return smoothstep(T(water_L / floor_area_m2), 0.0, constants::wet_floor_L_m2.value);
}

// Vapour conductance from floor to air: times (saturation at the floor's temperature - vapour density) it
// gives the evaporation in kg/s.
// @param transfer_m_s transfer coefficient (films.hpp), m/s
// @param free_area_m2 floor nobody sits on, m2
// @param wet_share    of that floor, [0, 1]
// @return m3/s
template <class T>
inline T floor_evaporation_m3_s(T transfer_m_s, T free_area_m2, T wet_share) {
  return transfer_m_s * free_area_m2 * wet_share;
}

// Floor area on which nobody sits.
// @param persons       number aboard
// @param floor_area_m2 m2
// @return m2
template <class T>
inline T free_floor_m2(T persons, T floor_area_m2) {
  return floor_area_m2 * (T(1) - drip_on_people_share(persons, floor_area_m2));
}

}  // namespace bide::cabin
