#include "validation/support/starve.hpp"

#include "bide/body/fuel.hpp"
#include "bide/body/tissue_water.hpp"
#include "bide/core/units.hpp"

namespace bide::validation {

Rest fasting_rest(const std::string& person, double hours) {
  Rest r;
  r.duration_h = hours;
  r.crew = "[" + person + "]";
  r.rationing = R"({"rule": "fixed_per_day", "water_L_per_day": 3})";
  r.stores = R"({"extra": [{"kind": "water_L", "quantity": 200}]})";
  return r;
}

Starved starve(const std::string& who, double fixed_W, double share_day) {
  constexpr double longest_days = 400;
  const Run built = run_case(scenario_of(fasting_rest(who, 1), 60), hour_s);
  const body::Build<double>& b = built.compiled.persons[0];
  const system::Levels<double> levels = system::levels_of(built.compiled.limits, b);
  double glycogen = b.glycogen_kJ, fat = b.fat_kg, protein = b.protein_kg, t = 0, share = 0;
  while (t < longest_days * day_s) {
    const double lost = b.fat_kg - fat + b.protein_kg - protein;
    const double heat =
        fixed_W > 0 ? fixed_W
                    : b.basal_total_W * starving_activity * body::starved_basal_factor(lost, b.mass_kg);
    const double nitrogen = body::nitrogen_rest_g_s(t, b.lean_kg, b.body_fat_pct, 0.0, 0.0);
    const double from_protein = body::protein_heat_W(nitrogen, 0.0, 0.0);
    const auto mix = body::fuel_mix(heat, 0.0, from_protein, glycogen, b.glycogen_kJ, t);
    const auto r = body::fuel_rates(heat, mix, glycogen, b.glycogen_kJ, 0.0, 0.0, 0.0);
    if (t <= share_day * day_s) share = 100 * mix.protein;
    glycogen += hour_s * r.glycogen_kJ_s;
    fat += hour_s * r.fat_kg_s;
    protein += hour_s * r.protein_kg_s;
    t += hour_s;
    if (fat <= levels[system::Limit::lethal_fat] ||
        protein <= b.protein_kg * (1 - levels[system::Limit::lethal_protein]))
      break;
  }
  const double fat_used = b.fat_kg - fat, protein_used = b.protein_kg - protein;
  const double glycogen_used_kJ = b.glycogen_kJ - glycogen;
  const double lost = fat_used + protein_used +
                      glycogen_used_kJ / (constants::carbohydrate_kJ_g * constants::g_kg) +
                      body::tissue_water_freed(protein_used, glycogen_used_kJ);
  return {t / day_s, b.mass_kg, lost, fat_used, protein_used, share};
}

}  // namespace bide::validation
