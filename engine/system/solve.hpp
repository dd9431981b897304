// The linear system of one implicit stage, solved exactly in O(nodes).
//
// Four segments-to-skin chains of five nodes hang on the central blood, every skin and clothing surface on
// the four cabin unknowns, the outer canopy skin on the inner. Chains are eliminated first, then the blood,
// then a 4 x 4 cabin system is solved without pivoting: rows are diagonally dominant because every
// off-diagonal term is a conductance that also stands on the diagonal.
//
// States: none of its own. Inputs: frozen coefficients and a = (method coefficient) x (step). Solves
// (C/a - A) u = (C/a) y + b for the temperatures and the vapour density. Source: block Gaussian elimination.
#pragma once

#include <array>
#include <vector>

#include "system/coefficients.hpp"

namespace bide::system {

template <class T>
using Four = std::array<T, 4>;

// Inflow to a node per unit of each cabin unknown, and the inflow to each cabin row per unit of the node.
template <class T>
struct Coupling {
  Four<T> from_cabin, to_cabin;
};

// One chain after elimination.
template <class T>
struct SegmentFactor {
  std::array<T, 5> inverse;      // of the eliminated diagonals
  std::array<T, 5> blood;        // response of each node to one kelvin of blood
  std::array<T, 5> at_skin;      // response to one watt into the skin
  std::array<T, 5> at_clothing;  // response to one watt into the clothing
  T down, up;                    // skin row and clothing row off-diagonals
  Coupling<T> skin, clothing;
};

template <class T>
struct PersonFactor {
  std::array<SegmentFactor<T>, body::segment_count> segments;
  T finger_inverse;
  Coupling<T> finger;
  T blood_inverse;
  Four<T> blood_per_cabin;  // kelvin of blood per unit of each cabin unknown
};

template <class T>
struct Factor {
  T inverse_a;
  T outer_inverse;
  std::array<Four<T>, 4> lu;  // unit lower triangle below, upper with inverse diagonal
  std::vector<PersonFactor<T>> persons;
};

template <class T>
inline Coupling<T> coupling(const body::Surface<T>& s, T latent_heat) {
  return {{s.to_air, s.to_canopy, s.to_floor_water, latent_heat * s.evaporation_m3_s},
          {s.to_air, s.to_canopy, s.to_floor_water, s.evaporation_m3_s * s.density_slope_kg_m3_K}};
}

// Everything a surface loses per kelvin of its own temperature, W/K.
template <class T>
inline T total_loss(const body::Surface<T>& s, T latent_heat) {
  return s.to_air + s.to_canopy + s.to_floor_water + s.to_floor + s.to_tube + s.to_sea +
         latent_heat * s.evaporation_m3_s * s.density_slope_kg_m3_K;
}

// What flows into a surface whatever its temperature, W.
template <class T>
inline T constant_gain(const body::Surface<T>& s, const body::PersonCoefficients<T>& c) {
  return s.to_floor * c.floor_degC + s.to_tube * c.tube_degC + s.to_sea * c.sea_degC -
         c.latent_heat_J_kg * s.evaporation_m3_s * s.density_at_zero_kg_m3;
}

// Back substitution from the skin, which is solved, to the core, where nothing acts but the layer outside.
template <class T>
inline void inward_from_skin(const SegmentFactor<T>& f, const std::array<T, 4>& g, std::array<T, 5>& r) {
  r[2] = g[2] * r[3] * f.inverse[2];
  r[1] = g[1] * r[2] * f.inverse[1];
  r[0] = g[0] * r[1] * f.inverse[0];
}

// Responses to one watt into the skin, and into the clothing: through_chain() without its zero terms.
template <class T>
inline void unit_responses(const std::array<T, 4>& g, SegmentFactor<T>& f) {
  f.at_skin[4] = f.up * f.inverse[3] * f.inverse[4];
  f.at_skin[3] = (T(1) + f.down * f.at_skin[4]) * f.inverse[3];
  inward_from_skin(f, g, f.at_skin);
  f.at_clothing[4] = f.inverse[4];
  f.at_clothing[3] = f.down * f.at_clothing[4] * f.inverse[3];
  inward_from_skin(f, g, f.at_clothing);
}

// Forward elimination and back substitution of one right-hand side through a chain, in place.
template <class T>
inline void through_chain(const SegmentFactor<T>& f, const std::array<T, 4>& g, std::array<T, 5>& r) {
  r[1] += g[0] * f.inverse[0] * r[0];
  r[2] += g[1] * f.inverse[1] * r[1];
  r[3] += g[2] * f.inverse[2] * r[2];
  r[4] += f.up * f.inverse[3] * r[3];
  r[4] *= f.inverse[4];
  r[3] = (r[3] + f.down * r[4]) * f.inverse[3];
  r[2] = (r[2] + g[2] * r[3]) * f.inverse[2];
  r[1] = (r[1] + g[1] * r[2]) * f.inverse[1];
  r[0] = (r[0] + g[0] * r[1]) * f.inverse[0];
}

template <class T>
inline void factor_segment(const body::PersonCoefficients<T>& c, int s, T inverse_a, SegmentFactor<T>& f) {
  const auto& g = c.conductance_W_K[s];
  const auto& b = c.perfusion_W_K[s];
  const auto& cap = c.capacity_J_K[s];
  const auto& skin = c.skin_surface[s];
  const auto& cloth = c.clothing_surface[s];
  const T latent_flow = c.latent_heat_J_kg * c.distillation_m3_s[s];
  f.up = g[3] + latent_flow * skin.density_slope_kg_m3_K;
  f.down = g[3] + latent_flow * cloth.density_slope_kg_m3_K;
  const T d0 = cap[0] * inverse_a + g[0] + b[0];
  const T d1 = cap[1] * inverse_a + g[0] + g[1] + b[1];
  const T d2 = cap[2] * inverse_a + g[1] + g[2] + b[2];
  const T d3 = cap[3] * inverse_a + g[2] + f.up + b[3] + total_loss(skin, c.latent_heat_J_kg);
  const T d4 = cap[4] * inverse_a + f.down + total_loss(cloth, c.latent_heat_J_kg);
  f.inverse[0] = T(1) / d0;
  f.inverse[1] = T(1) / (d1 - g[0] * g[0] * f.inverse[0]);
  f.inverse[2] = T(1) / (d2 - g[1] * g[1] * f.inverse[1]);
  f.inverse[3] = T(1) / (d3 - g[2] * g[2] * f.inverse[2]);
  f.inverse[4] = T(1) / (d4 - f.up * f.down * f.inverse[3]);
  f.blood = {b[0], b[1], b[2], b[3], T(0)};
  through_chain(f, g, f.blood);
  unit_responses(g, f);
  f.skin = coupling(skin, c.latent_heat_J_kg);
  f.clothing = coupling(cloth, c.latent_heat_J_kg);
}

// Eliminates one person and subtracts what the cabin rows see of them.
template <class T>
inline void factor_person(const body::PersonCoefficients<T>& c, T inverse_a, PersonFactor<T>& f,
                          std::array<Four<T>, 4>& cabin) {
  f.finger_inverse = T(1) / (c.finger_capacity_J_K * inverse_a + c.finger_perfusion_W_K +
                             total_loss(c.finger_surface, c.latent_heat_J_kg));
  f.finger = coupling(c.finger_surface, c.latent_heat_J_kg);
  T diagonal = c.blood_capacity_J_K * inverse_a +
               c.finger_perfusion_W_K * (T(1) - c.finger_perfusion_W_K * f.finger_inverse);
  for (int m = 0; m < 4; ++m)
    f.blood_per_cabin[m] = c.finger_perfusion_W_K * f.finger_inverse * f.finger.from_cabin[m];
  for (int s = 0; s < body::segment_count; ++s) {
    SegmentFactor<T>& g = f.segments[s];
    factor_segment(c, s, inverse_a, g);
    const auto& b = c.perfusion_W_K[s];
    T skin_gain(0), clothing_gain(0);
    for (int l = 0; l < body::tissue_count; ++l) {
      diagonal += b[l] * (T(1) - g.blood[l]);
      skin_gain += b[l] * g.at_skin[l];
      clothing_gain += b[l] * g.at_clothing[l];
    }
    for (int m = 0; m < 4; ++m)
      f.blood_per_cabin[m] += skin_gain * g.skin.from_cabin[m] + clothing_gain * g.clothing.from_cabin[m];
  }
  f.blood_inverse = T(1) / diagonal;
  for (int m = 0; m < 4; ++m) f.blood_per_cabin[m] *= f.blood_inverse;

  // Per unit of cabin unknown m, how much each surface warms.
  auto subtract = [&](const Coupling<T>& to, const Four<T>& warms) {
    for (int k = 0; k < 4; ++k)
      for (int m = 0; m < 4; ++m) cabin[k][m] -= to.to_cabin[k] * warms[m];
  };
  Four<T> warms;
  for (int m = 0; m < 4; ++m)
    warms[m] = f.finger_inverse * (f.finger.from_cabin[m] + c.finger_perfusion_W_K * f.blood_per_cabin[m]);
  subtract(f.finger, warms);
  for (const SegmentFactor<T>& g : f.segments) {
    for (int m = 0; m < 4; ++m)
      warms[m] = g.blood[body::skin] * f.blood_per_cabin[m] + g.at_skin[body::skin] * g.skin.from_cabin[m] +
                 g.at_clothing[body::skin] * g.clothing.from_cabin[m];
    subtract(g.skin, warms);
    for (int m = 0; m < 4; ++m)
      warms[m] = g.blood[body::clothing] * f.blood_per_cabin[m] +
                 g.at_skin[body::clothing] * g.skin.from_cabin[m] +
                 g.at_clothing[body::clothing] * g.clothing.from_cabin[m];
    subtract(g.clothing, warms);
  }
}

template <class T>
inline void add_surface_to_cabin_diagonal(const body::Surface<T>& s, std::array<Four<T>, 4>& cabin) {
  cabin[0][0] += s.to_air;
  cabin[1][1] += s.to_canopy;
  cabin[2][2] += s.to_floor_water;
  cabin[3][3] += s.evaporation_m3_s;
}

template <class T>
void factor(const Coefficients<T>& c, double a, Factor<T>& f) {
  using namespace at;
  const CabinCoefficients<T>& k = c.cabin;
  f.inverse_a = T(1 / a);
  f.outer_inverse =
      T(1) / (k.outer_capacity_J_K * f.inverse_a + k.gap_W_K + k.outer_to_air_W_K + k.outer_to_sky_W_K);
  std::array<Four<T>, 4> m{};
  m[air][air] = k.capacity[air] * f.inverse_a + k.air_to_canopy + k.air_to_floor + k.air_to_tube +
                k.air_exchange_W_K + k.latent_heat_J_kg * k.fog_m3_s * k.fog_density_slope;
  m[air][canopy] = -k.air_to_canopy;
  m[air][floor_water] = -k.air_to_floor;
  m[air][vapour] = -(k.latent_heat_J_kg * k.fog_m3_s);
  m[canopy][air] = -k.air_to_canopy;
  m[canopy][canopy] = k.capacity[canopy] * f.inverse_a + k.air_to_canopy +
                      k.gap_W_K * (T(1) - k.gap_W_K * f.outer_inverse) +
                      k.latent_heat_J_kg * k.condensation_m3_s * k.canopy_density_slope;
  m[canopy][vapour] = -(k.latent_heat_J_kg * k.condensation_m3_s);
  m[floor_water][air] = -k.air_to_floor;
  m[floor_water][floor_water] = k.capacity[floor_water] * f.inverse_a + k.air_to_floor + k.floor_to_sea_W_K +
                                k.inflow_W_K +
                                k.latent_heat_J_kg * k.floor_evaporation_m3_s * k.floor_density_slope;
  m[floor_water][vapour] = -(k.latent_heat_J_kg * k.floor_evaporation_m3_s);
  m[vapour][air] = -(k.fog_m3_s * k.fog_density_slope);
  m[vapour][canopy] = -(k.condensation_m3_s * k.canopy_density_slope);
  m[vapour][floor_water] = -(k.floor_evaporation_m3_s * k.floor_density_slope);
  m[vapour][vapour] = k.capacity[vapour] * f.inverse_a + k.ventilation_m3_s + k.condensation_m3_s +
                      k.floor_evaporation_m3_s + k.fog_m3_s;
  for (std::size_t p = 0; p < c.persons.size(); ++p) {
    const auto& person = c.persons[p];
    for (int s = 0; s < body::segment_count; ++s) {
      add_surface_to_cabin_diagonal(person.skin_surface[s], m);
      add_surface_to_cabin_diagonal(person.clothing_surface[s], m);
    }
    add_surface_to_cabin_diagonal(person.finger_surface, m);
    factor_person(person, f.inverse_a, f.persons[p], m);
  }
  for (int i = 0; i < 4; ++i) {
    m[i][i] = T(1) / m[i][i];
    for (int r = i + 1; r < 4; ++r) {
      m[r][i] *= m[i][i];
      for (int q = i + 1; q < 4; ++q) m[r][q] -= m[r][i] * m[i][q];
    }
  }
  f.lu = m;
}

// Right-hand side of a person's nodes for a stage that starts from y: (C/a) y + b.
template <class T>
inline std::array<T, 5> segment_rhs(const body::PersonCoefficients<T>& c, int s, T inverse_a, const T* y) {
  const auto& cap = c.capacity_J_K[s];
  const T* t = y + body::at::node(s, 0);
  const T distilled = c.latent_heat_J_kg * c.distillation_m3_s[s] *
                      (c.skin_surface[s].density_at_zero_kg_m3 - c.clothing_surface[s].density_at_zero_kg_m3);
  std::array<T, 5> r;
  for (int l = 0; l < 5; ++l) r[l] = cap[l] * inverse_a * t[l] + c.source_W[s][l];
  r[body::skin] += constant_gain(c.skin_surface[s], c) - distilled;
  r[body::clothing] += constant_gain(c.clothing_surface[s], c) + distilled;
  return r;
}

// Solves one stage: u from y (both whole state vectors; only the implicit entries are read and written).
template <class T>
void solve_stage(const Coefficients<T>& c, const Factor<T>& f, const T* y, T* u) {
  using namespace at;
  const CabinCoefficients<T>& k = c.cabin;
  const T outer_rhs = k.outer_capacity_J_K * f.inverse_a * y[outer_skin] +
                      k.outer_to_air_W_K * k.outside_degC + k.outer_to_sky_W_K * k.sky_degC + k.sun_outer_W;
  Four<T> r;
  r[air] = k.capacity[air] * f.inverse_a * y[air] + k.air_to_tube * k.tube_degC +
           k.air_exchange_W_K * k.outside_degC + k.breath_dry_W -
           k.latent_heat_J_kg * k.fog_m3_s * k.fog_density_at_zero;
  r[canopy] = k.capacity[canopy] * f.inverse_a * y[canopy] + k.sun_canopy_W +
              k.gap_W_K * f.outer_inverse * outer_rhs -
              k.latent_heat_J_kg * k.condensation_m3_s * k.canopy_density_at_zero;
  r[floor_water] = k.capacity[floor_water] * f.inverse_a * y[floor_water] + k.sun_inside_W +
                   k.floor_to_sea_W_K * k.sea_degC + k.inflow_W_K * k.inflow_degC -
                   k.latent_heat_J_kg * k.floor_evaporation_m3_s * k.floor_density_at_zero;
  r[vapour] = k.capacity[vapour] * f.inverse_a * y[vapour] + k.ventilation_m3_s * k.outside_vapour_kg_m3 +
              k.breath_water_kg_s + k.condensation_m3_s * k.canopy_density_at_zero +
              k.floor_evaporation_m3_s * k.floor_density_at_zero + k.fog_m3_s * k.fog_density_at_zero;

  // Forward: every person's nodes with blood and cabin held at zero, into u; then the blood; then the cabin
  // rows.
  const int persons = static_cast<int>(c.persons.size());
  for (int p = 0; p < persons; ++p) {
    const auto& person = c.persons[p];
    const auto& pf = f.persons[p];
    const T* yp = y + person_offset(p);
    T* up = u + person_offset(p);
    const T finger_alone = (person.finger_capacity_J_K * f.inverse_a * yp[body::at::finger] +
                            person.finger_source_W + constant_gain(person.finger_surface, person)) *
                           pf.finger_inverse;
    up[body::at::finger] = finger_alone;
    T blood = person.blood_capacity_J_K * f.inverse_a * yp[body::at::blood] +
              person.finger_perfusion_W_K * finger_alone;
    for (int s = 0; s < body::segment_count; ++s) {
      std::array<T, 5> chain = segment_rhs(person, s, f.inverse_a, yp);
      through_chain(pf.segments[s], person.conductance_W_K[s], chain);
      for (int l = 0; l < 5; ++l) up[body::at::node(s, l)] = chain[l];
      for (int l = 0; l < body::tissue_count; ++l) blood += person.perfusion_W_K[s][l] * chain[l];
    }
    blood *= pf.blood_inverse;
    up[body::at::blood] = blood;
    auto add = [&](const Coupling<T>& to, const body::Surface<T>& surface, T degC) {
      for (int m = 0; m < 4; ++m) r[m] += to.to_cabin[m] * degC;
      r[vapour] += surface.evaporation_m3_s * surface.density_at_zero_kg_m3;
    };
    add(pf.finger, person.finger_surface,
        finger_alone + pf.finger_inverse * person.finger_perfusion_W_K * blood);
    for (int s = 0; s < body::segment_count; ++s) {
      const auto& g = pf.segments[s];
      add(g.skin, person.skin_surface[s], up[body::at::node(s, body::skin)] + g.blood[body::skin] * blood);
      add(g.clothing, person.clothing_surface[s],
          up[body::at::node(s, body::clothing)] + g.blood[body::clothing] * blood);
    }
  }
  for (int i = 0; i < 4; ++i)
    for (int q = 0; q < i; ++q) r[i] -= f.lu[i][q] * r[q];
  for (int i = 3; i >= 0; --i) {
    for (int q = i + 1; q < 4; ++q) r[i] -= f.lu[i][q] * r[q];
    r[i] *= f.lu[i][i];
  }
  for (int m = 0; m < 4; ++m) u[m] = r[m];
  // CO2 acts on nothing else: its row stands alone.
  u[co2] = (k.volume_m3 * f.inverse_a * y[co2] + k.co2_made_m3_s + k.ventilation_m3_s * k.outside_co2) /
           (k.volume_m3 * f.inverse_a + k.ventilation_m3_s);
  u[outer_skin] = (outer_rhs + k.gap_W_K * r[canopy]) * f.outer_inverse;

  // Back: blood, then every node.
  for (int p = 0; p < persons; ++p) {
    const auto& person = c.persons[p];
    const auto& pf = f.persons[p];
    T* up = u + person_offset(p);
    T blood = up[body::at::blood];
    T finger_gain(0);
    for (int m = 0; m < 4; ++m) {
      blood += pf.blood_per_cabin[m] * r[m];
      finger_gain += pf.finger.from_cabin[m] * r[m];
    }
    up[body::at::blood] = blood;
    up[body::at::finger] += pf.finger_inverse * (person.finger_perfusion_W_K * blood + finger_gain);
    for (int s = 0; s < body::segment_count; ++s) {
      const auto& g = pf.segments[s];
      T skin_gain(0), clothing_gain(0);
      for (int m = 0; m < 4; ++m) {
        skin_gain += g.skin.from_cabin[m] * r[m];
        clothing_gain += g.clothing.from_cabin[m] * r[m];
      }
      for (int l = 0; l < 5; ++l)
        up[body::at::node(s, l)] +=
            g.blood[l] * blood + g.at_skin[l] * skin_gain + g.at_clothing[l] * clothing_gain;
    }
  }
}

}  // namespace bide::system
