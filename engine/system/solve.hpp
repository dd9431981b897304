// The linear system of one implicit stage, solved exactly in O(nodes).
//
// People hang on the four cabin unknowns and on nothing else, the outer canopy skin on the inner. Each person
// is eliminated (eliminate_person.hpp); then a 4 x 4 cabin system is solved without pivoting: rows are
// diagonally dominant because every off-diagonal term is a conductance that also stands on the diagonal.
//
// States: none of its own. Inputs: frozen coefficients and a = (method coefficient) x (step). Solves
// (C/a - A) u = (C/a) y + b for the temperatures and the vapour density. Source: block Gaussian elimination.
#pragma once

#include <array>
#include <vector>

#include "bide/system/coefficients.hpp"
#include "bide/system/eliminate_person.hpp"

namespace bide::system {

template <class T>
struct Factor {
  T inverse_a;
  T outer_inverse;
  std::array<Four<T>, 4> lu;  // unit lower triangle below, upper with inverse diagonal
  std::vector<PersonFactor<T>> persons;
};

template <class T>
void factor(const Coefficients<T>& c, double a, Factor<T>& f) {
  using namespace at;
  const CabinCoefficients<T>& k = c.cabin;
  f.inverse_a = T(1 / a);
  f.outer_inverse =
      T(1) / (k.outer_capacity_J_K * f.inverse_a + k.gap_W_K + k.outer_to_air_W_K + k.outer_to_sky_W_K);
  auto& m = f.lu;
  m = {};
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
  for (std::size_t p = 0; p < c.persons.size(); ++p)
    eliminate_person(c.persons[p], f.inverse_a, f.persons[p], m);
  for (int i = 0; i < 4; ++i) {
    m[i][i] = T(1) / m[i][i];
    for (int r = i + 1; r < 4; ++r) {
      m[r][i] *= m[i][i];
      for (int q = i + 1; q < 4; ++q) m[r][q] -= m[r][i] * m[i][q];
    }
  }
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
  for (std::size_t p = 0; p < c.persons.size(); ++p) {
    const int at_person = person_offset(static_cast<int>(p));
    forward_person(c.persons[p], f.persons[p], f.inverse_a, y + at_person, u + at_person, r);
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
  for (std::size_t p = 0; p < c.persons.size(); ++p)
    back_person(c.persons[p], f.persons[p], r, u + person_offset(static_cast<int>(p)));
}

}  // namespace bide::system
