// Slopes of everything that is not solved implicitly: water, fuel, CO2, running totals. One evaluation at the
// weighted mean stage gives the exact integral of the frozen fluxes (they are affine in the implicit
// entries).
//
// States: see body/layout and coefficients.hpp. Inputs: frozen coefficients, implicit entries of `x` and
// their slopes. Outputs: the other entries of `k`. Source: bookkeeping; every flux is the one the solver
// used.
#pragma once

#include "bide/system/coefficients.hpp"

namespace bide::system {

// Evaporation from a surface, kg/s, outward.
template <class Surface, class T>
inline T evaporation_kg_s(const Surface& s, T degC, T vapour) {
  return s.evaporation_m3_s * (s.density_at_zero_kg_m3 + s.density_slope_kg_m3_K * degC - vapour);
}

template <class T>
struct SurfaceTally {
  T air{0}, canopy{0}, floor{0}, floor_water{0}, sea{0}, tube{0}, evaporated_kg_s{0}, absolute_W{0};
};

// Adds one surface's heat and vapour flows, all outward: what every surface has.
template <class Surface, class T>
inline void tally_open(const Surface& s, T degC, const body::PersonCoefficients<T>& c, const T* cabin,
                       SurfaceTally<T>& t) {
  const T to_air = s.to_air * (degC - cabin[at::air]), to_canopy = s.to_canopy * (degC - cabin[at::canopy]);
  const T to_sea = s.to_sea * (degC - c.sea_degC);
  const T vapour = evaporation_kg_s(s, degC, cabin[at::vapour]);
  t.air += to_air;
  t.canopy += to_canopy;
  t.sea += to_sea;
  t.evaporated_kg_s += vapour;
  t.absolute_W += abs(to_air) + abs(to_canopy) + abs(to_sea) + abs(vapour) * c.latent_heat_J_kg;
}

template <class T>
inline void tally_surface(const body::OuterSurface<T>& s, T degC, const body::PersonCoefficients<T>& c,
                          const T* cabin, SurfaceTally<T>& t) {
  tally_open(s, degC, c, cabin, t);
}

template <class T>
inline void tally_surface(const body::Surface<T>& s, T degC, const body::PersonCoefficients<T>& c,
                          const T* cabin, SurfaceTally<T>& t) {
  tally_open(s, degC, c, cabin, t);
  const T to_water = s.to_floor_water * (degC - cabin[at::floor_water]);
  const T to_floor = s.to_floor * (degC - c.floor_degC), to_tube = s.to_tube * (degC - c.tube_degC);
  t.floor_water += to_water;
  t.floor += to_floor;
  t.tube += to_tube;
  t.absolute_W += abs(to_water) + abs(to_floor) + abs(to_tube);
}

// What the cabin receives from one person.
template <class T>
struct FromPerson {
  T heat_W, evaporated_kg_s, drained_kg_s;
};

// Vapour that turns to fog, kg/s.
template <class T>
inline T fog_kg_s(const CabinCoefficients<T>& c, const T* x) {
  return c.fog_m3_s * (x[at::vapour] - c.fog_density_at_zero - c.fog_density_slope * x[at::air]);
}

// @param fog_kg_s that settles on this person
template <class T>
inline FromPerson<T> slow_person(const body::PersonCoefficients<T>& c, const T* cabin, T fog_kg_s, const T* x,
                                 T* k) {
  using namespace body;
  SurfaceTally<T> skin_tally, cloth_tally;
  T stored = c.blood_capacity_J_K * k[body::at::blood] + c.finger_capacity_J_K * k[body::at::finger];
  T distilled_total(0), drained_total = c.liquid_to_floor_kg_s + fog_kg_s;
  for (int s = 0; s < segment_count; ++s) {
    const T skin_degC = x[body::at::node(s, skin)], cloth_degC = x[body::at::node(s, clothing)];
    const T cloth_before = cloth_tally.evaporated_kg_s;
    tally_surface(c.skin_surface[s], skin_degC, c, cabin, skin_tally);
    tally_surface(c.clothing_surface[s], cloth_degC, c, cabin, cloth_tally);
    const T distilled = c.distillation_m3_s[s] * (c.skin_surface[s].density_at_zero_kg_m3 +
                                                  c.skin_surface[s].density_slope_kg_m3_K * skin_degC -
                                                  c.clothing_surface[s].density_at_zero_kg_m3 -
                                                  c.clothing_surface[s].density_slope_kg_m3_K * cloth_degC);
    distilled_total += distilled;
    const T fog = fog_kg_s * c.catch_share[s];
    drained_total += c.clothing_drain_kg_s[s] - fog;
    k[body::at::clothing_water + s] = distilled + c.clothing_gain_kg_s[s] + fog - c.clothing_drain_kg_s[s] -
                                      (cloth_tally.evaporated_kg_s - cloth_before);
    for (int l = 0; l < layer_count; ++l) stored += c.capacity_J_K[s][l] * k[body::at::node(s, l)];
  }
  tally_surface(c.finger_surface, x[body::at::finger], c, cabin, skin_tally);

  const T skin_water = skin_tally.evaporated_kg_s + distilled_total;
  k[body::at::body_water] = c.absorption_kg_s + c.metabolic_water_kg_s - c.urine_kg_s - c.breath_water_kg_s -
                            c.vomit_kg_s - c.sweat_drip_kg_s - skin_water;
  k[body::at::gut_water] = -c.absorption_kg_s;
  k[body::at::extracellular_osmoles] = c.osmole_rate_mOsm_s;
  k[body::at::urea] = c.urea_rate_mOsm_s;
  k[body::at::fluid_shift] = c.fluid_shift_L_s;
  k[body::at::glycogen] = c.glycogen_kJ_s;
  k[body::at::fat_mass] = c.fat_kg_s;
  k[body::at::protein_mass] = c.protein_kg_s;
  k[body::at::gut_carbohydrate] = -c.absorbed_carbohydrate_kJ_s;
  k[body::at::gut_fat] = -c.absorbed_fat_kJ_s;
  k[body::at::gut_protein] = -c.absorbed_protein_kJ_s;
  k[body::at::fatigue] = c.fatigue_per_s;
  k[body::at::motion_dose] = c.motion_dose_m2_s4;
  k[body::at::adaptation] = c.adaptation_per_s;
  k[body::at::alcohol] = c.alcohol_mg_dL_s;
  k[body::at::fasted] = c.living;

  const T breath = c.breath_dry_W + c.breath_latent_W;
  const T evaporative = c.latent_heat_J_kg * (skin_tally.evaporated_kg_s + cloth_tally.evaporated_kg_s);
  k[body::at::total_metabolic] = c.metabolic_W;
  k[body::at::total_to_air] = skin_tally.air + cloth_tally.air;
  k[body::at::total_to_canopy] = skin_tally.canopy + cloth_tally.canopy;
  k[body::at::total_to_floor] = skin_tally.floor;
  k[body::at::total_to_floor_water] = skin_tally.floor_water;
  k[body::at::total_to_sea] = skin_tally.sea + cloth_tally.sea;
  k[body::at::total_to_tube] = skin_tally.tube;
  k[body::at::total_evaporation] = evaporative;
  k[body::at::total_breath] = breath;
  k[body::at::total_sun] = c.sun_W;
  k[body::at::total_stored] = stored;
  k[body::at::total_absolute_heat] =
      c.metabolic_W + c.sun_W + breath + skin_tally.absolute_W + cloth_tally.absolute_W;
  k[body::at::total_urine] = c.urine_kg_s;
  k[body::at::total_breath_water] = c.breath_water_kg_s;
  k[body::at::total_skin_water] = skin_water;
  k[body::at::total_sweat_drip] = c.sweat_drip_kg_s;
  k[body::at::total_overboard] = c.overboard_kg_s;
  k[body::at::total_vomit] = c.vomit_kg_s;
  k[body::at::total_metabolic_water] = c.metabolic_water_kg_s;
  k[body::at::total_clothing_evaporation] = cloth_tally.evaporated_kg_s;
  k[body::at::total_wetting] = c.wetting_kg_s;
  k[body::at::total_clothing_drain] = drained_total;
  k[body::at::total_distilled] = distilled_total;
  k[body::at::total_salt_lost] = c.salt_loss_mOsm_s;
  k[body::at::total_oxidised] = c.oxidised_kJ_s;
  k[body::at::total_nitrogen] = c.nitrogen_g_s;
  k[body::at::total_shivering] = c.shivering_W;
  k[body::at::total_cold_feet] = c.cold_feet;
  return {k[body::at::total_to_air] + k[body::at::total_to_canopy] + k[body::at::total_to_floor_water] +
              c.breath_dry_W,
          skin_tally.evaporated_kg_s + cloth_tally.evaporated_kg_s, drained_total};
}

template <class T>
inline void slow_cabin(const CabinCoefficients<T>& c, const FromPerson<T>& people, const T* x, T* k) {
  using namespace at;
  const T condensed =
      c.condensation_m3_s * (x[vapour] - c.canopy_density_at_zero - c.canopy_density_slope * x[canopy]);
  const T floor_evaporated = c.floor_evaporation_m3_s *
                             (c.floor_density_at_zero + c.floor_density_slope * x[floor_water] - x[vapour]);
  const T fog = fog_kg_s(c, x);
  const T vapour_out = c.ventilation_m3_s * (x[vapour] - c.outside_vapour_kg_m3);
  const T through_canopy = c.outer_to_air_W_K * (x[outer_skin] - c.outside_degC) +
                           c.outer_to_sky_W_K * (x[outer_skin] - c.sky_degC);
  const T to_sea = c.floor_to_sea_W_K * (x[floor_water] - c.sea_degC) +
                   c.inflow_W_K * (x[floor_water] - c.inflow_degC) + c.air_to_tube * (x[air] - c.tube_degC);
  const T by_air = c.air_exchange_W_K * (x[air] - c.outside_degC);
  const T sun = c.sun_outer_W + c.sun_canopy_W + c.sun_inside_W;
  const T latent = c.latent_heat_J_kg * (condensed + fog - floor_evaporated);
  k[film_mass] = condensed - c.drip_kg_s;
  k[water_mass] = c.water_in_kg_s + c.drip_kg_s - c.drip_to_people_kg_s +
                  fog * (T(1) - c.fog_on_people_share) - floor_evaporated + people.drained_kg_s;
  k[total_from_bodies] = people.heat_W;
  k[total_from_sun] = sun;
  k[total_through_canopy] = through_canopy;
  k[total_to_sea] = to_sea;
  k[total_by_air] = by_air;
  k[total_latent] = latent;
  k[total_stored] = c.capacity[air] * k[air] + c.capacity[canopy] * k[canopy] +
                    c.capacity[floor_water] * k[floor_water] + c.outer_capacity_J_K * k[outer_skin];
  k[total_absolute_heat] =
      abs(people.heat_W) + sun + abs(through_canopy) + abs(to_sea) + abs(by_air) + abs(latent);
  k[total_condensed] = condensed;
  k[total_vapour_out] = vapour_out;
  k[total_water_in] = c.water_in_kg_s;
  k[total_drip] = c.drip_kg_s;
  k[total_floor_evaporation] = floor_evaporated;
  k[total_absolute_water] = abs(condensed) + abs(fog) + abs(floor_evaporated) + abs(vapour_out) +
                            c.water_in_kg_s + abs(people.evaporated_kg_s) + c.breath_water_kg_s;
  k[total_co2_made] = c.co2_made_m3_s;
  k[total_co2_out] = c.ventilation_m3_s * (x[co2] - c.outside_co2);
}

}  // namespace bide::system
