// Making water: desalinator by hand, rain from the canopy, solar still.
//
// States: rain fallen since the last salting is the caller's. Inputs: hours, L/h, W, kg/(m2 s) of rain, W/m2
// of sun, m2. Validity: yields are design values or recalled, none was measured from a raft. Source: reverse
// osmosis work, LSA Code substitution rule for scale; still equation (from memory).
#pragma once

#include "bide/constants/stores.hpp"
#include "bide/core/moist_air.hpp"
#include "bide/core/scalar.hpp"
#include "bide/core/units.hpp"

namespace bide::stores {

// Extra metabolic rate of the worker: heat and mechanical work together.
// @param mechanical_W mechanical work, W, at least 0
// @return W
template <class T>
inline T work_metabolic_W(T mechanical_W) {
  return mechanical_W / T(constants::muscle_efficiency);
}
// Water made at the desalinator.
// @param hours      time at work, h, at least 0
// @param output_L_h its output, L/h, at least 0
// @param working    share of its pace that is kept up, [0, 1]; 0 if it is lost or nobody can
// @return L
template <class T>
inline T desalinated_L(T hours, T output_L_h, T working) {
  return working * hours * output_L_h;
}

// Rain water caught in a shower of constant rate: the first millimetre since the last spray rinses the
// canopy, then a share of what falls on the catching area is caught. 1 kg is 1 L.
// @param rain_kg_m2_s     rain rate, kg/(m2 s), at least 0
// @param t_s              length of the shower, s, at least 0
// @param catch_area_m2    catching area, m2, at least 0
// @param fallen_before_mm rain since the canopy was last salted, mm, at least 0
// @return L
template <class T>
inline T rain_caught_L(T rain_kg_m2_s, T t_s, T catch_area_m2, T fallen_before_mm) {
  using namespace constants;
  const T due = positive_part(T(T(rain_rinse_mm) - fallen_before_mm));
  return T(rain_caught_share) * catch_area_m2 * positive_part(T(rain_kg_m2_s * t_s - due));
}

// The part of the caught water for which there are containers.
// @param caught_L         water on offer, L, at least 0
// @param water_L          fresh water aboard now, L, at least 0
// @param opening_water_L  fresh water aboard at the start, L, at least 0
// @param capacity_persons persons the raft is made for; each adds some storage
// @return L, [0, caught_L]
template <class T>
inline T rain_stored_L(T caught_L, T water_L, T opening_water_L, T capacity_persons) {
  const T room = opening_water_L + T(constants::rain_store_L_person) * capacity_persons - water_L;
  return smaller(caught_L, positive_part(room));
}

// Output of the solar stills: E G A / 2.3 MJ, with the efficiency E.
// @param irradiance_W_m2 G, on the horizontal, W/m2, at least 0
// @param area_m2         A, of all stills, m2, at least 0
// @return L/s
template <class T>
inline T still_L_s(T irradiance_W_m2, T area_m2) {
  constexpr double J_per_MJ = 1e6;
  return T(constants::still_efficiency / (constants::still_heat_MJ_L * J_per_MJ)) * irradiance_W_m2 * area_m2;
}

}  // namespace bide::stores
