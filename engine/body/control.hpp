// The controller: sweating, dilatation and constriction as commanded from temperatures.
//
// States: sweat given, an entry of the person's block. Inputs: node temperatures, degC. Outputs: sweat W,
// skin and muscle flow as W/K of heat carried. Validity: core 33-40 degC as published; below 30 degC the
// shivering cut-off limits the commands of cold, not this header. Source: Stolwijk 1971 (NASA CR-1855),
// coefficients in constants/control.hpp; closing fat vessels and counter-current are additions named there.
#pragma once

#include "bide/body/build.hpp"
#include "bide/constants/control.hpp"
#include "bide/core/packs.hpp"
#include "bide/core/scalar.hpp"
#include "bide/core/units.hpp"

namespace bide::body {

template <class T>
struct Commands {
  T sweat_W, greatest_sweat_W;     // evaporative heat of the whole skin: commanded or given, and what glands
                                   // can give at most
  T dilatation_L_h, constriction;  // of the whole skin, both at least 0
  std::array<T, segment_count> local;  // factor on flow by skin temperature, 2^(skin error / 10 K)
  T finger_local;                      // the same for the fingers
};

// Commands from the errors of skin and core temperature.
// @param b            the person's parameters
// @param x            the person's block of the state
// @param core_shift_K rise of the threshold of sweating and dilatation (dehydration; below 0: used to heat),
// K
// @param rhythm_K     rise of all thresholds by the clock, K
template <class T>
inline Commands<T> commands(const Build<T>& b, const T* x, T core_shift_K, T rhythm_K) {
  Commands<T> out;
  constexpr double ln2 = 0.69314718055994530942;
  T skin_error(0);
  in_packs<T, segment_count + 1>(
      [&](int s) {
        if (s == segment_count) return T(x[at::finger] - b.finger_setpoint_degC);
        const T error = x[at::node(s, skin)] - b.setpoint_degC[s][skin];
        skin_error += b.receptor[s] * error;
        return error;
      },
      [&](auto error) { return exp(decltype(error)(ln2 / constants::local_skin_factor.value) * error); },
      [&](int s, T local) { (s == segment_count ? out.finger_local : out.local[s]) = local; });
  const T head_error = x[at::node(head, core)] - b.setpoint_degC[head][core] - rhythm_K;
  const T warm_error = head_error - core_shift_K;
  out.sweat_W = b.sweat_factor * b.command_size *
                positive_part(T(constants::sweat_per_head_core.value) * warm_error +
                              T(constants::sweat_per_skin.value) * skin_error);
  out.greatest_sweat_W = b.sweat_factor * b.greatest_sweat_W_m2 * b.area_total_m2;
  out.dilatation_L_h = b.dilatation_age_factor * b.command_size *
                       positive_part(T(constants::dilatation_per_head_core.value) * warm_error +
                                     T(constants::dilatation_per_skin.value) * skin_error);
  out.constriction = b.constriction_age_factor *
                     positive_part(-(T(constants::constriction_per_head_core.value) * head_error) -
                                   T(constants::constriction_per_skin.value) * skin_error);
  return out;
}

// Slope of the sweat that the glands give: it follows the command as a first-order system (Malchaire 1991).
// Without that delay sweat, skin and core answer one another within a step.
// @param commanded_W evaporative heat of the whole skin that is commanded, W, at least 0
// @param given_W     what the glands give now, W
// @return W/s
template <class T>
inline T sweat_response_W_s(T commanded_W, T given_W) {
  return (commanded_W - given_W) * T(1 / (constants::sweat_response_min * minute_s));
}

// Sweat of a segment. The factor of a hot skin acts on the command, not on what glands can give.
// @param sweat_share of the segment, [0, 1]
// @param c           commands now
// @param local       factor of the local skin temperature
// @return evaporative heat, W
template <class T>
inline T sweat_W(T sweat_share, const Commands<T>& c, T local) {
  return sweat_share * smaller(T(c.sweat_W * local), c.greatest_sweat_W);
}

// Factor that constriction leaves of a flow.
// @param constriction_share of the segment
// @param c                  commands now
// @return (0, 1]
template <class T>
inline T unconstricted(T constriction_share, const Commands<T>& c) {
  return T(1) / (T(1) + constriction_share * c.constriction);
}

// Skin blood flow.
// @param basal            basal flow, L/h
// @param dilatation_share of the segment, [0, 1]
// @param unconstricted    factor that constriction leaves, (0, 1]
// @param c                commands now
// @param local            factor of the local skin temperature
// @return L/h
template <class T>
inline T skin_flow_L_h(T basal, T dilatation_share, T unconstricted, const Commands<T>& c, T local) {
  return (basal + dilatation_share * c.dilatation_L_h) * unconstricted * local;
}

// Blood flow of the fat under the skin: its vessels close with those of the skin above (the 1971 table keeps
// it constant, so that blood warms a thick layer and fatness has no effect in the cold).
// @param basal         basal flow, L/h
// @param unconstricted factor that constriction leaves, (0, 1]
// @return L/h
template <class T>
inline T fat_flow_L_h(T basal, T unconstricted) {
  return basal * unconstricted;
}

// Factor of a node's own temperature on its resting heat and flow: tissue that cools makes less heat, needs
// less oxygen and is given less blood, by Q10 (Fiala 1999). It acts as fast as the tissue cools, over
// hours in a limb, and knows nothing of the medium. Nothing above the set point: warm muscle is not in this.
// @param warmer_K temperature of the node less that in the neutral state, K
// @return (0, 1]
template <class T>
inline T cold_tissue_factor(T warmer_K) {
  constexpr double ln2 = 0.69314718055994530942, per_K = 0.1;
  static_assert(constants::muscle_flow_q10.value == 2);
  return exp(T(ln2 * per_K) * smaller(warmer_K, T(0)));
}

// Muscle blood flow: resting flow plus that of work and shivering. No command closes it in the cold: thigh
// muscle kept its flow after ten minutes in water of 8 to 22 degC (Mawhinney 2020, PET). That was tried: it
// isolated the core until shivering began and opened the flow at once, and the core swung by 0.8 K every few
// hours, which nobody has measured.
// @param resting      flow at rest at the muscle's temperature, L/h
// @param extra_heat_W heat of work and shivering in the muscle, W, at least 0
// @return L/h
template <class T>
inline T muscle_flow_L_h(T resting, T extra_heat_W) {
  return resting + T(constants::flow_per_muscle_heat.value) * extra_heat_W;
}

inline constexpr double tiny_W_K = 1e-12;  // keeps 0/0 out of a person without circulation

// Heat that reaches the tissue per flow, when the flow first passes a balanced counter-current exchanger:
// c mc / (mc + exchanger), with mc the heat carried by the whole flow. Effectiveness of balanced counterflow:
// NTU/(1 + NTU).
// @param flow_L_h      L/h, at least 0
// @param exchanger_W_K conductance of the exchanger, W/K, at least 0
// @return W/K per L/h
template <class T>
inline T perfusion_per_flow(T flow_L_h, T exchanger_W_K) {
  const T mc = T(constants::blood_heat.value) * flow_L_h;
  return T(constants::blood_heat.value) * mc / (mc + exchanger_W_K + T(tiny_W_K));
}

// Heat that reaches the tissue.
// @param flow_L_h      L/h, at least 0
// @param exchanger_W_K conductance of the exchanger, W/K, at least 0
// @return W/K
template <class T>
inline T perfusion_W_K(T flow_L_h, T exchanger_W_K) {
  return flow_L_h * perfusion_per_flow(flow_L_h, exchanger_W_K);
}

}  // namespace bide::body
