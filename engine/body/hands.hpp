// Fingers, and effects of cold on hands and feet.
//
// States: none here; the finger temperature and the exposure times are entries of the person's block. Inputs:
// temperatures of digits, hand, foot and body, commanded flow. Validity: rest; cold-induced dilatation comes
// in slow waves, of which the model has the mean. Sources: each function's own; numbers in
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
  return capacity_J_K * T(per_100_mL * hour_s / minute_s / hand_specific_heat_J_kgK);
}

// Mean temperature of a body: two thirds core, one third skin (Burton 1935, from memory).
// @param core_degC, skin_degC core and mean skin, degC
// @return degC
template <class T>
inline T mean_body_degC(T core_degC, T skin_degC) {
  return skin_degC + T(constants::body_core_share) * (core_degC - skin_degC);
}

// Cold-induced dilatation: mean of the waves of flow through cold fingers (Shitzer 1997), full below 10 degC
// and none above 15. It weakens with the body's mean temperature, in a straight line through a cold and a
// neutral body (Daanen & Ducharme 1999); what heat adds comes by command.
// @param finger_degC  temperature of the fingers, degC
// @param body_degC    mean temperature of the body, degC
// @param capacity_J_K of the finger node, J/K
// @return L/h
template <class T>
inline T cold_dilatation_L_h(T finger_degC, T body_degC, T capacity_J_K) {
  using namespace constants;
  const T cold = T(1) - smoothstep(finger_degC, cold_dilatation_whole_degC, cold_dilatation_onset_degC);
  const T warm_body = clamp(T((body_degC - T(cold_dilatation_no_body_degC)) /
                              T(cold_dilatation_whole_body_degC - cold_dilatation_no_body_degC)),
                            0.0, 1.0);
  return finger_flow_unit_L_h(capacity_J_K) * T(cold_dilatation_flow) * cold * warm_body;
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
  const T film = larger(water_film_W_m2K, T(finger_still_film_W_m2K));
  return film / (T(1 / finger_inside_W_m2K) * film + T(1));
}

// What is left for the fingers of the central blood's heat once that blood has passed the hand: fingers take
// m (hand - finger) from it, m their flow as heat, and lose g (finger - around). Where they settle, this is
// the share by which m (blood - finger) has to be cut:
//   g (hand - around) / (m (blood - hand) + g (blood - around)),
// so that fingers come to lie between hand and surroundings. Surroundings between hand and blood leave
// nothing, and what is hotter than the blood leaves the more the hotter it is: the share has no jump, which
// steps would not follow.
// @param blood_degC, hand_degC, around_degC central blood, core of the hand, mean surroundings, degC
// @param flow_W_K    heat carried by the fingers' flow, W/K, at least 0
// @param loss_W_K    conductance of the fingers to their surroundings, W/K, at least 0
// @return [0, 1]
template <class T>
inline T left_by_hand(T blood_degC, T hand_degC, T around_degC, T flow_W_K, T loss_W_K) {
  constexpr double tiny_W = 1e-9;
  const T fed =
      loss_W_K * (positive_part(T(hand_degC - around_degC)) + positive_part(T(around_degC - blood_degC)));
  const T all =
      flow_W_K * positive_part(T(blood_degC - hand_degC)) + loss_W_K * abs(T(blood_degC - around_degC));
  return smaller(T(fed / (all + T(tiny_W))), T(1));
}

// Toes: of the foot, with their share of its skin's flow and surface, and with no cold-induced dilatation
// (Norrbrand 2017: within ten minutes in 6 % of people, against 61 % in fingers). They settle within minutes.
// @param foot_degC   core of the foot, degC
// @param flow_W_K    heat carried by the flow through the toes, W/K, at least 0
// @param loss_W_K    conductance of the toes to their surroundings, W/K, at least 0
// @param around_degC mean surroundings, degC
// @return degC
template <class T>
inline T toe_degC(T foot_degC, T flow_W_K, T loss_W_K, T around_degC) {
  constexpr double nothing_W_K = 1e-9;
  return around_degC + (foot_degC - around_degC) * flow_W_K / (flow_W_K + loss_W_K + T(nothing_W_K));
}

// Rate of exposure to non-freezing cold injury while toes are below 15 degC: 1 when wet, as long as the
// shortest stay told of; less by the longer time told of where they are cold and dry. 0 above.
// @param toe_degC temperature of the toes, degC
// @param wet      0 dry to 1 wet
// @return [0, 1]
template <class T>
inline T cold_injury_rate(T toe_degC, T wet) {
  using namespace constants;
  constexpr double dry = wet_cold_injury_h / dry_cold_injury_h;
  return select(toe_degC < T(wet_cold_injury_degC), T(T(dry) + wet * T(1 - dry)), T(0));
}

// Rate of exposure to freezing: 1 while the coldest digit is below -0.55 degC, else 0.
// @param digit_degC the colder of fingers and toes, degC
template <class T>
inline T freezing_exposure(T digit_degC) {
  return select(digit_degC < T(constants::frostbite_degC), T(1), T(0));
}

}  // namespace bide::body
