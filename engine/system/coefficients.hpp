// The frozen coefficients of the whole raft for one step, and the cabin's place in the state vector.
//
// States: cabin temperatures, vapour and CO2 (implicit); water on the floor, condensate (slow); running
// totals. Inputs: filled by freeze. Validity: one time step. Source: see the functions in cabin/.
#pragma once

#include <array>
#include <vector>

#include "bide/body/exchange.hpp"
#include "bide/body/layout.hpp"

namespace bide::system {

namespace at {
enum : int {
  air = body::CabinUnknown::air,                  // degC
  canopy = body::CabinUnknown::canopy,            // degC, inner skin
  floor_water = body::CabinUnknown::floor_water,  // degC, floor fabric and the water on it
  vapour = body::CabinUnknown::vapour,            // kg/m3
  outer_skin,                                     // degC, outer skin of the canopy
  co2,                                            // volume fraction
  implicit_count,
  water_mass = implicit_count,  // kg on the floor
  film_mass,                    // kg of condensate on the canopy
  total_from_bodies,
  total_from_sun,
  total_through_canopy,
  total_to_sea,
  total_by_air,
  total_stored,  // J
  total_latent,  // J, released in the cabin less taken up
  total_condensed,
  total_vapour_out,
  total_water_in,
  total_drip,
  total_floor_evaporation,  // kg
  total_absolute_water,     // kg
  total_co2_made,
  total_co2_out,  // m3
  count
};
}  // namespace at

template <class T>
struct CabinCoefficients {
  std::array<T, 4> capacity;  // J/K of air, canopy inner, floor; m3 of the vapour
  T outer_capacity_J_K;
  T air_to_canopy, air_to_floor, air_to_tube, air_exchange_W_K;  // W/K
  T gap_W_K;                                                     // inner to outer skin
  T outer_to_air_W_K, outer_to_sky_W_K;                          // W/K
  T floor_to_sea_W_K;                                            // through the floor where nobody sits
  T inflow_W_K;                                                  // water shipped: kg/s times c
  T condensation_m3_s;                                           // to the canopy
  T canopy_density_at_zero, canopy_density_slope;
  T floor_evaporation_m3_s;
  T floor_density_at_zero, floor_density_slope;
  T fog_m3_s;  // in the air itself
  T fog_density_at_zero, fog_density_slope;
  T fog_on_people_share;
  T ventilation_m3_s;
  T latent_heat_J_kg;
  T outside_degC, sky_degC, sea_degC, tube_degC, inflow_degC;
  T outside_vapour_kg_m3;
  T sun_outer_W, sun_canopy_W, sun_inside_W;
  T breath_dry_W, breath_water_kg_s;  // of everybody
  T volume_m3, co2_made_m3_s, outside_co2;
  T water_in_kg_s, drip_kg_s, drip_to_people_kg_s;
};

template <class T>
struct Coefficients {
  CabinCoefficients<T> cabin;
  std::vector<body::PersonCoefficients<T>> persons;
};

// Place of person p's block in the state vector; the cabin's entries stand first.
inline constexpr int person_offset(int person) {
  return at::count + person * body::at::count;
}
inline constexpr int state_size(int persons) {
  return person_offset(persons);
}

}  // namespace bide::system
