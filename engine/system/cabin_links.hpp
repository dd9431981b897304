// Every flux of the cabin's own, stated once: what it joins, its coefficient, its running total.
//
// States: temperatures, vapour and CO2 of the cabin; water on the floor, condensate. Inputs: frozen
// coefficients. Validity: one time step. Source: see the functions in cabin/. What people exchange with the
// cabin stands in person_links.hpp.
#pragma once

#include "bide/system/coefficients.hpp"
#include "bide/system/links.hpp"

namespace bide::system {

// The canopy's inner skin, the water on the floor and the air itself where it turns to fog, as wet surfaces.
template <class T>
[[gnu::always_inline]] constexpr auto wet_canopy(const CabinCoefficients<T>& c) {
  return Wet<Cabin<at::canopy>, Cabin<at::film_mass>, T>{c.canopy_density_at_zero, c.canopy_density_slope,
                                                         c.latent_heat_J_kg};
}
template <class T>
[[gnu::always_inline]] constexpr auto wet_floor(const CabinCoefficients<T>& c) {
  return Wet<Cabin<at::floor_water>, Cabin<at::water_mass>, T>{c.floor_density_at_zero, c.floor_density_slope,
                                                               c.latent_heat_J_kg};
}
template <class T>
[[gnu::always_inline]] constexpr auto foggy_air(const CabinCoefficients<T>& c) {
  return Wet<Cabin<at::air>, Cabin<at::water_mass>, T>{c.fog_density_at_zero, c.fog_density_slope,
                                                       c.latent_heat_J_kg};
}

// Fog settles on the floor; what people catch of it is taken from there (slow.hpp).
template <class T>
[[gnu::always_inline]] constexpr auto fog(const CabinCoefficients<T>& c) {
  return Link<T, Cabin<at::vapour>, decltype(foggy_air(c))>{c.fog_m3_s, {}, foggy_air(c)};
}

template <class T, class Visitor>
[[gnu::always_inline]] constexpr void cabin_links(const CabinCoefficients<T>& c, Visitor& v) {
  using namespace at;
  // Heat between nodes.
  v.link(c.air_to_canopy, Cabin<air>{}, Cabin<canopy>{});
  v.link(c.air_to_floor, Cabin<air>{}, Cabin<floor_water>{});
  v.link(c.gap_W_K, Cabin<canopy>{}, Cabin<outer_skin>{});
  // Heat to the surroundings.
  v.link(c.air_to_tube, Cabin<air>{}, Known<T>{c.tube_degC}, Book<total_to_sea>{});
  v.link(c.air_exchange_W_K, Cabin<air>{}, Known<T>{c.outside_degC}, Book<total_by_air>{});
  v.link(c.outer_to_air_W_K, Cabin<outer_skin>{}, Known<T>{c.outside_degC}, Book<total_through_canopy>{});
  v.link(c.outer_to_sky_W_K, Cabin<outer_skin>{}, Known<T>{c.sky_degC}, Book<total_through_canopy>{});
  v.link(c.floor_to_sea_W_K, Cabin<floor_water>{}, Known<T>{c.sea_degC}, Book<total_to_sea>{});
  v.link(c.inflow_W_K, Cabin<floor_water>{}, Known<T>{c.inflow_degC}, Book<total_to_sea>{});
  // Vapour, with its heat.
  v.link(c.condensation_m3_s, Cabin<vapour>{}, wet_canopy(c), Book<total_condensed>{});
  v.link(c.floor_evaporation_m3_s, wet_floor(c), Cabin<vapour>{}, Book<total_floor_evaporation>{});
  v.link(fog(c).coefficient, fog(c).from, fog(c).to);
  v.link(c.ventilation_m3_s, Cabin<vapour>{}, Known<T>{c.outside_vapour_kg_m3}, Book<total_vapour_out>{});
  v.link(c.ventilation_m3_s, Cabin<co2>{}, Known<T>{c.outside_co2}, Book<total_co2_out>{});
  // Sun, and what people breathe out. The heat of their breath is in total_from_bodies.
  v.flow(c.sun_outer_W, Outside{}, Cabin<outer_skin>{}, Book<total_from_sun>{});
  v.flow(c.sun_canopy_W, Outside{}, Cabin<canopy>{}, Book<total_from_sun>{});
  v.flow(c.sun_inside_W, Outside{}, Cabin<floor_water>{}, Book<total_from_sun>{});
  v.flow(c.breath_dry_W, Outside{}, Cabin<air>{});
  v.flow(c.breath_water_kg_s, Outside{}, Cabin<vapour>{});
  v.flow(c.co2_made_m3_s, Outside{}, Cabin<co2>{}, Book<total_co2_made>{});
  // Liquid water.
  v.flow(c.water_in_kg_s, Outside{}, Cabin<water_mass>{}, Book<total_water_in>{});
  v.flow(c.drip_kg_s, Cabin<film_mass>{}, Cabin<water_mass>{}, Book<total_drip>{});
  v.flow(c.drip_to_people_kg_s, Cabin<water_mass>{}, Outside{});
}

// What it takes to raise an implicit entry by one: J/K; m3 for vapour and CO2.
template <class T>
inline std::array<T, at::implicit_count> capacities(const CabinCoefficients<T>& c) {
  return {c.capacity[at::air],    c.capacity[at::canopy], c.capacity[at::floor_water],
          c.capacity[at::vapour], c.outer_capacity_J_K,   c.volume_m3};
}

}  // namespace bide::system
