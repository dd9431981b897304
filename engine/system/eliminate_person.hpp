// One person's part of the linear system of an implicit stage, eliminated exactly in O(nodes).
//
// Six chains of five nodes, core to clothing, hang on the central blood, and the fingers too; skin, clothing
// and fingers on the four cabin unknowns. Chains are eliminated first, then the blood; what is left is what
// the cabin's rows see of this person.
//
// States: none of its own. Inputs: frozen coefficients and 1/a, a = (method coefficient) x (step). Solves
// (C/a - A) u = (C/a) y + b for the temperatures. Source: block Gaussian elimination, without pivoting: rows
// are diagonally dominant because every off-diagonal term is a conductance that also stands on the diagonal.
#pragma once

#include <array>

#include "bide/system/coefficients.hpp"

namespace bide::system {

template <class T>
using Four = std::array<T, 4>;

// What a surface and the vapour of the cabin do to each other, both linear: W per kg/m3, and kg/s per K.
template <class T>
struct VapourCoupling {
  T from_cabin, to_cabin;
};

// One chain after elimination.
template <class T>
struct SegmentFactor {
  std::array<T, 5> inverse;      // of the eliminated diagonals
  std::array<T, 4> outward;      // of each node's right-hand side, what the next one outward gets
  T inward;                      // of the clothing's temperature, what the skin gets
  std::array<T, 5> blood;        // response of each node to one kelvin of blood
  std::array<T, 5> at_skin;      // response to one watt into the skin
  std::array<T, 5> at_clothing;  // response to one watt into the clothing
  std::array<T, 5> gain_W;       // what flows into each node whatever the temperatures
  VapourCoupling<T> skin, clothing;
};

template <class T>
struct PersonFactor {
  std::array<SegmentFactor<T>, body::segment_count> segments;
  T finger_inverse, finger_gain_W;
  VapourCoupling<T> finger;
  T blood_inverse;
  Four<T> blood_per_cabin;  // kelvin of blood per unit of each cabin unknown
  Four<T> cabin_per_blood;  // into each cabin row per kelvin of blood
  T vapour_kg_s;            // from all surfaces whatever the temperatures
};

template <class Surface, class T>
inline VapourCoupling<T> vapour_coupling(const Surface& s, T latent_heat) {
  return {latent_heat * s.evaporation_m3_s, s.evaporation_m3_s * s.density_slope_kg_m3_K};
}

// The cabin unknowns that a surface meets.
template <class T>
constexpr std::array<int, 4> met_by(const body::Surface<T>&) {
  return {at::air, at::canopy, at::floor_water, at::vapour};
}
template <class T>
constexpr std::array<int, 3> met_by(const body::OuterSurface<T>&) {
  return {at::air, at::canopy, at::vapour};
}

// Per cabin unknown that it meets, with the vapour's entry as given: inflow to a surface per unit of the
// unknown, or inflow to the cabin row per unit of the surface.
template <class T>
inline Four<T> coupling(const body::Surface<T>& s, T vapour) {
  return {s.to_air, s.to_canopy, s.to_floor_water, vapour};
}
template <class T>
inline Four<T> coupling(const body::OuterSurface<T>& s, T vapour) {
  return {s.to_air, s.to_canopy, T(0), vapour};
}

// Inflow to a surface from the whole cabin, W.
template <class T>
inline T from_cabin(const body::Surface<T>& s, const VapourCoupling<T>& v, const Four<T>& cabin) {
  return s.to_air * cabin[at::air] + s.to_canopy * cabin[at::canopy] +
         s.to_floor_water * cabin[at::floor_water] + v.from_cabin * cabin[at::vapour];
}
template <class T>
inline T from_cabin(const body::OuterSurface<T>& s, const VapourCoupling<T>& v, const Four<T>& cabin) {
  return s.to_air * cabin[at::air] + s.to_canopy * cabin[at::canopy] + v.from_cabin * cabin[at::vapour];
}

// Everything a surface loses per kelvin of its own temperature, W/K.
template <class T>
inline T total_loss(const body::Surface<T>& s, const VapourCoupling<T>& v, T latent_heat) {
  return s.to_air + s.to_canopy + s.to_floor_water + s.to_floor + s.to_tube + s.to_sea +
         latent_heat * v.to_cabin;
}
template <class T>
inline T total_loss(const body::OuterSurface<T>& s, const VapourCoupling<T>& v, T latent_heat) {
  return s.to_air + s.to_canopy + s.to_sea + latent_heat * v.to_cabin;
}

// What flows into a surface whatever its temperature, W.
template <class T>
inline T constant_gain(const body::Surface<T>& s, const body::PersonCoefficients<T>& c,
                       const VapourCoupling<T>& v) {
  return s.to_floor * c.floor_degC + s.to_tube * c.tube_degC + s.to_sea * c.sea_degC -
         v.from_cabin * s.density_at_zero_kg_m3;
}
template <class T>
inline T constant_gain(const body::OuterSurface<T>& s, const body::PersonCoefficients<T>& c,
                       const VapourCoupling<T>& v) {
  return s.to_sea * c.sea_degC - v.from_cabin * s.density_at_zero_kg_m3;
}

// Responses to one watt into the skin, and into the clothing: through_chain() without its zero terms.
template <class T>
inline void unit_responses(SegmentFactor<T>& f) {
  const auto inward_from_skin = [&](std::array<T, 5>& r) {
    for (int l = body::fat; l >= body::core; --l) r[l] = f.outward[l] * r[l + 1];
  };
  f.at_skin[4] = f.outward[3] * f.inverse[4];
  f.at_skin[3] = f.inverse[3] + f.inward * f.at_skin[4];
  inward_from_skin(f.at_skin);
  f.at_clothing[4] = f.inverse[4];
  f.at_clothing[3] = f.inward * f.inverse[4];
  inward_from_skin(f.at_clothing);
}

// Forward elimination and back substitution of one right-hand side through a chain, in place.
template <class T>
inline void through_chain(const SegmentFactor<T>& f, std::array<T, 5>& r) {
  for (int l = 0; l < 4; ++l) r[l + 1] += f.outward[l] * r[l];
  r[4] *= f.inverse[4];
  r[3] = r[3] * f.inverse[3] + f.inward * r[4];
  for (int l = body::fat; l >= body::core; --l) r[l] = r[l] * f.inverse[l] + f.outward[l] * r[l + 1];
}

// What a node of a segment loses per kelvin of its own, stored heat included, W/K.
template <class T>
inline std::array<T, 5> diagonal(const body::PersonCoefficients<T>& c, int s, T inverse_a,
                                 const SegmentFactor<T>& f, T up, T down) {
  const auto& g = c.conductance_W_K[s];
  const auto& b = c.perfusion_W_K[s];
  const auto& cap = c.capacity_J_K[s];
  return {cap[0] * inverse_a + g[0] + b[0], cap[1] * inverse_a + g[0] + g[1] + b[1],
          cap[2] * inverse_a + g[1] + g[2] + b[2],
          cap[3] * inverse_a + g[2] + up + b[3] + total_loss(c.skin_surface[s], f.skin, c.latent_heat_J_kg),
          cap[4] * inverse_a + down + total_loss(c.clothing_surface[s], f.clothing, c.latent_heat_J_kg)};
}

// All chains of a person, layer by layer: divisions that do not wait for each other overlap.
template <class T>
inline void factor_chains(const body::PersonCoefficients<T>& c, T inverse_a,
                          std::array<SegmentFactor<T>, body::segment_count>& segments) {
  // Diagonals and off-diagonals stand where their results will.
  for (int s = 0; s < body::segment_count; ++s) {
    SegmentFactor<T>& f = segments[s];
    const auto& skin = c.skin_surface[s];
    const auto& cloth = c.clothing_surface[s];
    f.skin = vapour_coupling(skin, c.latent_heat_J_kg);
    f.clothing = vapour_coupling(cloth, c.latent_heat_J_kg);
    const T latent_flow = c.latent_heat_J_kg * c.distillation_m3_s[s];
    f.outward[3] = c.conductance_W_K[s][3] + latent_flow * skin.density_slope_kg_m3_K;
    f.inward = c.conductance_W_K[s][3] + latent_flow * cloth.density_slope_kg_m3_K;
    f.inverse = diagonal(c, s, inverse_a, f, f.outward[3], f.inward);
    const T distilled = latent_flow * (skin.density_at_zero_kg_m3 - cloth.density_at_zero_kg_m3);
    f.gain_W = c.source_W[s];
    f.gain_W[body::skin] += constant_gain(skin, c, f.skin) - distilled;
    f.gain_W[body::clothing] += constant_gain(cloth, c, f.clothing) + distilled;
  }
  for (int l = 0; l < 3; ++l)
    for (int s = 0; s < body::segment_count; ++s) {
      SegmentFactor<T>& f = segments[s];
      const T g = c.conductance_W_K[s][l];
      f.inverse[l] = T(1) / f.inverse[l];
      f.outward[l] = g * f.inverse[l];
      f.inverse[l + 1] -= g * f.outward[l];
    }
  for (SegmentFactor<T>& f : segments) {
    const T down = f.inward;
    f.inverse[3] = T(1) / f.inverse[3];
    f.outward[3] *= f.inverse[3];
    f.inward *= f.inverse[3];
    f.inverse[4] -= down * f.outward[3];
  }
  for (int s = 0; s < body::segment_count; ++s) {
    SegmentFactor<T>& f = segments[s];
    f.inverse[4] = T(1) / f.inverse[4];
    const auto& b = c.perfusion_W_K[s];
    f.blood = {b[0], b[1], b[2], b[3], T(0)};
    through_chain(f, f.blood);
    unit_responses(f);
  }
}

// Eliminates one person: what their surfaces take from the cabin goes onto its rows' diagonal, and what the
// rows see of the rest of the person is subtracted.
template <class T>
inline void eliminate_person(const body::PersonCoefficients<T>& c, T inverse_a, PersonFactor<T>& f,
                             std::array<Four<T>, 4>& cabin) {
  const auto add_to_diagonal = [&](const auto& s) {
    const Four<T> taken = coupling(s, s.evaporation_m3_s);
    for (const int k : met_by(s)) cabin[k][k] += taken[k];
  };
  const auto& finger = c.finger_surface;
  add_to_diagonal(finger);
  f.finger = vapour_coupling(finger, c.latent_heat_J_kg);
  f.finger_inverse = T(1) / (c.finger_capacity_J_K * inverse_a + c.finger_perfusion_W_K +
                             total_loss(finger, f.finger, c.latent_heat_J_kg));
  f.finger_gain_W = c.finger_source_W + constant_gain(finger, c, f.finger);
  f.vapour_kg_s = finger.evaporation_m3_s * finger.density_at_zero_kg_m3;
  const T finger_per_blood = c.finger_perfusion_W_K * f.finger_inverse;
  T diagonal = c.blood_capacity_J_K * inverse_a + c.finger_perfusion_W_K * (T(1) - finger_per_blood);
  const Four<T> finger_from = coupling(finger, f.finger.from_cabin),
                finger_to = coupling(finger, f.finger.to_cabin);
  f.blood_per_cabin = f.cabin_per_blood = {T(0), T(0), T(0), T(0)};
  Four<T> alone{T(0), T(0), T(0), T(0)};
  for (const int m : met_by(finger)) {
    f.blood_per_cabin[m] = finger_per_blood * finger_from[m];
    f.cabin_per_blood[m] = finger_to[m] * finger_per_blood;
    alone[m] = f.finger_inverse * finger_from[m];
  }
  for (const int k : met_by(finger))
    for (const int m : met_by(finger)) cabin[k][m] -= finger_to[k] * alone[m];
  factor_chains(c, inverse_a, f.segments);
  for (int s = 0; s < body::segment_count; ++s) {
    const SegmentFactor<T>& g = f.segments[s];
    const auto& b = c.perfusion_W_K[s];
    const auto& skin = c.skin_surface[s];
    const auto& cloth = c.clothing_surface[s];
    add_to_diagonal(skin);
    add_to_diagonal(cloth);
    f.vapour_kg_s += skin.evaporation_m3_s * skin.density_at_zero_kg_m3 +
                     cloth.evaporation_m3_s * cloth.density_at_zero_kg_m3;
    T skin_gain(0), clothing_gain(0);
    for (int l = 0; l < body::tissue_count; ++l) {
      diagonal += b[l] * (T(1) - g.blood[l]);
      skin_gain += b[l] * g.at_skin[l];
      clothing_gain += b[l] * g.at_clothing[l];
    }
    const Four<T> skin_from = coupling(skin, g.skin.from_cabin), skin_to = coupling(skin, g.skin.to_cabin),
                  cloth_from = coupling(cloth, g.clothing.from_cabin),
                  cloth_to = coupling(cloth, g.clothing.to_cabin);
    Four<T> skin_warms, cloth_warms;
    for (const int m : met_by(skin)) {
      f.blood_per_cabin[m] += skin_gain * skin_from[m];
      f.cabin_per_blood[m] += skin_to[m] * g.blood[body::skin];
      skin_warms[m] = g.at_skin[body::skin] * skin_from[m];
      cloth_warms[m] = g.at_skin[body::clothing] * skin_from[m];
    }
    for (const int m : met_by(cloth)) {
      f.blood_per_cabin[m] += clothing_gain * cloth_from[m];
      f.cabin_per_blood[m] += cloth_to[m] * g.blood[body::clothing];
      skin_warms[m] += g.at_clothing[body::skin] * cloth_from[m];
      cloth_warms[m] += g.at_clothing[body::clothing] * cloth_from[m];
    }
    for (int m = 0; m < 4; ++m) cabin[at::floor_water][m] -= skin_to[at::floor_water] * skin_warms[m];
    for (const int k : met_by(cloth))
      for (int m = 0; m < 4; ++m) cabin[k][m] -= skin_to[k] * skin_warms[m] + cloth_to[k] * cloth_warms[m];
  }
  f.blood_inverse = T(1) / diagonal;
  for (int m = 0; m < 4; ++m) f.blood_per_cabin[m] *= f.blood_inverse;
  for (int k = 0; k < 4; ++k)
    for (int m = 0; m < 4; ++m) cabin[k][m] -= f.cabin_per_blood[k] * f.blood_per_cabin[m];
}

// One person's nodes with blood and cabin held at zero, into u; then the blood; then what the cabin rows get.
template <class T>
inline void forward_person(const body::PersonCoefficients<T>& c, const PersonFactor<T>& f, T inverse_a,
                           const T* y, T* u, Four<T>& cabin) {
  namespace node = body::at;
  const auto add = [&](const auto& s, T to_vapour, T degC) {
    const Four<T> to = coupling(s, to_vapour);
    for (const int k : met_by(s)) cabin[k] += to[k] * degC;
  };
  const T finger = (c.finger_capacity_J_K * inverse_a * y[node::finger] + f.finger_gain_W) * f.finger_inverse;
  u[node::finger] = finger;
  add(c.finger_surface, f.finger.to_cabin, finger);
  T blood = c.blood_capacity_J_K * inverse_a * y[node::blood] + c.finger_perfusion_W_K * finger;
  for (int s = 0; s < body::segment_count; ++s) {
    const SegmentFactor<T>& g = f.segments[s];
    const T* start = y + node::node(s, 0);
    std::array<T, 5> chain;
    for (int l = 0; l < 5; ++l) chain[l] = c.capacity_J_K[s][l] * inverse_a * start[l] + g.gain_W[l];
    through_chain(g, chain);
    for (int l = 0; l < 5; ++l) u[node::node(s, l)] = chain[l];
    for (int l = 0; l < body::tissue_count; ++l) blood += c.perfusion_W_K[s][l] * chain[l];
    add(c.skin_surface[s], g.skin.to_cabin, chain[body::skin]);
    add(c.clothing_surface[s], g.clothing.to_cabin, chain[body::clothing]);
  }
  blood *= f.blood_inverse;
  u[node::blood] = blood;
  for (int k = 0; k < 4; ++k) cabin[k] += f.cabin_per_blood[k] * blood;
  cabin[at::vapour] += f.vapour_kg_s;
}

// The cabin is known: blood, then every node.
template <class T>
inline void back_person(const body::PersonCoefficients<T>& c, const PersonFactor<T>& f, const Four<T>& cabin,
                        T* u) {
  namespace node = body::at;
  T blood = u[node::blood];
  for (int m = 0; m < 4; ++m) blood += f.blood_per_cabin[m] * cabin[m];
  u[node::blood] = blood;
  u[node::finger] +=
      f.finger_inverse * (c.finger_perfusion_W_K * blood + from_cabin(c.finger_surface, f.finger, cabin));
  for (int s = 0; s < body::segment_count; ++s) {
    const SegmentFactor<T>& g = f.segments[s];
    const T skin_gain = from_cabin(c.skin_surface[s], g.skin, cabin);
    const T clothing_gain = from_cabin(c.clothing_surface[s], g.clothing, cabin);
    for (int l = 0; l < 5; ++l)
      u[node::node(s, l)] += g.blood[l] * blood + g.at_skin[l] * skin_gain + g.at_clothing[l] * clothing_gain;
  }
}

}  // namespace bide::system
