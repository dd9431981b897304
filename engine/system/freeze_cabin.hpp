// The cabin's coefficients for one step, and what everybody in it meets.
//
// States read: cabin temperatures, vapour, CO2, water on the floor, film. Inputs: forcing, held state, raft.
// Outputs: CabinCoefficients and Surroundings. Validity and source: each function in cabin/.
#pragma once

#include "bide/body/hands.hpp"
#include "bide/cabin/bilge.hpp"
#include "bide/cabin/clothing.hpp"
#include "bide/cabin/co2.hpp"
#include "bide/cabin/envelope.hpp"
#include "bide/cabin/films.hpp"
#include "bide/cabin/floor.hpp"
#include "bide/cabin/leakage.hpp"
#include "bide/cabin/moisture.hpp"
#include "bide/constants/boarding.hpp"
#include "bide/constants/open.hpp"
#include "bide/core/moist_air.hpp"
#include "bide/system/coefficients.hpp"
#include "bide/system/compiled.hpp"
#include "bide/system/held.hpp"

namespace bide::system {

// What a person meets this step, the same for everybody.
template <class T>
struct Surroundings {
  T air_degC, canopy_degC, floor_water_degC, vapour_kg_m3;
  T saturated_at_degC;                                // at which the vapour would be at saturation
  T convection_W_m2K, radiation_W_m2K, transfer_m_s;  // of a seated body in the air
  T transfer_under_aid_m_s;                           // the same in a thermal protective aid
  T water_film_W_m2K;                                 // of a body that floats still
  T under_floor_W_m2K, seated_floor_m2K_W;
  T pooled_share;                                // of the seat that lies in water
  std::array<T, body::segment_count> submerged;  // in the water on the floor
  std::array<T, body::segment_count> folded;     // kept from open water by the posture
  T neighbours;                                  // factor on the shares that touch
  T sun_W, drip_kg_s, wetting_kg_s;              // each person; the sun through a canopy
  T sun_in_open_W_m2;                            // absorbed by what of a person faces sun and sky
  T core_rhythm_K;                               // of the core's set point and thresholds
  T time_s;                                      // since the start
  T sea_degC, tube_degC, latent_heat_J_kg;
  T weighted_acceleration_m_s2, wave_height_m;
  T face_freezing_per_s;  // of the time in which a face in the wind may freeze
};

// Openings in use: what the routine holds open, and what cannot be shut.
template <class T>
inline T open_area_m2(const Held<T>& held) {
  return held.opening_m2 + held.extra_opening_m2;
}

// Sun on the skins and through them, W; in the open it reaches people alone, from all around: what the raft
// takes up is lost to the sea and the wind.
template <class T>
inline void freeze_sun(const RaftBuild<T>& raft, const Held<T>& held, const weather::Forcing<T>& w,
                       const cabin::CanopySun& one_skin, const cabin::CanopySun& two_skins, T persons,
                       CabinCoefficients<T>& c, Surroundings<T>& s) {
  const T on_plan = w.global_irradiance_W_m2 * raft.floor_area_m2 * held.enclosed;
  const auto share = [&](double one, double two) { return T(one) + T(two - one) * raft.two_skins; };
  c.sun_outer_W = on_plan * share(one_skin.outer_absorbed, two_skins.outer_absorbed);
  c.sun_canopy_W = on_plan * share(one_skin.inner_absorbed, two_skins.inner_absorbed);
  const T inside = on_plan * share(one_skin.transmitted, two_skins.transmitted);
  const T on_people = cabin::drip_on_people_share(persons, raft.floor_area_m2);
  c.sun_inside_W = inside * (T(1) - on_people);
  s.sun_W = inside * on_people / larger(persons, T(1));
  // Tubes and floor throw back what falls beside people, and fill the lower half of their view.
  const T from_below =
      T(0.5 * constants::raft_reflects_sun.value) * (T(1) - on_people) * w.global_irradiance_W_m2;
  s.sun_in_open_W_m2 = (T(1) - held.enclosed) * held.afloat * (w.seated_irradiance_W_m2 + from_below) *
                       T(constants::seated_radiating_share * constants::person_sun_absorbed);
}

// Air exchange: leakage and openings under a canopy, the weather itself without one.
template <class T>
inline T freeze_ventilation(const RaftBuild<T>& raft, const Held<T>& held, const weather::Forcing<T>& w,
                            T air_degC) {
  const T enclosed = cabin::ventilation_m3_s(raft.floor_area_m2, open_area_m2(held), raft.entrance_area_m2,
                                             raft.two_entrances, w.wind_10m_m_s, w.wind_raft_m_s, air_degC,
                                             w.air_temperature_degC, raft.leakage_position);
  return held.enclosed * enclosed + (T(1) - held.enclosed) * T(constants::open_air_exchange_m3_s.value);
}

template <class T>
void freeze_canopy(const RaftBuild<T>& raft, const Held<T>& held, const weather::Forcing<T>& w, const T* x,
                   CabinCoefficients<T>& c, T air_density) {
  using namespace constants;
  const T film_factor = cabin::canopy_film_factor(raft.canopy_position, w.wind_raft_m_s);
  const T inner = cabin::canopy_film_W_m2K(x[at::air], x[at::canopy]) * film_factor;
  const T outer = cabin::outer_film_W_m2K(w.wind_raft_m_s) * film_factor;
  const T area = raft.canopy_area_m2 * held.enclosed;
  const T open = T(1) - held.enclosed;
  const T radiant(open_radiant_W_K.value);
  const T emissivity(cloth_emissivity.value);
  // The canopy sees the sky with its sky view, the sea and air with the rest.
  const T to_sky =
      cabin::radiation_W_m2K(emissivity, x[at::outer_skin], w.sky_temperature_degC) * raft.sky_view;
  const T to_air =
      cabin::radiation_W_m2K(emissivity, x[at::outer_skin], w.air_temperature_degC) * (T(1) - raft.sky_view);
  c.air_to_canopy = area * inner;
  c.outer_to_sky_W_K = area * to_sky + open * radiant * T(open_sky_share.value);
  c.outer_to_air_W_K = area * (outer + to_air) + open * radiant * T(1 - open_sky_share.value);
  c.gap_W_K = area * cabin::canopy_gap_W_m2K(raft.gap_m2K_W, raft.canopy_position) + open * radiant;
  const T skin =
      raft.canopy_area_m2 * T(cloth_mass_kg_m2 * cloth_heat_J_kgK) + open * T(open_radiant_J_K.value);
  c.capacity[at::canopy] = skin;
  c.outer_capacity_J_K = skin;
  const auto saturation = saturation_density_and_slope(x[at::canopy]);
  c.canopy_density_slope = saturation.slope_kg_m3_K;
  c.canopy_density_at_zero = saturation.density_kg_m3 - saturation.slope_kg_m3_K * x[at::canopy];
  c.condensation_m3_s = held.enclosed * cabin::condensation_m3_s(cabin::mass_transfer_m_s(inner, air_density),
                                                                 raft.canopy_area_m2, x[at::vapour],
                                                                 saturation.density_kg_m3, x[at::film_mass]);
}

template <class T>
void freeze_floor(const RaftBuild<T>& raft, const Held<T>& held, const weather::Forcing<T>& w, const T* x,
                  T persons, CabinCoefficients<T>& c, Surroundings<T>& s, T air_density) {
  using namespace constants;
  const T aboard = held.afloat;
  const T free = cabin::free_floor_m2(persons, raft.floor_area_m2) * aboard;
  // An insulating floor that has lost its air is a single floor.
  const T seated =
      raft.flat_seated_m2K_W + (raft.seated_m2K_W - raft.flat_seated_m2K_W) * held.floor_inflated;
  const T unloaded = raft.flat_free_m2K_W + (raft.free_m2K_W - raft.flat_free_m2K_W) * held.floor_inflated;
  const T film = cabin::floor_film_W_m2K(x[at::air], x[at::floor_water]);
  s.under_floor_W_m2K = cabin::under_floor_film_W_m2K(w.wind_10m_m_s);
  s.seated_floor_m2K_W = seated;
  c.air_to_floor = free * film;
  c.floor_to_sea_W_K = cabin::floor_to_sea_W_m2K(unloaded, s.under_floor_W_m2K) * larger(free, T(1) - aboard);
  const T water = positive_part(x[at::water_mass]);
  c.capacity[at::floor_water] = raft.floor_area_m2 * T(floor_mass_kg_m2 * cloth_heat_J_kgK) +
                                water * T(water_heat_capacity_J_kgK.value);
  const T wet = cabin::wet_floor_share(water, raft.floor_area_m2);
  c.floor_evaporation_m3_s =
      cabin::floor_evaporation_m3_s(cabin::mass_transfer_m_s(film, air_density), free, wet);
  const auto saturation = saturation_density_and_slope(x[at::floor_water]);
  c.floor_density_slope = saturation.slope_kg_m3_K;
  c.floor_density_at_zero = saturation.density_kg_m3 - saturation.slope_kg_m3_K * x[at::floor_water];
  // What comes in: spray and rain, at the sea's and the air's temperature; both are taken as the sea's.
  const T opening = open_area_m2(held);
  const T in = aboard * (cabin::spray_kg_s(w.wind_10m_m_s, opening, held.tube_leak) +
                         cabin::rain_inside_kg_s(w.rain_kg_m2_s, w.wind_raft_m_s, opening, raft.floor_area_m2,
                                                 held.enclosed));
  const T on_people = cabin::drip_on_people_share(persons, raft.floor_area_m2);
  const T at_least_one = larger(persons, T(1));
  c.water_in_kg_s = in * (T(1) - on_people);
  s.wetting_kg_s = in * on_people / at_least_one;
  c.inflow_W_K = c.water_in_kg_s * T(water_heat_capacity_J_kgK.value);
  c.drip_kg_s = cabin::drip_kg_s(x[at::film_mass], raft.canopy_area_m2 + T(1)) * held.enclosed;
  c.drip_to_people_kg_s = c.drip_kg_s * on_people;
  s.drip_kg_s = c.drip_to_people_kg_s / at_least_one;
  const T firm = held.floor_inflated * larger(raft.insulated_floor, raft.foam_floor);
  s.pooled_share = cabin::pooled_share(T(water / at_least_one), firm);
  s.submerged = cabin::submerged_share(cabin::standing_depth_m(water, raft.floor_area_m2, persons));
}

// Vapour beyond what the air can hold, settling on floor and people. In the open it drifts away.
template <class T>
void freeze_fog(const RaftBuild<T>& raft, const Held<T>& held, const T* x, T persons,
                CabinCoefficients<T>& c) {
  const auto saturation = saturation_density_and_slope(x[at::air]);
  const cabin::Fog<T> fog =
      cabin::fog(T(x[at::vapour] - saturation.density_kg_m3), saturation.density_kg_m3, raft.volume_m3);
  c.fog_m3_s = held.enclosed * fog.per_density_m3_s;
  c.fog_density_slope = saturation.slope_kg_m3_K;
  c.fog_density_at_zero =
      saturation.density_kg_m3 - saturation.slope_kg_m3_K * x[at::air] + fog.from_excess_kg_m3;
  c.fog_on_people_share = cabin::drip_on_people_share(persons, raft.floor_area_m2);
}

// Fills the cabin's coefficients, all but what people add (breath, CO2 made), and what people meet.
template <class T>
void freeze_cabin(const Compiled<T>& compiled, const Held<T>& held, const weather::Forcing<T>& w, const T* x,
                  CabinCoefficients<T>& c, Surroundings<T>& s) {
  using namespace constants;
  const RaftBuild<T>& raft = compiled.raft;
  const T persons = T(static_cast<double>(compiled.structure.persons)) - people_left_behind(held);
  const T density =
      air_density_kg_m3(x[at::air], w.pressure_Pa, vapour_pressure_Pa(x[at::vapour], x[at::air]));
  c.outside_degC = w.air_temperature_degC;
  c.sky_degC = w.sky_temperature_degC;
  c.sea_degC = w.water_temperature_degC;
  c.inflow_degC = w.water_temperature_degC;
  c.tube_degC = T(0.5) * (w.air_temperature_degC + w.water_temperature_degC);
  c.outside_vapour_kg_m3 = w.vapour_density_kg_m3;
  c.outside_co2 = T(cabin::outdoor_co2_fraction);
  c.latent_heat_J_kg = T(latent_heat_J_kg(typical_surface_degC.value));
  c.volume_m3 = raft.volume_m3;
  c.capacity[at::vapour] = raft.volume_m3;
  c.capacity[at::air] = raft.volume_m3 * density * T(air_heat_capacity_J_kgK.value) +
                        raft.floor_area_m2 * T(contents_J_Km2.value);
  c.ventilation_m3_s = freeze_ventilation(raft, held, w, x[at::air]);
  c.air_exchange_W_K = cabin::air_exchange_W_K(c.ventilation_m3_s, density);
  freeze_sun(raft, held, w, compiled.structure.one_skin_sun, compiled.structure.two_skin_sun, persons, c, s);
  freeze_canopy(raft, held, w, x, c, density);
  freeze_floor(raft, held, w, x, persons, c, s, density);
  freeze_fog(raft, held, x, persons, c);
  // Tube wall: the inside film and the air in the tube, one side each.
  const T tube_film = cabin::tube_film_W_m2K(x[at::air], c.tube_degC);
  c.air_to_tube =
      held.enclosed * raft.tube_side_area_m2 / (T(1) / tube_film + T(tube_resistance_m2K_W.value));

  s.air_degC = x[at::air];
  s.canopy_degC = x[at::canopy];
  s.floor_water_degC = x[at::floor_water];
  s.vapour_kg_m3 = x[at::vapour];
  constexpr double tiny_kg_m3 = 1e-9;
  s.saturated_at_degC = saturation_at_degC(larger(x[at::vapour], T(tiny_kg_m3)), x[at::air]);
  const T seated = cabin::seated_film_W_m2K(cabin::cabin_air_speed_m_s(c.ventilation_m3_s, raft.volume_m3));
  const T windy = cabin::sheltered_film_W_m2K(w.wind_raft_m_s, T(raft.behind_tubes * held.afloat));
  s.convection_W_m2K = held.enclosed * seated + (T(1) - held.enclosed) * windy;
  s.radiation_W_m2K =
      T(seated_radiating_share.value) *
      cabin::radiation_W_m2K(T(clothed_emissivity.value), T(typical_surface_degC.value), x[at::canopy]);
  s.transfer_m_s = cabin::mass_transfer_m_s(s.convection_W_m2K, density);
  const T barrier = cabin::vapour_conductance_m_s(T(compiled.structure.aid_m2K_W), T(permeability_aid.value),
                                                  T(typical_surface_degC.value));
  s.transfer_under_aid_m_s = cabin::in_series(barrier, s.transfer_m_s);
  // A flat calm has neither height nor period.
  s.water_film_W_m2K =
      cabin::water_film_W_m2K(cabin::passing_water_m_s(w.wave_height_m, larger(w.wave_period_s, T(1))));
  s.folded = raft.folded;
  s.neighbours = cabin::neighbour_factor(persons, raft.floor_area_m2, held.huddled) * held.afloat;
  s.sea_degC = w.water_temperature_degC;
  s.tube_degC = c.tube_degC;
  s.latent_heat_J_kg = c.latent_heat_J_kg;
  s.weighted_acceleration_m_s2 = w.weighted_acceleration_m_s2;
  s.wave_height_m = w.wave_height_m;
  // Heads are above the tubes. In the water they are below the height of this wind, which is kept.
  s.face_freezing_per_s =
      (T(1) - held.enclosed) * body::face_freezing_per_s(w.air_temperature_degC, w.wind_raft_m_s);
}

}  // namespace bide::system
