// Fingers, and effects of cold on hands, feet and bare faces.
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

// Skin of the fingers, colder than their mean by what their heat needs to come out.
// @param finger_degC, around_degC mean of the fingers, and of their surroundings, degC
// @param loss_W_K    conductance of the fingers to their surroundings, W/K, at least 0
// @param area_m2     of all fingers, m2, above 0
// @return degC
template <class T>
inline T finger_skin_degC(T finger_degC, T around_degC, T loss_W_K, T area_m2) {
  return finger_degC - loss_W_K * (finger_degC - around_degC) / (area_m2 * T(constants::finger_inside_W_m2K));
}

// Rate of exposure to freezing of digits: 1 while the coldest is below the freezing point of tissue; the
// shortest time told of is an hour. Below -4.8 degC of the skin, at which 5 % of fingers freeze (Danielsson
// 1996, from memory), sixty times that: a minute counts as the hour. 0 above.
// @param digit_degC the colder of fingers and toes, degC
// @param skin_degC  the colder of the fingers' skin and the toes, degC
template <class T>
inline T freezing_exposure(T digit_degC, T skin_degC) {
  using namespace constants;
  constexpr double at_once = frostbite_h * hour_min / skin_freezes_min;
  return select(skin_degC < T(skin_freezes_degC), T(at_once),
                select(digit_degC < T(frostbite_degC), T(1), T(0)));
}

// Share, per second, of the time in which a bare, dry face may freeze (Ducharme & Brajkovic 2005,
// formula from memory, of the 5 % who freeze first): minutes = (2111 - 24.5 v) (-4.8 - air)^-1.668, v in
// km/h. It was published with 0.667 of the wind at 10 m and the 4.8 km/h of a walker as v, which is the wind
// at the face. Nothing counts where the time is beyond 30 min, for which it was not published, or the wind is
// below 16 km/h, the lesser of its trial; wind above the published table counts as at its end. Spray and
// gusts are not in it.
// @param air_degC air, degC
// @param wind_m_s at the face, m/s, at least 0
// @return 1/s
template <class T>
inline T face_freezing_per_s(T air_degC, T wind_m_s) {
  using namespace constants;
  constexpr double km_h = hour_s / km_m, barely_K = 1e-3;
  const T wind = smaller(T(wind_m_s * T(km_h)), T(face_greatest_wind_km_h));
  const T below_K = larger(T(T(skin_freezes_degC) - air_degC), T(barely_K));
  const T minutes =
      (T(face_minutes) - T(face_minutes_per_km_h) * wind) * exp(T(T(-face_exponent) * log(below_K)));
  const T longest_min(face_longest_min), least_wind_km_h(face_least_wind_km_h);
  return select((minutes < longest_min) & (wind >= least_wind_km_h), T(T(1 / minute_s) / minutes), T(0));
}

}  // namespace bide::body
