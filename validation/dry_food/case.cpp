#include <cmath>

#include "bide/body/water.hpp"
#include "bide/constants/fuel.hpp"
#include "bide/core/units.hpp"
#include "bide/system/readings.hpp"
#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation::dry_food {

namespace {

// Rations of the Swedish women: kJ, protein and sodium a day.
struct Ration {
  const char* name;
  double kJ_day, protein_g_day, salt_g_day, change_kg;
};
constexpr Ration rations[] = {{"A, 1500 kcal", 6276, 45, 3, -1.2}, {"B, 2000 kcal", 8368, 90, 9, -0.9}};

struct Week {
  double mass_kg, solute_mOsm_day, density, osmolality;  // density of urine over the densest; days 3 to 7
};

Week women(const Ration& ration) {
  Rest r;
  r.duration_h = 168;
  r.crew = R"([{"sex": "female", "age_years": 22, "height_m": 1.66, "mass_kg": 60, "clothing": "indoor",
                "lifejacket": false}])";
  r.stores = R"({"extra": [{"kind": "water_L", "quantity": 20},
                           {"kind": "emergency_ration_10000_kJ", "quantity": 10}]})";
  r.rationing = R"({"rule": "fixed_per_day", "water_L_per_day": 1.06, "food_kJ_per_day": )" +
                std::to_string(ration.kJ_day) + "}";
  const Run run = run_case(scenario_of(r, 60), hour_s, [&ration](system::Compiled<double>& compiled) {
    constexpr double salt_g_mol = 58.44, mmol_mol = 1000, carbohydrate_of_rest = 0.6;
    stores::FoodMix& food = compiled.structure.gear.food;
    food.protein = ration.protein_g_day * constants::protein_kJ_g / ration.kJ_day;
    food.carbohydrate = carbohydrate_of_rest * (1 - food.protein);
    food.fat = 1 - food.protein - food.carbohydrate;
    food.sodium_mmol_kJ = ration.salt_g_day / salt_g_mol * mmol_mol / ration.kJ_day;
  });
  const body::Build<double>& b = run.compiled.persons[0];
  constexpr std::size_t from = 48;
  double solute = 0;
  for (std::size_t i = from; i < run.samples.size(); ++i) {
    const double* x = person(run.samples[i]);
    solute += body::urea_excretion_mOsm_s(x[body::at::urea]) +
              body::ketone_excretion_mOsm_s(x[body::at::fasted]) +
              body::salt_excretion_mOsm_s(x[body::at::extracellular_osmoles], b.extracellular_osmoles_mOsm,
                                          b.per_salt_balance_s);
  }
  const double count = static_cast<double>(run.samples.size() - from);
  const double *first = person(run.samples.front()), *last = person(run.samples.back());
  const double urine_kg_s =
      run.rates(from, run.samples.size() -
                          1)[static_cast<std::size_t>(system::person_offset(0) + body::at::total_urine)];
  return {weighed_kg(last) - weighed_kg(first), solute / count * day_s,
          solute / count / urine_kg_s / b.greatest_urine_osmolality_mOsm_kg,
          system::osmolality_mOsm_kg(b, last)};
}

}  // namespace

std::vector<Row> rows() {
  const char *topic = "dry_food", *shirreffs = "Shirreffs et al. 2004",
             *swedish = "Swedish women on emergency rations";
  Rest r;
  r.duration_h = 37;
  r.crew = R"([{"sex": "male", "age_years": 25, "height_m": 1.74, "mass_kg": 71.5, "clothing": "indoor",
                "lifejacket": false}])";
  r.stores = R"({"extra": [{"kind": "water_L", "quantity": 0.487},
                           {"kind": "emergency_ration_10000_kJ", "quantity": 2}]})";
  r.rationing = R"({"rule": "fixed_per_day", "water_L_per_day": 0.316, "food_kJ_per_day": 9000,
                    "food_only_with_water": false})";
  const Run run = run_case(scenario_of(r, 60), hour_s);
  const body::Build<double>& b = run.compiled.persons[0];
  const double *first = person(run.samples.front()), *last = person(run.samples.back());
  const auto extracellular_L = [&b](const double* x) {
    return x[body::at::extracellular_osmoles] / system::osmolality_mOsm_kg(b, x);
  };
  std::vector<Row> out{
      make_row(topic, shirreffs, "mass after 37 h of dry food", "%", -2.7, -3.3, -2.1,
               100 * (weighed_kg(last) - weighed_kg(first)) / b.mass_kg, "1 SD of 15 people"),
      make_row(topic, shirreffs, "urine of 37 h of dry food", "L", 1.37, 1.03, 1.71,
               last[body::at::total_urine], "25 %: no spread known"),
      make_row(topic, shirreffs, "plasma volume after 37 h of dry food", "%", -6.2, -8.2, -4.2,
               100 * (extracellular_L(last) / extracellular_L(first) - 1),
               "2 points: no spread known; plasma taken to change as the extracellular volume does")};
  out[0].standard_error = 0.6 / std::sqrt(15.0);
  const Week weeks[] = {women(rations[0]), women(rations[1])};
  for (int i = 0; i < 2; ++i)
    out.push_back(make_row(topic, swedish, std::string("mass after 7 d, ration ") + rations[i].name, "kg",
                           rations[i].change_kg, rations[i].change_kg - 0.5, rations[i].change_kg + 0.5,
                           weeks[i].mass_kg, "0.5 kg: daily scatter of weighing"));
  const std::size_t with_spread = out.size();
  out.push_back(make_row(topic, swedish, "solute passed a day, ration B", "mOsm/d", 880, 792, 968,
                         weeks[1].solute_mOsm_day, "10 %: about 880 as printed"));
  out.push_back(make_row(topic, swedish, "urine over its densest, ration B", "-", 1, 0.85, 1,
                         weeks[1].density, "15 %: at its densest as printed"));
  constexpr double hair = 0.01, no_bound = 1000;
  out.push_back(make_row(topic, swedish, "plasma osmolality after 7 d, ration B less A", "mOsm/kg", hair,
                         hair, no_bound, weeks[1].osmolality - weeks[0].osmolality,
                         "sign only: B raised it"));
  for (std::size_t i = 0; i < out.size(); ++i) {
    Row& row = out[i];
    if (row.unit != "L" && i < with_spread) row.trivial = 0.0;
    blame(row,
          "too much urine: eaten protein is burnt on top of the body's own instead of sparing it, which "
          "doubles "
          "the urea, and urine is densest only from a plasma osmolality of 295");
  }
  return out;
}

}  // namespace bide::validation::dry_food
