#include "bide/body/build.hpp"

#include <algorithm>
#include <cmath>

#include "bide/body/anthropometry.hpp"
#include "bide/body/fuel.hpp"
#include "bide/body/hands.hpp"
#include "bide/body/injury.hpp"
#include "bide/body/stolwijk.hpp"
#include "bide/body/vessels.hpp"
#include "bide/body/water.hpp"
#include "bide/constants/boarding.hpp"
#include "bide/constants/control.hpp"
#include "bide/constants/fuel.hpp"
#include "bide/constants/starting.hpp"
#include "bide/core/units.hpp"

namespace bide::body {

namespace {

void take_table(const BodyTable& table, const FingerNode& fingers, Build<double>& b) {
  for (int s = 0; s < segment_count; ++s) {
    b.area_m2[s] = table.area_m2[s];
    for (int l = 0; l < tissue_count; ++l) {
      b.capacity_J_K[s][l] = table.capacity_J_K[s][l];
      b.basal_W[s][l] = table.basal_W[s][l];
      b.basal_flow_L_h[s][l] = table.basal_flow_L_h[s][l];
      b.setpoint_degC[s][l] = table.setpoint_C[s][l];
      if (l < tissue_count - 1) b.conductance_W_K[s][l] = table.conductance_W_K[s][l];
    }
    b.receptor[s] = table.skin_receptor[s];
    b.sweat_share[s] = table.sweat_share[s];
    b.dilatation_share[s] = table.dilatation_share[s];
    b.constriction_share[s] = table.constriction_share[s];
    b.work_share[s] = table.work_share[s];
    b.shiver_share[s] = table.shiver_share[s];
  }
  b.blood_capacity_J_K = table.blood_capacity_J_K;
  b.blood_setpoint_degC = table.blood_setpoint_C;
  b.core_setpoint_degC = table.setpoint_C[trunk][core];
  b.finger_area_m2 = fingers.area_m2;
  b.finger_capacity_J_K = fingers.capacity_J_K;
  b.finger_basal_W = fingers.basal_W;
  b.finger_basal_flow_L_h = fingers.basal_flow_L_h;
  b.finger_setpoint_degC = fingers.setpoint_C;
  // Fingers get their share of the hands' dilatation by surface.
  b.finger_dilatation_share = table.dilatation_share[hands] * constants::finger_area_share;
  b.dilatation_share[hands] -= b.finger_dilatation_share;
}

void add_exchangers(double height_m, Build<double>& b) {
  b.countercurrent_W_K = {0,
                          0,
                          arms_exchange_W_K(height_m),
                          constants::countercurrent_hands,
                          legs_exchange_W_K(height_m),
                          constants::countercurrent_feet};
  b.finger_countercurrent_W_K = b.countercurrent_W_K[hands] * constants::finger_mass_share;
  b.countercurrent_W_K[hands] -= b.finger_countercurrent_W_K;
}

// In place of what the segment has, unless that is the warmer.
void put_on(const scenario::Covering& worn, int s, Build<double>& b) {
  if (worn.insulation_m2K_W <= b.insulation_m2K_W[s]) return;
  b.covered[s] = std::max(b.covered[s], worn.covered_fraction);
  b.insulation_m2K_W[s] = worn.insulation_m2K_W;
  b.clothing_mass_kg[s] = worn.mass_kg;
  b.clothing_capacity_kg[s] = worn.water_capacity_kg;
}

void dress(const scenario::Person& p, const scenario::Ensemble& e, Build<double>& b) {
  constexpr double nothing_kg = 1e-6;
  for (int s = 0; s < segment_count; ++s) {
    b.covered[s] = e.covered_fraction[s];
    b.insulation_m2K_W[s] = e.insulation_m2K_W[s];
    b.clothing_mass_kg[s] = e.mass_kg[s];
    b.clothing_capacity_kg[s] = e.water_capacity_kg[s];
  }
  put_on(*scenario::find_gloves(p.gloves), hands, b);
  put_on(*scenario::find_boots(p.boots), feet, b);
  for (int s = 0; s < segment_count; ++s)
    b.per_clothing_capacity[s] = 1 / (b.clothing_capacity_kg[s] + nothing_kg);
  b.permeability_index = e.vapour_permeability_index;
  b.waterproof = e.waterproof ? 1 : 0;
  b.immersed_insulation_m2K_W = e.immersed_insulation_m2K_W;
}

// Thresholds of warmth and of shivering are lower, sweat is more and holds less salt, in proportion between
// people who are not used to heat and those who are.
void acclimatise(double used_to_heat, Build<double>& b) {
  using namespace constants;
  const auto between = [&](double unused, double used) { return unused + used_to_heat * (used - unused); };
  b.warm_shift_K = -used_to_heat * acclimatised_shift_K;
  b.shivering_shift_K += used_to_heat * acclimatised_shift_K;
  b.greatest_sweat_W_m2 = between(greatest_sweat_W_m2, acclimatised_sweat_W_m2);
  b.greatest_wettedness = between(greatest_wettedness, acclimatised_wettedness);
  b.sweat_salt_mOsm_kg = between(sweat_salt_mOsm_kg, sweat_salt_acclimatised_mOsm_kg);
}

// A meal is still being taken up, a drink too, for the first hours after it.
void starting_state(const scenario::Person& p, Build<double>& b) {
  using namespace constants;
  b.body_water_kg = body_water_kg(p.sex, p.age_years, p.mass_kg, p.height_m);
  const double osmoles = normal_osmolality_mOsm_kg * b.body_water_kg;
  b.extracellular_osmoles_mOsm = extracellular_share * osmoles;
  b.intracellular_osmoles_mOsm = osmoles - b.extracellular_osmoles_mOsm;
  b.fat_kg = fat_mass_kg(p.mass_kg, p.body_fat_pct);
  b.glycogen_kJ = normal_glycogen_kJ(b.lean_kg);
  b.protein_kg = body_protein_kg(b.lean_kg);
  b.alcohol_mg_dL = p.blood_alcohol_mg_dL;
  b.fasted_s = p.hours_since_meal_h * hour_s;
  b.starting_deficit_kg = p.water_deficit_pct / 100 * p.mass_kg;
  b.starting_gut_water_kg = b.size * last_drink_L * std::exp(-p.hours_since_drink_h / gut_emptying_h);
  const double meal_kJ = b.size * last_meal_kJ * std::exp(-p.hours_since_meal_h / food_absorption_h);
  b.starting_gut_carbohydrate_kJ = meal_kJ * meal_carbohydrate_share;
  b.starting_gut_protein_kJ = meal_kJ * meal_protein_share;
  b.starting_gut_fat_kJ = meal_kJ - b.starting_gut_carbohydrate_kJ - b.starting_gut_protein_kJ;
  // In proportion beyond a usual day, as far as the trial went.
  b.shivering_shift_K =
      sleepless_shift_K *
      std::clamp((p.hours_since_sleep_h - usual_waking_h) / (sleepless_h - usual_waking_h), 0.0, 1.0);
  b.already_sick = p.already_seasick ? 1 : 0;
  b.starting_core_excess_K = core_rise_K_per_met * std::max(0.0, p.exertion_met - resting_met);
}

}  // namespace

Build<double> make_build(const scenario::Person& p, const scenario::Ensemble& ensemble) {
  Build<double> b{};
  BodyTable table = scaled_body_table(p.sex, p.age_years, p.mass_kg, p.height_m, p.body_fat_pct);
  const FingerNode fingers = take_fingers(table);
  take_table(table, fingers, b);
  add_exchangers(p.height_m, b);
  for (auto& segment : b.basal_W)
    for (double& node : segment) node *= p.resting_metabolism_factor;
  b.finger_basal_W *= p.resting_metabolism_factor;
  b.mass_kg = p.mass_kg;
  b.body_fat_pct = p.body_fat_pct;
  b.lean_kg = lean_mass_kg(p.mass_kg, p.body_fat_pct);
  b.age_years = p.age_years;
  b.area_total_m2 = fingers.area_m2;
  b.basal_total_W = b.finger_basal_W;
  for (int s = 0; s < segment_count; ++s) {
    b.area_total_m2 += b.area_m2[s];
    for (int l = 0; l < tissue_count; ++l) b.basal_total_W += b.basal_W[s][l];
  }
  b.mean_skin_setpoint_degC = b.finger_area_m2 * b.finger_setpoint_degC / b.area_total_m2;
  for (int s = 0; s < segment_count; ++s)
    b.mean_skin_setpoint_degC += b.area_m2[s] * b.setpoint_degC[s][skin] / b.area_total_m2;
  const double vo2max_mL_kg_min = p.vo2max_mL_kg_min * oxygen_uptake_left(p.blood_loss_pct);
  b.shivering_ceiling_W = shivering_ceiling_W(p.mass_kg, p.height_m, p.age_years, vo2max_mL_kg_min,
                                              constants::shivering_quotient) *
                          p.shivering_ceiling_factor;
  b.greatest_work_W =
      std::max(0.0, greatest_aerobic_heat_W(p.mass_kg, vo2max_mL_kg_min, constants::carbohydrate_rq) -
                        constants::awake_rest_factor * b.basal_total_W);
  b.shivering_sustained_W = sustained_shivering_W(b.basal_total_W, b.shivering_ceiling_W);
  b.beyond_shivering_peak_trial = beyond_shivering_peak_trial(p.mass_kg, p.height_m, p.age_years) ? 1 : 0;
  b.shivering_factor = shivering_age_factor(p.age_years) * p.shivering_drive_factor;
  b.sweat_factor = sweat_age_factor(p.age_years) * p.sweat_factor;
  b.skin_vapour_conductance_m_s = constants::skin_vapour_conductance_m_s;
  b.size = size_of(p.age_years, b.lean_kg);
  b.command_size = command_size(p.age_years, b.area_total_m2);
  b.core_limit_shift_K = p.core_limit_shift_K;
  b.dilatation_age_factor = dilatation_age_factor(p.age_years);
  b.constriction_age_factor = constriction_age_factor(p.age_years);
  b.old_share = old_share(p.age_years);
  b.greatest_urine_osmolality_mOsm_kg = greatest_urine_osmolality_mOsm_kg(p.age_years);
  b.per_salt_balance_s = 1 / salt_balance_s(p.age_years);
  b.susceptibility = p.seasick_susceptibility;
  b.swim_endurance_factor = p.swim_endurance_factor;
  b.has_lifejacket = p.lifejacket ? 1 : 0;
  b.lost = p.lost_in_first_minutes ? 1 : 0;
  dress(p, ensemble, b);
  starting_state(p, b);
  acclimatise(p.heat_acclimatised, b);
  injure(p, b);
  return b;
}

}  // namespace bide::body
