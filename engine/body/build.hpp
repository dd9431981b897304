// Person parameters: everything about one person that does not change during a run, as numbers of one scalar
// type.
//
// States: none. Inputs: a person and their clothing from the scenario (make_build). Validity: adults of the
// height, mass and fatness ranges in scenario/describe. Source: body/stolwijk for the table, constants for
// the rest.
#pragma once

#include <array>

#include "bide/body/layout.hpp"
#include "bide/scenario/catalogue.hpp"
#include "bide/scenario/scenario.hpp"

namespace bide::body {

// Every member is a T: gathered lane by lane (core/scalar.hpp). Names without a unit are shares, factors in
// [0, 1], or flags 0 or 1, unless said.
template <class T>
struct Build {
  template <int N>
  using BySegment = std::array<std::array<T, N>, segment_count>;
  using Segments = std::array<T, segment_count>;

  Segments area_m2;  // hands without the fingers
  BySegment<tissue_count> capacity_J_K, basal_W, basal_flow_L_h, setpoint_degC;
  BySegment<tissue_count - 1> conductance_W_K;
  T blood_capacity_J_K, blood_setpoint_degC;
  Segments receptor, sweat_share, dilatation_share, constriction_share, work_share, shiver_share;
  Segments countercurrent_W_K;
  T finger_area_m2, finger_capacity_J_K, finger_basal_W, finger_basal_flow_L_h, finger_setpoint_degC;
  T finger_dilatation_share, finger_countercurrent_W_K;

  T mass_kg, lean_kg, body_fat_pct, age_years, area_total_m2, basal_total_W;
  T shivering_shift_K;                           // of the core threshold, after too little sleep
  T shivering_ceiling_W, shivering_sustained_W;  // above rest
  T greatest_work_W;                             // above rest, at the greatest oxygen uptake
  T shivering_factor, sweat_factor;              // by age and person
  T skin_vapour_conductance_m_s, burnt_skin_vapour_conductance_m_s;  // without sweat, of the skin itself
  T burned;                                                          // share of the skin
  T size, command_size;  // of an adult's amounts, and of the standard man's commands
  T dilatation_age_factor, constriction_age_factor;
  T old_share;     // 0 under 55 years to 1 from 65 on
  T warm_shift_K;  // of the thresholds of sweating and skin flow, used to heat
  T greatest_sweat_W_m2, greatest_wettedness, sweat_salt_mOsm_kg;
  T beyond_shivering_peak_trial;  // 1: outside the group on which the ceiling was measured
  T greatest_urine_osmolality_mOsm_kg, per_salt_balance_s;
  T susceptibility;         // to seasickness, odds ratio, 1 for the population mean
  T swim_endurance_factor;  // on the minutes until cold arms no longer swim
  T core_setpoint_degC, mean_skin_setpoint_degC;
  T core_limit_shift_K;  // added to the limits of the cold
  T fever_K;             // of the set point
  T fine_work, grip;     // hands that are not hurt

  // Clothing
  Segments covered, insulation_m2K_W, clothing_mass_kg, clothing_capacity_kg;
  Segments per_clothing_capacity;  // its inverse, 1/kg; finite for cloth that holds nothing
  T permeability_index, waterproof, immersed_insulation_m2K_W;
  T seat_pad_m2K_W, seat_pad_cover;
  T has_lifejacket;

  // Initial values of the non-stiff states
  T body_water_kg, extracellular_osmoles_mOsm, intracellular_osmoles_mOsm;
  T glycogen_kJ, fat_kg, protein_kg;
  T alcohol_mg_dL, fasted_s;
  T starting_deficit_kg, starting_salt_lost_mOsm, starting_gut_water_kg;
  T starting_gut_carbohydrate_kJ, starting_gut_fat_kJ, starting_gut_protein_kJ;
  T starting_core_excess_K;  // above the set point, of a person who has just worked
  T already_sick;
  T lost;  // in the first minutes in the water: 1 or 0
};

// Makes the parameters of one person.
// @param person   as validated
// @param ensemble the clothing worn
Build<double> make_build(const scenario::Person& person, const scenario::Ensemble& ensemble);

}  // namespace bide::body
