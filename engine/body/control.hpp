// The controller: what the body commands from the temperatures it feels.
//
// States: none (read from the person's block). Inputs: node temperatures, degC. Outputs: sweat W, skin and
// muscle flow as W/K of heat carried. Validity: core 33-40 degC as published; below 30 degC the cold commands
// are held by the shivering cut-off, not by this page. Source: Stolwijk 1971 (NASA CR-1855), coefficients in
// constants/control.hpp; closing fat vessels and counter-current are additions named
// there.
#pragma once

#include "bide/body/build.hpp"
#include "bide/constants/control.hpp"
#include "bide/core/scalar.hpp"

namespace bide::body {

template <class T>
struct Commands {
  T sweat_W;  // evaporative heat commanded for the whole skin
  T dilatation_L_h, constriction;
  std::array<T, segment_count> local;  // 2^(skin error / 10 K)
  T finger_local;
};

// What the skin and core errors command. `core_shift_K` raises the sweating and dilatation threshold
// (dehydration).
template <class T>
inline Commands<T> commands(const Build<T>& b, const T* x, T core_shift_K) {
  Commands<T> out;
  constexpr double ln2 = 0.69314718055994530942;
  const T per_K(ln2 / constants::local_skin_factor.value);
  T skin_error(0);
  for (int s = 0; s < segment_count; ++s) {
    const T error = x[at::node(s, skin)] - b.setpoint_degC[s][skin];
    skin_error += b.receptor[s] * error;
    out.local[s] = exp(per_K * error);
  }
  out.finger_local = exp(per_K * (x[at::finger] - b.finger_setpoint_degC));
  const T head_error = x[at::node(head, core)] - b.setpoint_degC[head][core];
  const T warm_error = head_error - core_shift_K;
  out.sweat_W = b.sweat_factor * clamp(T(constants::sweat_per_head_core.value) * warm_error +
                                           T(constants::sweat_per_skin.value) * skin_error,
                                       T(0), T(constants::greatest_sweat.value) * b.area_total_m2);
  out.dilatation_L_h =
      b.dilatation_age_factor * positive_part(T(constants::dilatation_per_head_core.value) * warm_error +
                                              T(constants::dilatation_per_skin.value) * skin_error);
  out.constriction = positive_part(-(T(constants::constriction_per_head_core.value) * head_error) -
                                   T(constants::constriction_per_skin.value) * skin_error);
  return out;
}

// What constriction leaves of a flow, 0 to 1.
template <class T>
inline T unconstricted(T constriction_share, const Commands<T>& c) {
  return T(1) / (T(1) + constriction_share * c.constriction);
}

// Skin blood flow, L/h.
template <class T>
inline T skin_flow_L_h(T basal, T dilatation_share, T unconstricted, const Commands<T>& c, T local) {
  return (basal + dilatation_share * c.dilatation_L_h) * unconstricted * local;
}

// Blood flow of the fat under the skin, L/h: its vessels close with those of the skin above (the 1971 table
// keeps it constant, which lets a thick layer be warmed through and hides fatness in the cold).
template <class T>
inline T fat_flow_L_h(T basal, T unconstricted) {
  return basal * unconstricted;
}

// Muscle blood flow, L/h: the basal flow, and what work and shivering bring. It does not constrict in the
// cold: tried, with a published direction and a size of our own, that shut the core off until shivering
// opened it at once, and the core swung by 0.8 K every few hours, which nobody has measured.
template <class T>
inline T muscle_flow_L_h(T basal, T extra_heat_W) {
  return basal + T(constants::flow_per_muscle_heat.value) * extra_heat_W;
}

inline constexpr double tiny_W_K = 1e-12;  // keeps 0/0 out of a person without circulation

// Heat that reaches the tissue per flow, W/K per L/h, when the flow first passes a balanced counter-current
// exchanger of conductance `exchanger`: c mc / (mc + exchanger), mc what the whole flow carries.
// Effectiveness of balanced counterflow: NTU/(1 + NTU).
template <class T>
inline T perfusion_per_flow(T flow_L_h, T exchanger_W_K) {
  const T mc = T(constants::blood_heat.value) * flow_L_h;
  return T(constants::blood_heat.value) * mc / (mc + exchanger_W_K + T(tiny_W_K));
}

// All that reaches it, W/K.
template <class T>
inline T perfusion_W_K(T flow_L_h, T exchanger_W_K) {
  return flow_L_h * perfusion_per_flow(flow_L_h, exchanger_W_K);
}

}  // namespace bide::body
