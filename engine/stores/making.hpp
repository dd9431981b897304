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

// Extra heat and work of the worker, W, for that much mechanical work.
template <class T>
inline T work_metabolic_W(T mechanical_W) {
  return mechanical_W / T(constants::muscle_efficiency);
}
// The part of it that is heat in the body.
template <class T>
inline T work_heat_W(T mechanical_W) {
  return work_metabolic_W(mechanical_W) - mechanical_W;
}

template <class T>
struct WaterMade {
  T water_L;
  T metabolic_W;  // of the worker, extra, while at it
  T heat_W;       // of that, heat in the body
};

// A spell at the desalinator. `working` is 0 where it is lost or nobody is able, else 1.
template <class T>
inline WaterMade<T> desalinate(T hours, T output_L_h, T mechanical_W, T working) {
  return {working * hours * output_L_h, working * work_metabolic_W(mechanical_W),
          working * work_heat_W(mechanical_W)};
}

// Rain run off into containers in a shower of constant rate, L: the first millimetre since the last spray
// rinses the canopy, then a share of what falls on the catching area is caught. 1 kg is 1 L.
// @param fallen_before_mm  rain since the canopy was last salted
template <class T>
inline T rain_caught_L(T rain_kg_m2_s, T t_s, T catch_area_m2, T fallen_before_mm) {
  using namespace constants;
  const T due = positive_part(T(T(rain_rinse_mm) - fallen_before_mm));
  return T(rain_caught_share) * catch_area_m2 * positive_part(T(rain_kg_m2_s * t_s - due));
}

// Of `caught_L`, what finds a container: people can store only so much.
template <class T>
inline T rain_stored_L(T caught_L, T water_L, T opening_water_L, T capacity_persons) {
  const T room = opening_water_L + T(constants::rain_store_L_person) * capacity_persons - water_L;
  return smaller(caught_L, positive_part(room));
}

// Solar still, L/s: E G A / 2.3 MJ.
template <class T>
inline T still_L_s(T irradiance_W_m2, T area_m2) {
  constexpr double J_per_MJ = 1e6;
  return T(constants::still_efficiency / (constants::still_heat_MJ_L * J_per_MJ)) * irradiance_W_m2 * area_m2;
}

}  // namespace bide::stores
