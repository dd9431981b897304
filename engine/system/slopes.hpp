// Slopes of the implicit entries at a given state, flux by flux: the right-hand side the reference
// integrates.
//
// States: temperatures and vapour. Inputs: coefficients frozen at this very state. Validity: as the
// coefficients. Each flux is written once and enters both neighbours with opposite sign; positive is from the
// first to the second.
#pragma once

#include "bide/system/coefficients.hpp"

namespace bide::system {

// Heat and vapour from one surface into the cabin rows; returns the node's loss, W: what every surface has.
template <class Surface, class T>
inline T open_flow(const Surface& s, const body::PersonCoefficients<T>& c, T degC, const T* x, T* rows) {
  const T to_air = s.to_air * (degC - x[at::air]);
  const T to_canopy = s.to_canopy * (degC - x[at::canopy]);
  const T evaporated =
      s.evaporation_m3_s * (s.density_at_zero_kg_m3 + s.density_slope_kg_m3_K * degC - x[at::vapour]);
  rows[at::air] += to_air;
  rows[at::canopy] += to_canopy;
  rows[at::vapour] += evaporated;
  return to_air + to_canopy + c.latent_heat_J_kg * evaporated + s.to_sea * (degC - c.sea_degC);
}

template <class T>
inline T surface_flow(const body::OuterSurface<T>& s, const body::PersonCoefficients<T>& c, T degC,
                      const T* x, T* rows) {
  return open_flow(s, c, degC, x, rows);
}

template <class T>
inline T surface_flow(const body::Surface<T>& s, const body::PersonCoefficients<T>& c, T degC, const T* x,
                      T* rows) {
  const T to_water = s.to_floor_water * (degC - x[at::floor_water]);
  rows[at::floor_water] += to_water;
  return open_flow(s, c, degC, x, rows) + to_water + s.to_floor * (degC - c.floor_degC) +
         s.to_tube * (degC - c.tube_degC);
}

template <class T>
inline void person_slopes(const body::PersonCoefficients<T>& c, const T* cabin, const T* x, T* k, T* rows) {
  using namespace body;
  const T blood_degC = x[body::at::blood];
  const T to_finger = c.finger_perfusion_W_K * (blood_degC - x[body::at::finger]);
  T blood_W = -to_finger;
  k[body::at::finger] =
      (c.finger_source_W + to_finger - surface_flow(c.finger_surface, c, x[body::at::finger], cabin, rows)) /
      c.finger_capacity_J_K;
  for (int s = 0; s < segment_count; ++s) {
    const T* t = x + body::at::node(s, 0);
    std::array<T, layer_count> gain = c.source_W[s];
    for (int l = 0; l < tissue_count; ++l) {
      const T outward = c.conductance_W_K[s][l] * (t[l] - t[l + 1]);
      gain[l] -= outward;
      gain[l + 1] += outward;
      const T perfused = c.perfusion_W_K[s][l] * (blood_degC - t[l]);
      gain[l] += perfused;
      blood_W -= perfused;
    }
    const auto& on_skin = c.skin_surface[s];
    const auto& on_cloth = c.clothing_surface[s];
    const T distilled = c.latent_heat_J_kg * c.distillation_m3_s[s] *
                        (on_skin.density_at_zero_kg_m3 + on_skin.density_slope_kg_m3_K * t[skin] -
                         on_cloth.density_at_zero_kg_m3 - on_cloth.density_slope_kg_m3_K * t[clothing]);
    gain[skin] -= distilled + surface_flow(on_skin, c, t[skin], cabin, rows);
    gain[clothing] += distilled - surface_flow(on_cloth, c, t[clothing], cabin, rows);
    for (int l = 0; l < layer_count; ++l) k[body::at::node(s, l)] = gain[l] / c.capacity_J_K[s][l];
  }
  k[body::at::blood] = blood_W / c.blood_capacity_J_K;
}

template <class T>
void implicit_slopes(const Coefficients<T>& c, const T* x, T* k) {
  using namespace at;
  const CabinCoefficients<T>& q = c.cabin;
  std::array<T, 4> rows{T(0), T(0), T(0), T(0)};
  for (int p = 0; p < static_cast<int>(c.persons.size()); ++p)
    person_slopes(c.persons[p], x, x + person_offset(p), k + person_offset(p), rows.data());
  const T air_to_canopy = q.air_to_canopy * (x[air] - x[canopy]);
  const T air_to_floor = q.air_to_floor * (x[air] - x[floor_water]);
  const T through_gap = q.gap_W_K * (x[canopy] - x[outer_skin]);
  const T condensed =
      q.condensation_m3_s * (x[vapour] - q.canopy_density_at_zero - q.canopy_density_slope * x[canopy]);
  const T evaporated = q.floor_evaporation_m3_s *
                       (q.floor_density_at_zero + q.floor_density_slope * x[floor_water] - x[vapour]);
  const T fog = q.fog_m3_s * (x[vapour] - q.fog_density_at_zero - q.fog_density_slope * x[air]);
  rows[air] += q.breath_dry_W + q.latent_heat_J_kg * fog - air_to_canopy - air_to_floor -
               q.air_to_tube * (x[air] - q.tube_degC) - q.air_exchange_W_K * (x[air] - q.outside_degC);
  rows[canopy] += q.sun_canopy_W + air_to_canopy - through_gap + q.latent_heat_J_kg * condensed;
  rows[floor_water] += q.sun_inside_W + air_to_floor - q.floor_to_sea_W_K * (x[floor_water] - q.sea_degC) -
                       q.inflow_W_K * (x[floor_water] - q.inflow_degC) - q.latent_heat_J_kg * evaporated;
  rows[vapour] += q.breath_water_kg_s + evaporated - condensed - fog -
                  q.ventilation_m3_s * (x[vapour] - q.outside_vapour_kg_m3);
  for (int i = 0; i < 4; ++i) k[i] = rows[i] / q.capacity[i];
  k[co2] = (q.co2_made_m3_s - q.ventilation_m3_s * (x[co2] - q.outside_co2)) / q.volume_m3;
  k[outer_skin] = (q.sun_outer_W + through_gap - q.outer_to_air_W_K * (x[outer_skin] - q.outside_degC) -
                   q.outer_to_sky_W_K * (x[outer_skin] - q.sky_degC)) /
                  q.outer_capacity_J_K;
}

}  // namespace bide::system
