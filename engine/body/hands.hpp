// Fingers, and effects of cold on hands and feet.
//
// States: none here; the finger temperature and the exposure times are entries of the person's block. Inputs:
// finger or skin temperature, commanded flow. Validity: rest; cold-induced dilatation
// comes in slow waves, of which the model has the mean. Sources: each function's own; numbers in
// constants/hands.hpp and limits.hpp.
#pragma once

#include "bide/body/stolwijk.hpp"
#include "bide/constants/body.hpp"
#include "bide/constants/control.hpp"
#include "bide/constants/hands.hpp"
#include "bide/constants/limits.hpp"
#include "bide/core/scalar.hpp"
#include "bide/core/units.hpp"

namespace bide::body {

// The fingers of both hands as one node.
struct FingerNode {
  double area_m2, capacity_J_K, basal_W, basal_flow_L_h, setpoint_C;
};

// Splits the fingers off the hands of a table: area and skin flow by surface share, everything else by mass
// share, conductances in proportion to the surface that stays. The node gets exactly what the hands lose.
// @param table of a person; its hands are reduced
FingerNode take_fingers(BodyTable& table);

// Dexterity of cold fingers: full at 16 degC and above (Brajkovic 2001), none at 8 and below (Ray 2019),
// smooth between.
// @param finger_degC temperature of the fingers, degC
// @return [0, 1]
template <class T>
inline T dexterity(T finger_degC) {
  return smoothstep(finger_degC, constants::hand_function_lost_degC, constants::dexterity_finger_degC);
}

// A flow of 1 mL per 100 mL of finger and minute, in L/h.
// @param capacity_J_K of the finger node, J/K, from which its mass follows (1 mL taken as 1 g)
// @return L/h
template <class T>
inline T finger_flow_unit_L_h(T capacity_J_K) {
  using namespace constants;
  constexpr double per_100_mL = 0.01;
  return capacity_J_K / T(hand_specific_heat_J_kgK) * T(per_100_mL * hour_s / minute_s);
}

// Cold-induced dilatation: mean of the waves of flow through cold fingers (Shitzer 1997), full below 10 degC
// and none above 15. A core below 35 degC stops them (Daanen 2003: almost absent in hypothermia); between
// that and the normal core they fade.
// @param finger_degC  temperature of the fingers, degC
// @param core_degC    core temperature, degC
// @param capacity_J_K of the finger node, J/K
// @return L/h
template <class T>
inline T cold_dilatation_L_h(T finger_degC, T core_degC, T capacity_J_K) {
  using namespace constants;
  const T cold = T(1) - smoothstep(finger_degC, cold_dilatation_whole_degC, cold_dilatation_onset_degC);
  const T warm_core = smoothstep(core_degC, cold_dilatation_least_core_degC, neutral_core);
  return finger_flow_unit_L_h(capacity_J_K) * T(cold_dilatation_flow) * cold * warm_core;
}

// Finger blood flow: commanded flow plus that of cold-induced dilatation, within the limits of a finger's
// vessels (0.5 to 90 mL per 100 mL of finger and minute).
// @param commanded_L_h       basal flow after constriction, dilatation and the local factor, L/h
// @param cold_dilatation_L_h flow of cold-induced dilatation, L/h
// @param capacity_J_K        of the finger node, J/K
// @return L/h
template <class T>
inline T finger_flow_L_h(T commanded_L_h, T cold_dilatation_L_h, T capacity_J_K) {
  using namespace constants;
  const T unit = finger_flow_unit_L_h(capacity_J_K), least = unit * T(finger_least_flow);
  return clamp(T(larger(commanded_L_h, least) + cold_dilatation_L_h), least, unit * T(finger_greatest_flow));
}

// Conductance from the fingers' mean to water past them: what is inside a finger in series with its film. A
// thin cylinder has a greater film than a trunk, even where the water is still (Churchill & Chu 1975); faster
// water counts by the film of the body.
// @param water_film_W_m2K of the body in the water, W/(m2 K), above 0
// @return W/(m2 K)
template <class T>
inline T finger_to_water_W_m2K(T water_film_W_m2K) {
  using namespace constants;
  return T(1) / (T(1 / finger_inside_W_m2K) + T(1) / larger(water_film_W_m2K, T(finger_still_film_W_m2K)));
}

// Rate of exposure to non-freezing cold injury: the wetness while skin is below 15 degC, else 0. Its integral
// over time is the exposure, which has no effect on the model.
// @param skin_degC skin temperature, degC
// @param wet       0 dry to 1 wet
// @return [0, 1]
template <class T>
inline T cold_wet_exposure(T skin_degC, T wet) {
  return select(skin_degC < T(constants::wet_cold_injury_degC), wet, T(0));
}

// Rate of exposure to freezing: 1 while skin is below -0.55 degC, else 0. It has no effect on the model.
// @param skin_degC skin temperature, degC
template <class T>
inline T freezing_exposure(T skin_degC) {
  return select(skin_degC < T(constants::frostbite_degC), T(1), T(0));
}

}  // namespace bide::body
