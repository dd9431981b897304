#include <cmath>

#include "body/water.hpp"
#include "constants/fuel.hpp"
#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation {

namespace {

constexpr double hour_s = 3600;

// Rations of the Swedish women: kJ, protein and sodium a day.
struct Ration {
  const char* name;
  double kJ_day, protein_g_day, salt_g_day, change_kg;
};
constexpr Ration rations[] = {{"A, 1500 kcal", 6276, 45, 3, -1.2}, {"B, 2000 kcal", 8368, 90, 9, -0.9}};

double women_change_kg(const Ration& ration) {
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
  return weighed_kg(person(run.samples.back())) - weighed_kg(person(run.samples.front()));
}

}  // namespace

std::vector<Row> dry_food_rows() {
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
    return x[body::at::extracellular_osmoles] / body::osmolality_mOsm_kg(x[body::at::extracellular_osmoles],
                                                                         b.intracellular_osmoles_mOsm,
                                                                         x[body::at::body_water]);
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
  for (const Ration& ration : rations)
    out.push_back(make_row(topic, swedish, std::string("mass after 7 d, ration ") + ration.name, "kg",
                           ration.change_kg, ration.change_kg - 0.5, ration.change_kg + 0.5,
                           women_change_kg(ration), "0.5 kg: daily scatter of weighing"));
  for (Row& row : out) {
    if (row.unit != "L") row.trivial = 0.0;
    blame(row,
          "too much urine: eaten protein is burnt on top of the body's own instead of sparing it, which "
          "doubles "
          "the urea, and urine is densest only from a plasma osmolality of 295");
  }
  return out;
}

}  // namespace bide::validation
