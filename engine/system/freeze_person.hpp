// One person's coefficients for one step: heat made and carried, surfaces, water, salt, fuel, sickness.
//
// States read: the whole block of the person. Inputs: Surroundings, held state, build. Outputs:
// PersonCoefficients. Validity and source: each function in body/. A person who has died makes no heat, has
// no circulation and cools.
#pragma once

#include "bide/body/control.hpp"
#include "bide/body/fuel.hpp"
#include "bide/body/hands.hpp"
#include "bide/body/respiration.hpp"
#include "bide/body/seasickness.hpp"
#include "bide/body/shivering.hpp"
#include "bide/body/water.hpp"
#include "bide/system/clothing_heat.hpp"
#include "bide/system/freeze_surfaces.hpp"
#include "bide/system/readings.hpp"

namespace bide::system {

namespace own = body::at;  // places in a person's block

// Heat made beyond the basal rate, W.
template <class T>
struct Effort {
  std::array<T, body::segment_count> basal_factor;  // of each segment's tissue
  T basal_W, work_W, shivering_W;
  T relative_shivering, relative_muscle;  // of the ceiling of shivering: shivering, and work with it
  T fatigue_per_s;
};

// Gives `put` each segment and the cold-tissue factor of one of its layers.
template <class T, class Put>
inline void each_cold_tissue(const body::Build<T>& b, const T* y, int layer, Put&& put) {
  in_packs<T, body::segment_count>(
      [&](int s) { return T(y[own::node(s, layer)] - b.setpoint_degC[s][layer]); },
      [](auto warmer_K) { return body::cold_tissue_factor(warmer_K); }, put);
}

// Core temperature as laws published for a normal core of 37 degC take it.
template <class T>
inline T felt_core_degC(const body::Build<T>& b, const T* y) {
  return core_degC(y) + (T(constants::neutral_core.value) - b.core_setpoint_degC);
}

// What the skin lacks to its neutral state, by receptors, K.
template <class T>
inline T skin_cold_K(const body::Build<T>& b, const T* y) {
  T sum(0);
  for (int s = 0; s < body::segment_count; ++s)
    sum += b.receptor[s] * positive_part(T(b.setpoint_degC[s][body::skin] - y[own::node(s, body::skin)]));
  return sum;
}

// @param swims how hard, as a share of slow swimming
template <class T>
inline Effort<T> effort(const body::Build<T>& b, const RaftBuild<T>& raft, const HeldPerson<T>& h, const T* y,
                        T swims, T carbohydrate_absorbed_W, const Surroundings<T>& around) {
  using namespace constants;
  Effort<T> e;
  const T lost_tissue = (b.fat_kg - y[own::fat_mass]) + (b.protein_kg - y[own::protein_mass]);
  const T resting =
      h.living * body::starved_basal_factor(lost_tissue, b.mass_kg) *
      (T(awake_rest_factor.value) - T(awake_rest_factor - asleep_factor) * sleep_depth(h, around.time_s));
  e.basal_W = T(0);
  // By the temperature inside, where nearly all of a segment's heat is made.
  each_cold_tissue(b, y, body::core, [&](int s, const T& factor) { e.basal_factor[s] = resting * factor; });
  for (int s = 0; s < body::segment_count; ++s) {
    for (int l = 0; l < body::tissue_count; ++l) e.basal_W += e.basal_factor[s] * b.basal_W[s][l];
  }
  e.basal_W += e.basal_factor[body::hands] * b.finger_basal_W;
  const T swimming_W = swims * T(swimming_met - resting_met) * b.basal_total_W * T(awake_rest_factor.value);
  e.work_W = h.living * (h.labour_W + swimming_W);
  const T core = felt_core_degC(b, y);
  const T drive = b.area_total_m2 * b.shivering_factor *
                  body::shivering_W_m2(T(core + b.shivering_shift_K - around.core_rhythm_K - b.fever_K),
                                       mean_skin_degC(b, y), skin_cold_K(b, y), b.body_fat_pct);
  const T glucose =
      body::blood_glucose_mmol_L(y[own::glycogen], b.glycogen_kJ, carbohydrate_absorbed_W, y[own::alcohol]);
  const T fresh = h.living * smaller(drive, b.shivering_ceiling_W) * body::shivering_core_cutoff(core) *
                  body::glucose_factor(glucose) * body::alcohol_factor(y[own::alcohol]);
  const T left = body::shivering_left_W(
      fresh, y[own::fatigue], T(b.shivering_sustained_W * raft.sustained_factor * raft.keeps_sustained));
  e.shivering_W = positive_part(T(left - T(work_replaces_shivering.value) * swimming_W));
  e.relative_shivering = e.shivering_W / b.shivering_ceiling_W;
  e.relative_muscle = (e.shivering_W + e.work_W) / b.shivering_ceiling_W;
  e.fatigue_per_s = h.living * body::fatigue_rate_per_s(
                                   e.relative_muscle, y[own::fatigue],
                                   T(b.shivering_sustained_W * raft.sustained_factor / b.shivering_ceiling_W),
                                   raft.shivering_tires_per_s);
  return e;
}

// Blood flow to every node as heat carried, W/K. In the cold, veins that run beside arteries take the blood
// back. What goes to the fingers passes the hand; freeze_digits() says what is left of it.
template <class T>
inline void freeze_circulation(const body::Build<T>& b, const T* y, const body::Commands<T>& cmd,
                               const Effort<T>& e, T living, body::PersonCoefficients<T>& c) {
  using namespace body;
  const T deep = smoothstep(cmd.constriction, 0.0, constants::countercurrent_full_constriction.value);
  const T finger = finger_flow_L_h(
      skin_flow_L_h(b.finger_basal_flow_L_h, b.finger_dilatation_share,
                    unconstricted(b.constriction_share[hands], cmd), cmd, cmd.finger_local),
      cold_dilatation_L_h(y[own::finger], mean_body_degC(felt_core_degC(b, y), mean_skin_degC(b, y)),
                          b.finger_capacity_J_K),
      b.finger_capacity_J_K);
  std::array<T, segment_count> cold;
  each_cold_tissue(b, y, muscle, [&](int s, const T& factor) { cold[s] = factor; });
  for (int s = 0; s < segment_count; ++s) {
    const auto& basal = b.basal_flow_L_h[s];
    const T open = unconstricted(b.constriction_share[s], cmd);
    const T passing = s == hands ? finger : T(0);
    const std::array<T, tissue_count> flow{
        basal[core] + passing,
        muscle_flow_L_h(T(basal[muscle] * cold[s]),
                        T(b.work_share[s] * e.work_W + b.shiver_share[s] * e.shivering_W)),
        fat_flow_L_h(basal[fat], open),
        skin_flow_L_h(basal[skin], b.dilatation_share[s], open, cmd, cmd.local[s])};
    const T total = flow[core] + flow[muscle] + flow[fat] + flow[skin];
    const T exchanger = b.countercurrent_W_K[s] + (s == hands ? b.finger_countercurrent_W_K : T(0));
    const T reaching = living * perfusion_per_flow(total, T(exchanger * deep));
    for (int l = 0; l < tissue_count; ++l) c.perfusion_W_K[s][l] = reaching * flow[l];
    if (s == hands) c.finger_perfusion_W_K = reaching * finger;
  }
}

// Fingers and toes, once their surfaces are known.
template <class T>
inline void freeze_digits(const body::Build<T>& b, const T* y, const Surroundings<T>& around, const T& wet,
                          body::PersonCoefficients<T>& c) {
  using namespace body;
  // Dry loss and mean surroundings.
  const OuterSurface<T>& f = c.finger_surface;
  const T loss_W_K = f.to_air + f.to_canopy + f.to_sea;
  const T around_degC =
      (f.to_air * around.air_degC + f.to_canopy * around.canopy_degC + f.to_sea * around.sea_degC) /
      (loss_W_K + T(tiny_W_K));
  c.finger_perfusion_W_K *=
      left_by_hand(y[own::blood], y[own::node(hands, core)], around_degC, c.finger_perfusion_W_K, loss_W_K);
  // Toes, as much of the foot's skin.
  const Surface<T>& s = c.skin_surface[feet];
  const T to_cloth = c.conductance_W_K[feet][skin];
  const T foot_W_K = s.to_air + s.to_canopy + s.to_sea + s.to_floor_water + s.to_floor + s.to_tube + to_cloth;
  const T beyond_degC =
      (s.to_air * around.air_degC + s.to_canopy * around.canopy_degC + s.to_sea * around.sea_degC +
       s.to_floor_water * around.floor_water_degC + s.to_floor * c.floor_degC + s.to_tube * c.tube_degC +
       to_cloth * y[own::node(feet, clothing)]) /
      (foot_W_K + T(tiny_W_K));
  const T share(constants::toe_area_share.value);
  c.toe_degC = toe_degC(y[own::node(feet, core)], T(share * c.perfusion_W_K[feet][skin]), T(share * foot_W_K),
                        beyond_degC);
  c.cold_feet = c.living * cold_injury_rate(c.toe_degC, wet);
  const T finger_degC = y[own::finger];
  const T skin_degC = finger_skin_degC(finger_degC, around_degC, loss_W_K, T(b.finger_area_m2));
  c.frozen = c.living * freezing_exposure(smaller(c.toe_degC, finger_degC), smaller(c.toe_degC, skin_degC));
}

// Heat made in every node, less breath, plus sun, W.
template <class T>
inline void freeze_sources(const body::Build<T>& b, const Effort<T>& e, const Surroundings<T>& around,
                           const HeldPerson<T>& h, const std::array<Shares<T>, segments>& share,
                           body::PersonCoefficients<T>& c) {
  using namespace body;
  // Under a canopy the sun reaches head, trunk, arms and legs by their area above the water on the floor:
  // cloth below has no air to give its heat to. What would fall on the part below is not taken off, so these
  // get somewhat too much. In the open it reaches every segment but for what is under water or against tube
  // and neighbours; what presses on the floor faces down, as a part of every body does. Clothing takes what
  // it covers.
  std::array<T, segments> lit{};
  for (const int s : {trunk, arms, legs}) lit[s] = b.area_m2[s] * (T(1) - around.submerged[s]);
  lit[head] = T(b.area_m2[head]);
  const T sun_W = around.sun_W * (T(1) - h.left_behind);
  const T sun_W_m2 = sun_W / (lit[head] + lit[trunk] + lit[arms] + lit[legs]);
  c.sun_W = sun_W;
  for (int s = 0; s < segment_count; ++s) {
    const T in_open =
        around.sun_in_open_W_m2 * b.area_m2[s] * (share[s].exposed + share[s].floor + share[s].puddle);
    const T on = sun_W_m2 * lit[s] + in_open;
    c.sun_W += in_open;
    for (int l = 0; l < tissue_count; ++l) c.source_W[s][l] = e.basal_factor[s] * b.basal_W[s][l];
    c.source_W[s][muscle] += b.work_share[s] * e.work_W + b.shiver_share[s] * e.shivering_W;
    c.source_W[s][skin] += on * (T(1) - b.covered[s]);
    c.source_W[s][clothing] = on * b.covered[s];
  }
  c.finger_source_W = e.basal_factor[hands] * b.finger_basal_W;
  c.source_W[trunk][core] -= c.breath_dry_W + c.breath_latent_W;
  c.floor_degC = around.sea_degC;
  c.tube_degC = around.tube_degC;
  c.sea_degC = around.sea_degC;
  c.latent_heat_J_kg = around.latent_heat_J_kg;
}

// Liquid water onto and off the clothing. What no clothing takes up ends on the floor, or in the sea when
// immersed.
template <class T>
inline void freeze_clothing_water(const body::Build<T>& b, const T* y, const Surroundings<T>& around,
                                  const HeldPerson<T>& h, const std::array<Shares<T>, segments>& share,
                                  T sweat_drip_kg_s, body::PersonCoefficients<T>& c) {
  using namespace body;
  const T aboard = T(1) - h.in_water;
  const T falling = aboard * (sweat_drip_kg_s + around.drip_kg_s + around.wetting_kg_s);
  T to_floor = falling;
  const T per_area = T(1) / b.area_total_m2;
  for (int s = 0; s < segment_count; ++s) {
    const T takes_up = b.covered[s] * (T(1) - b.waterproof);
    const T of_surface = takes_up * b.area_m2[s] * per_area;
    const T caught = falling * of_surface;
    c.catch_share[s] = of_surface;
    const T water = y[own::clothing_water + s];
    const T puddle = cabin::wicking_kg_s(water, b.clothing_capacity_kg[s],
                                         T(takes_up * (share[s].puddle + share[s].wading))) *
                     aboard;
    c.clothing_gain_kg_s[s] = caught + puddle;
    c.clothing_drain_kg_s[s] = aboard * cabin::drain_kg_s(water, b.clothing_capacity_kg[s]);
    to_floor -= caught + puddle;
    // Rain and spray come at the sea's temperature and have to be warmed.
    c.clothing_surface[s].to_sea +=
        aboard * around.wetting_kg_s * of_surface * T(constants::water_heat_capacity_J_kgK.value);
  }
  c.sweat_drip_kg_s = sweat_drip_kg_s;
  c.liquid_to_floor_kg_s = to_floor;
  c.overboard_kg_s = h.in_water * sweat_drip_kg_s;
  c.wetting_kg_s = aboard * around.wetting_kg_s;
}

// Water and salt of the body.
template <class T>
inline void freeze_fluids(const body::Build<T>& b, const T* y, const HeldPerson<T>& h,
                          const body::Commands<T>& cmd, T sweat_kg_s, T sickness,
                          body::PersonCoefficients<T>& c) {
  using namespace body;
  const T fasted = y[own::fasted];
  const T constricted = smoothstep(cmd.constriction, 0.0, constants::full_skin_constriction.value);
  // Amounts are an adult's: each is asked of the adult of whom this person is a part.
  const T size = b.size, adult = T(1) / size;
  const T salt = size * salt_excretion_mOsm_s(T(adult * y[own::extracellular_osmoles]),
                                              T(adult * b.extracellular_osmoles_mOsm), b.per_salt_balance_s);
  const T sweat_salt =
      sweat_salt_now_mOsm_kg(b.sweat_salt_mOsm_kg, salt, T(size * T(constants::salt_fed_mOsm_day / day_s)));
  const T urea = urea_excretion_mOsm_s(y[own::urea]);
  const T without_urea = salt + size * ketone_excretion_mOsm_s(fasted);
  const T flow =
      larger(T(size * urine_rate_kg_s(T(adult * (urea + without_urea)), b.greatest_urine_osmolality_mOsm_kg,
                                      system::felt_osmolality_mOsm_kg(b, y))),
             urine_without_urea_kg_s(without_urea));
  const T shift_L = adult * y[own::fluid_shift];
  const T diuresis = size * diuresis_rate_kg_s(shift_L, constricted, h.in_water);
  const T vomit = vomit_rate_kg_s(sickness);
  const T living = h.living;
  c.absorption_kg_s = living * size * gut_absorption_kg_s(T(adult * y[own::gut_water]));
  c.urine_kg_s = living * (flow + diuresis);
  c.vomit_kg_s = living * vomit;
  c.fluid_shift_L_s = living * size * fluid_shift_rate_L_s(shift_L, constricted, h.in_water);
  c.salt_loss_mOsm_s =
      living * (salt + diuresis_salt_mOsm_s(diuresis) + sweat_salt * sweat_kg_s + vomit_salt_mOsm_s(vomit));
  c.osmole_rate_mOsm_s = -c.salt_loss_mOsm_s;  // what used tissue lets go is added with the fuel
  c.urea_rate_mOsm_s = -(living * urea);       // what fuel makes is added there
}

// What is burnt, and what it leaves behind.
template <class T>
inline void freeze_fuel(const body::Build<T>& b, const T* y, const HeldPerson<T>& h, const Effort<T>& e,
                        const Surroundings<T>& around, T pressure_Pa, body::PersonCoefficients<T>& c) {
  using namespace body;
  constexpr double W_per_kW = 1000;
  const T absorbed_W = c.absorbed_carbohydrate_kJ_s * T(W_per_kW);
  constexpr double tiny_W = 1e-9;
  const T heat = c.metabolic_W + T(tiny_W);
  const T food_W =
      (c.absorbed_carbohydrate_kJ_s + c.absorbed_fat_kJ_s + c.absorbed_protein_kJ_s) * T(W_per_kW);
  const T nitrogen =
      nitrogen_rest_g_s(y[own::fasted], b.lean_kg, b.body_fat_pct, absorbed_W, T(food_W / heat));
  const T protein = protein_heat_W(nitrogen, e.shivering_W, T(c.absorbed_protein_kJ_s * T(W_per_kW)));
  const FuelMix<T> mix =
      fuel_mix(heat, e.relative_muscle, protein, y[own::glycogen], b.glycogen_kJ, y[own::fasted]);
  const FuelRates<T> r =
      fuel_rates(c.metabolic_W, mix, y[own::glycogen], b.glycogen_kJ, c.absorbed_carbohydrate_kJ_s,
                 c.absorbed_fat_kJ_s, c.absorbed_protein_kJ_s);
  c.glycogen_kJ_s = r.glycogen_kJ_s;
  c.fat_kg_s = r.fat_kg_s;
  c.protein_kg_s = r.protein_kg_s;
  c.oxidised_kJ_s = r.oxidised_kJ_s;
  c.nitrogen_g_s = r.nitrogen_g_s;
  c.urea_rate_mOsm_s +=
      urea_made_mOsm_s(positive_part(T(r.nitrogen_g_s - h.living * ammonium_nitrogen_g_s(y[own::fasted]))));
  c.osmole_rate_mOsm_s += tissue_salt_freed(tissue_water_freed(T(-c.protein_kg_s), T(-c.glycogen_kJ_s)));
  c.metabolic_water_kg_s = r.metabolic_water_kg_s;
  c.co2_m3_s = body::co2_m3_s(c.metabolic_W, respiratory_quotient(mix), around.air_degC, pressure_Pa);
  c.fatigue_per_s = e.fatigue_per_s;
  c.alcohol_mg_dL_s = h.living * alcohol_rate_mg_dL_s(y[own::alcohol]);
}

template <class T>
inline T severity(const body::Build<T>& b, const T* y, const Held<T>& held, const HeldPerson<T>& h,
                  const Surroundings<T>& around) {
  return h.living * body::sickness_target(around.weighted_acceleration_m_s2, y[own::motion_dose],
                                          around.wave_height_m, held.enclosed, b.susceptibility,
                                          y[own::adaptation],
                                          T(h.medicine * T(constants::tablet_protection.value)));
}

// What no step changes: set once.
template <class T>
inline void set_tissue(const body::Build<T>& b, body::PersonCoefficients<T>& c) {
  using namespace body;
  c.blood_capacity_J_K = b.blood_capacity_J_K;
  c.finger_capacity_J_K = b.finger_capacity_J_K;
  for (int s = 0; s < segment_count; ++s) {
    for (int l = 0; l < tissue_count; ++l) c.capacity_J_K[s][l] = b.capacity_J_K[s][l];
    for (int l = 0; l < tissue_count - 1; ++l) c.conductance_W_K[s][l] = b.conductance_W_K[s][l];
  }
}

// Everything else.
template <class T>
void freeze_person(const Compiled<T>& compiled, int p, const Held<T>& held, const Surroundings<T>& around,
                   T pressure_Pa, const T* y, body::PersonCoefficients<T>& c) {
  using namespace body;
  const auto index = static_cast<std::size_t>(p);
  const Build<T>& b = compiled.persons[index];
  const HeldPerson<T>& h = held.persons[index];
  c.living = h.living;
  c.face = h.living * around.face_freezing_per_s;
  c.absorbed_carbohydrate_kJ_s = h.living * food_absorption_kJ_s(y[own::gut_carbohydrate]);
  c.absorbed_fat_kJ_s = h.living * food_absorption_kJ_s(y[own::gut_fat]);
  c.absorbed_protein_kJ_s = h.living * food_absorption_kJ_s(y[own::gut_protein]);
  const T swims = h.in_water * h.able * compiled.raft.swims * system::swimming_power(b, y);
  constexpr double W_per_kW = 1000;
  const Effort<T> e =
      effort(b, compiled.raft, h, y, swims, T(c.absorbed_carbohydrate_kJ_s * T(W_per_kW)), around);
  // The published minutes are by the water, in wet clothes; a suit keeps it from the arms.
  c.arms_used_per_s =
      h.in_water *
      arms_used_per_s(T(around.sea_degC + b.waterproof * (y[own::node(arms, skin)] - around.sea_degC)),
                      b.swim_endurance_factor);
  c.shivering_W = e.shivering_W;
  c.metabolic_W = e.basal_W + e.work_W + e.shivering_W;
  c.breath_dry_W = breath_dry_W(c.metabolic_W, around.air_degC);
  c.breath_latent_W =
      breath_latent_W(c.metabolic_W, vapour_pressure_Pa(around.vapour_kg_m3, around.air_degC));
  c.breath_water_kg_s = breath_water_kg_s(c.breath_latent_W);

  Commands<T> cmd = commands(b, y, T(sweating_shift_K(system::felt_deficit_pct(b, y)) + b.warm_shift_K),
                             T(around.core_rhythm_K + b.fever_K));
  c.sweat_W_s = sweat_response_W_s(T(h.living * cmd.sweat_W), y[own::sweat]);
  cmd.sweat_W = positive_part(y[own::sweat]);
  freeze_circulation(b, y, cmd, e, h.living, c);
  std::array<Shares<T>, segments> share;
  for (int s = 0; s < segments; ++s) share[s] = shares(s, around, h.in_water, h.left_behind);
  freeze_sources(b, e, around, h, share, c);
  const Worn<T> worn = wear(b, around, h, T(compiled.structure.aid_m2K_W), swims);
  freeze_saturation(y, around, c);
  T drip(0), sweat_kg_s(0);
  for (int s = 0; s < segment_count; ++s) {
    c.capacity_J_K[s][clothing] = clothing_capacity_J_K(b, s, y[own::clothing_water + s]);
    const T commanded_W = sweat_W(b.sweat_share[s], cmd, cmd.local[s]);
    const Sweat<T> sweat =
        freeze_segment_surfaces(b, s, y, around, share[s], worn, commanded_W, compiled.fitted, c);
    sweat_kg_s += sweat.given_kg_s;
    drip += sweat.runs_off_kg_s;
  }
  freeze_finger(b, y, h, worn, compiled.fitted, c);
  freeze_clothing_water(b, y, around, h, share, drip, c);
  c.severity = severity(b, y, held, h, around);
  freeze_fluids(b, y, h, cmd, sweat_kg_s, c.severity, c);
  freeze_fuel(b, y, h, e, around, pressure_Pa, c);
  c.motion_dose_m2_s4 = dose_rate_m2_s4(around.weighted_acceleration_m_s2, y[own::motion_dose]);
  c.adaptation_per_s = adaptation_rate_per_s(around.weighted_acceleration_m_s2, y[own::adaptation]);
  const T wet = smoothstep(T(y[own::clothing_water + feet] * b.per_clothing_capacity[feet]), 0.0, 1.0);
  // Feet in the water on the floor are as wet as in the sea, but for a suit's.
  const T under = larger(h.in_water, T((T(1) - b.waterproof) * around.submerged[feet]));
  freeze_digits(b, y, around, T(larger(wet, under)), c);
}

}  // namespace bide::system
