// The equations of the coupled problem, assembled here independently of the engine: node by node, from the
// definition of each flux. And coefficients to try them on.
#pragma once

#include <random>
#include <vector>

#include "bide/system/coefficients.hpp"

namespace bide::test {

namespace at = system::at;
using system::Coefficients;
using system::person_offset;

struct Random {
  std::mt19937 engine{20310203};
  double operator()(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(engine);
  }
};

inline body::Surface<double> random_surface(Random& r) {
  return {r(0, 4), r(0, 4), r(0, 1), r(0, 2), r(0, 1), r(0, 9), r(0, 2e-3), r(-0.03, -0.005), r(5e-4, 3e-3)};
}

inline body::OuterSurface<double> random_outer_surface(Random& r) {
  return {r(0, 4), r(0, 4), r(0, 9), r(0, 2e-3), r(-0.03, -0.005), r(5e-4, 3e-3)};
}

inline Coefficients<double> random_coefficients(int persons, Random& r) {
  Coefficients<double> c{};
  auto& k = c.cabin;
  k.capacity = {r(3e3, 9e3), r(2e3, 9e3), r(5e3, 9e4), r(2, 9)};
  k.outer_capacity_J_K = r(2e3, 9e3);
  k.air_to_canopy = r(9, 40), k.air_to_floor = r(1, 9), k.air_to_tube = r(1, 9),
  k.air_exchange_W_K = r(1, 30);
  k.gap_W_K = r(20, 90), k.outer_to_air_W_K = r(20, 200), k.outer_to_sky_W_K = r(20, 60);
  k.floor_to_sea_W_K = r(10, 90), k.inflow_W_K = r(0, 5), k.condensation_m3_s = r(0, 0.02);
  k.canopy_density_at_zero = r(-0.03, -0.005), k.canopy_density_slope = r(5e-4, 3e-3);
  k.floor_evaporation_m3_s = r(0, 0.01), k.floor_density_at_zero = r(-0.03, -0.005),
  k.floor_density_slope = r(5e-4, 3e-3);
  k.fog_m3_s = r(0, 1), k.fog_density_at_zero = r(-0.03, -0.005), k.fog_density_slope = r(5e-4, 3e-3);
  k.ventilation_m3_s = r(0, 0.02), k.latent_heat_J_kg = 2.45e6;
  k.outside_degC = 5, k.sky_degC = -12, k.sea_degC = 8, k.tube_degC = 6.5, k.inflow_degC = 8;
  k.outside_vapour_kg_m3 = 0.006, k.sun_outer_W = 30, k.sun_canopy_W = 11, k.sun_inside_W = 7;
  k.breath_dry_W = 21, k.breath_water_kg_s = 1e-5, k.volume_m3 = k.capacity[at::vapour],
  k.co2_made_m3_s = 2e-5, k.outside_co2 = 4.2e-4;
  for (int p = 0; p < persons; ++p) {
    body::PersonCoefficients<double> q{};
    q.blood_capacity_J_K = 9420, q.finger_capacity_J_K = r(200, 900), q.latent_heat_J_kg = 2.45e6;
    q.finger_perfusion_W_K = r(0, 4), q.finger_source_W = r(0, 1), q.finger_surface = random_outer_surface(r);
    q.floor_degC = 8, q.tube_degC = 6.5, q.sea_degC = 8;
    for (int s = 0; s < body::segment_count; ++s) {
      for (auto& x : q.capacity_J_K[s]) x = r(2e2, 5e4);
      for (auto& x : q.conductance_W_K[s]) x = r(0.5, 60);
      for (auto& x : q.perfusion_W_K[s]) x = r(0, 60);
      for (auto& x : q.source_W[s]) x = r(0, 40);
      q.skin_surface[s] = random_surface(r), q.clothing_surface[s] = random_outer_surface(r);
      q.distillation_m3_s[s] = r(0, 1e-3);
    }
    c.persons.push_back(q);
  }
  return c;
}

// M dx/dt = f(x), written flux by flux.
inline std::vector<double> flows(const Coefficients<double>& c, const std::vector<double>& x) {
  std::vector<double> f(x.size(), 0.0);
  const auto& k = c.cabin;
  auto move = [&](int from, int to, double watts) { f[from] -= watts, f[to] += watts; };
  move(at::air, at::canopy, k.air_to_canopy * (x[at::air] - x[at::canopy]));
  move(at::air, at::floor_water, k.air_to_floor * (x[at::air] - x[at::floor_water]));
  move(at::canopy, at::outer_skin, k.gap_W_K * (x[at::canopy] - x[at::outer_skin]));
  f[at::air] += k.air_to_tube * (k.tube_degC - x[at::air]) +
                k.air_exchange_W_K * (k.outside_degC - x[at::air]) + k.breath_dry_W;
  f[at::outer_skin] += k.outer_to_air_W_K * (k.outside_degC - x[at::outer_skin]) +
                       k.outer_to_sky_W_K * (k.sky_degC - x[at::outer_skin]) + k.sun_outer_W;
  f[at::canopy] += k.sun_canopy_W;
  f[at::floor_water] += k.floor_to_sea_W_K * (k.sea_degC - x[at::floor_water]) +
                        k.inflow_W_K * (k.inflow_degC - x[at::floor_water]) + k.sun_inside_W;
  const double condensed = k.condensation_m3_s * (x[at::vapour] - k.canopy_density_at_zero -
                                                  k.canopy_density_slope * x[at::canopy]);
  const double evaporated =
      k.floor_evaporation_m3_s *
      (k.floor_density_at_zero + k.floor_density_slope * x[at::floor_water] - x[at::vapour]);
  const double fog = k.fog_m3_s * (x[at::vapour] - k.fog_density_at_zero - k.fog_density_slope * x[at::air]);
  f[at::air] += k.latent_heat_J_kg * fog;
  f[at::vapour] -= fog;
  f[at::canopy] += k.latent_heat_J_kg * condensed;
  f[at::floor_water] -= k.latent_heat_J_kg * evaporated;
  f[at::vapour] += evaporated - condensed + k.breath_water_kg_s +
                   k.ventilation_m3_s * (k.outside_vapour_kg_m3 - x[at::vapour]);
  f[at::co2] += k.co2_made_m3_s + k.ventilation_m3_s * (k.outside_co2 - x[at::co2]);
  for (std::size_t p = 0; p < c.persons.size(); ++p) {
    const auto& q = c.persons[p];
    const int o = person_offset(static_cast<int>(p));
    auto surface = [&](const auto& s, int node) {
      move(node, at::air, s.to_air * (x[node] - x[at::air]));
      move(node, at::canopy, s.to_canopy * (x[node] - x[at::canopy]));
      f[node] -= s.to_sea * (x[node] - q.sea_degC);
      if constexpr (requires { s.to_floor_water; }) {
        move(node, at::floor_water, s.to_floor_water * (x[node] - x[at::floor_water]));
        f[node] -= s.to_floor * (x[node] - q.floor_degC) + s.to_tube * (x[node] - q.tube_degC);
      }
      const double e =
          s.evaporation_m3_s * (s.density_at_zero_kg_m3 + s.density_slope_kg_m3_K * x[node] - x[at::vapour]);
      f[node] -= q.latent_heat_J_kg * e;
      f[at::vapour] += e;
    };
    const int blood = o + body::at::blood, finger = o + body::at::finger;
    move(blood, finger, q.finger_perfusion_W_K * (x[blood] - x[finger]));
    f[finger] += q.finger_source_W;
    surface(q.finger_surface, finger);
    for (int s = 0; s < body::segment_count; ++s) {
      auto n = [&](int layer) { return o + body::at::node(s, layer); };
      for (int l = 0; l < 4; ++l) {
        move(n(l), n(l + 1), q.conductance_W_K[s][l] * (x[n(l)] - x[n(l + 1)]));
        move(blood, n(l), q.perfusion_W_K[s][l] * (x[blood] - x[n(l)]));
      }
      for (int l = 0; l < 5; ++l) f[n(l)] += q.source_W[s][l];
      const auto& a = q.skin_surface[s];
      const auto& b = q.clothing_surface[s];
      move(n(3), n(4),
           q.latent_heat_J_kg * q.distillation_m3_s[s] *
               (a.density_at_zero_kg_m3 + a.density_slope_kg_m3_K * x[n(3)] - b.density_at_zero_kg_m3 -
                b.density_slope_kg_m3_K * x[n(4)]));
      surface(a, n(3));
      surface(b, n(4));
    }
  }
  return f;
}

inline double capacity_of(const Coefficients<double>& c, int i) {
  if (i < 4) return c.cabin.capacity[i];
  if (i == at::outer_skin) return c.cabin.outer_capacity_J_K;
  if (i == at::co2) return c.cabin.volume_m3;
  const int p = (i - at::count) / body::at::count, j = (i - at::count) % body::at::count;
  if (j == body::at::blood) return c.persons[p].blood_capacity_J_K;
  if (j == body::at::finger) return c.persons[p].finger_capacity_J_K;
  return c.persons[p].capacity_J_K[j / 5][j % 5];
}

inline std::vector<int> implicit_entries(int persons) {
  std::vector<int> out;
  for (int i = 0; i < at::implicit_count; ++i) out.push_back(i);
  for (int p = 0; p < persons; ++p)
    for (int i = 0; i < body::at::thermal_count; ++i) out.push_back(person_offset(p) + i);
  return out;
}

}  // namespace bide::test
