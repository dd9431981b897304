// The frozen coefficients of one person's heat and vapour exchange, as the linear solver uses them.
//
// States: none. Inputs: filled by system/freeze_person. Validity: coefficients are constant during one time
// step. Every flux is a conductance times a difference, positive from the body outward, and the same flux
// enters the balances of both neighbours.
#pragma once

#include <array>

#include "bide/body/layout.hpp"
#include "bide/core/scalar.hpp"

namespace bide::body {

// The cabin unknowns that a surface exchanges with; three surroundings of known temperature come on top.
enum CabinUnknown : int { air, canopy, floor_water, vapour };

// The skin of a segment facing its surroundings: in the air, under water, or pressed on floor and tube.
template <class T>
struct Surface {
  T to_air, to_canopy, to_floor_water;  // W/K
  T to_floor, to_tube, to_sea;          // W/K, to the sea under the floor, the tube wall, open water
  T evaporation_m3_s;                   // mass-transfer conductance to the cabin's vapour density
  // Saturation vapour density at the surface, linear about the temperature it was frozen at.
  T density_at_zero_kg_m3;  // rho_s(T*) - slope T*
  T density_slope_kg_m3_K;
};

// The surface of clothing or fingers. Parts pressed on floor and tube, or under water, belong to the skin.
template <class T>
struct OuterSurface {
  T to_air, to_canopy, to_sea;  // W/K
  T evaporation_m3_s;
  T density_at_zero_kg_m3, density_slope_kg_m3_K;
};

template <class T>
struct PersonCoefficients {
  std::array<std::array<T, layer_count>, segment_count> capacity_J_K;
  T blood_capacity_J_K, finger_capacity_J_K;
  std::array<std::array<T, layer_count - 1>, segment_count> conductance_W_K;  // last: skin to clothing, dry
  std::array<std::array<T, tissue_count>, segment_count> perfusion_W_K;
  T finger_perfusion_W_K;
  std::array<std::array<T, layer_count>, segment_count> source_W;  // heat made, less breath, plus sun
  T finger_source_W;
  std::array<Surface<T>, segment_count> skin_surface;
  std::array<OuterSurface<T>, segment_count> clothing_surface;
  OuterSurface<T> finger_surface;
  // Vapour that leaves the skin and condenses in wet clothing.
  std::array<T, segment_count> distillation_m3_s;
  T latent_heat_J_kg;
  T floor_degC, tube_degC, sea_degC;

  // Rates of the non-stiff states and parts of the heat sources, frozen with the rest
  T metabolic_W, shivering_W, breath_dry_W, breath_latent_W, sun_W;
  T breath_water_kg_s;
  T sweat_drip_kg_s;       // sweat that did not evaporate
  T liquid_to_floor_kg_s;  // sweat, drips and rain that no clothing takes up, less what it wicks from a
                           // puddle
  T overboard_kg_s;        // sweat into the sea
  T wetting_kg_s;          // rain and spray that reaches the clothing
  T urine_kg_s, vomit_kg_s, absorption_kg_s, metabolic_water_kg_s;
  T osmole_rate_mOsm_s;  // extracellular, net (from used tissue, less urine, sweat, vomit)
  T salt_loss_mOsm_s;
  T urea_rate_mOsm_s;  // made less excreted
  T fluid_shift_L_s;
  T glycogen_kJ_s, fat_kg_s, protein_kg_s;
  T absorbed_carbohydrate_kJ_s, absorbed_fat_kJ_s, absorbed_protein_kJ_s;
  T oxidised_kJ_s;
  T nitrogen_g_s;
  T fatigue_per_s, motion_dose_m2_s4, adaptation_per_s, alcohol_mg_dL_s, arms_used_per_s;
  T sweat_W_s;
  T co2_m3_s;
  std::array<T, segment_count> catch_share;         // of what falls on the person, taken up by this clothing
  std::array<T, segment_count> clothing_gain_kg_s,  // sweat, drips, rain and spray
      clothing_drain_kg_s;                          // to the floor
  T toe_degC;
  T cold_feet;  // rate of exposure to non-freezing cold injury, [0, 1]
  T frozen;     // rate of exposure to freezing of digits, at least 0
  T face;       // of the time in which a bare face may freeze, 1/s
  T severity;   // of seasickness
  T living;     // 1 while alive
};

}  // namespace bide::body
