#include <algorithm>

#include "bide/core/units.hpp"
#include "bide/system/readings.hpp"
#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation::without_water {

namespace {

constexpr const char* topic = "without_water";
constexpr const char* indoor_man = R"([{"sex": "male", "age_years": 30, "height_m": 1.75, "mass_kg": 70,
                                        "clothing": "indoor", "lifejacket": false}])";

double days_alive(Rest r) {
  r.duration_h = 30 * 24;
  const Run run = run_case(scenario_of(r, 60), hour_s);
  const body::Build<double>& b = run.compiled.persons[0];
  const auto& limits = run.compiled.limits;
  return std::min(time_reached_s(
                      run, [&b](const double* x) { return system::water_deficit_pct(b, x); },
                      limits[system::Limit::lethal_water_deficit], true),
                  time_reached_s(
                      run, [&b](const double* x) { return system::osmolality_mOsm_kg(b, x); },
                      limits[system::Limit::lethal_osmolality], true)) /
         day_s;
}

Rest at_sea() {
  Rest r;
  r.air_degC = r.sea_degC = 15;
  r.humidity_pct = 85;
  r.raft = R"({"kind": "offshore_foam_4"})";
  r.routine = "{}";
  r.crew = R"([{"sex": "male", "age_years": 25, "height_m": 1.75, "mass_kg": 70, "clothing": "offshore_cold",
                "lifejacket": false}])";
  return r;
}

Rest cell() {
  Rest r;
  r.air_degC = r.sea_degC = 15;
  r.humidity_pct = 90;
  r.crew =
      R"([{"sex": "male", "age_years": 18, "height_m": 1.78, "mass_kg": 70, "clothing": "temperate_sailing",
                "lifejacket": false}])";
  return r;
}

Rest indoors(const char* crew) {
  Rest r;
  r.crew = crew;
  return r;
}

// Ten people without food and water for five days, and where what they lost had gone.
void five_days_dry(std::vector<Row>& out) {
  Rest r = indoors(indoor_man);
  r.duration_h = 120;
  const Run run = run_case(scenario_of(r, 240), day_s);
  const double *from = person(run.samples.front()), *to = person(run.samples.back());
  const char *study = "Papagiannopoulos et al. 2013", *why = "20 %: neither climate nor size is told";
  out.push_back(make_row(topic, study, "mass a day over 5 days without food and water", "kg/d", -1.39, -1.67,
                         -1.11, (weighed_kg(to) - weighed_kg(from)) / 5, why));
  const auto lost_kg = [&](int entry) { return to[entry] - from[entry]; };
  out.push_back(make_row(topic, study, "urine of 5 days without food and water", "kg", 3.66, 2.93, 4.39,
                         lost_kg(body::at::total_urine), why));
  out.push_back(make_row(topic, study, "water of skin and lungs in 5 days without food and water", "kg", 2.26,
                         1.81, 2.71,
                         lost_kg(body::at::total_skin_water) + lost_kg(body::at::total_breath_water), why));
  const body::Build<double>& b = run.compiled.persons[0];
  const auto outside_kg = [&b](const double* y) {
    return y[body::at::extracellular_osmoles] / system::osmolality_mOsm_kg(b, y);
  };
  Row plasma = make_row(topic, study, "plasma volume after 5 days without food and water", "%", -15.5, -18.6,
                        -12.4, (outside_kg(to) / outside_kg(from) - 1) * pct,
                        "20 %: from albumin, 18.4 (2.4) % up; 11 (1.8) % more hematocrit give -18");
  blame(out.back(),
        "climate not told: air of 22 degC and 45 % was taken, and damper air takes less from skin and lungs");
  out.push_back(std::move(plasma));
}

void breath_and_fuel(std::vector<Row>& out) {
  Rest r;
  r.duration_h = 48;
  r.crew = R"([{"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 70, "clothing": "indoor",
                "lifejacket": false}])";
  r.stores = R"({"extra": [{"kind": "water_L", "quantity": 4},
                           {"kind": "emergency_ration_10000_kJ", "quantity": 2}]})";
  r.rationing = R"({"rule": "fixed_per_day", "water_L_per_day": 2, "food_kJ_per_day": 10000})";
  const Run run = run_case(scenario_of(r, 60), hour_s);
  const double *from = person(run.samples.at(24)), *to = person(run.samples.at(48));
  constexpr double mL_kg = 1000;
  for (const auto& [entry, name] :
       {std::pair<int, const char*>{body::at::total_breath_water, "water lost in breath, sedentary"},
        {body::at::total_metabolic_water, "water made by fuel, sedentary"}}) {
    out.push_back(make_row(topic, "water intakes report 2005, p. 86", name, "mL/d", 300, 250, 350,
                           (to[entry] - from[entry]) * mL_kg, "as printed"));
    out.back().kind = Kind::rule;
    blame(out.back(), "fuel of a man of 35 years and 70 kg at rest, a hair below the printed range");
  }
}

struct Day {
  double urine_L, lacking_kg;
};

// Mean of days 3 to 5 with 0.8 L and so much carbohydrate a day.
Day gamble(double sugar_kJ_day) {
  Rest r = indoors(indoor_man);
  r.duration_h = 120;
  r.stores = R"({"extra": [{"kind": "water_L", "quantity": 4},
                           {"kind": "emergency_ration_10000_kJ", "quantity": 1}]})";
  r.rationing = R"({"rule": "fixed_per_day", "water_L_per_day": 0.8, "food_kJ_per_day": )" +
                std::to_string(sugar_kJ_day) + "}";
  const Run run = run_case(scenario_of(r, 60), hour_s, [](system::Compiled<double>& compiled) {
    stores::FoodMix& food = compiled.structure.gear.food;
    food.carbohydrate = 1;
    food.fat = food.protein = food.sodium_mmol_kJ = 0;
  });
  const body::Build<double>& b = run.compiled.persons[0];
  const double *from = person(run.samples.at(48)), *to = person(run.samples.at(120));
  constexpr double days = 3;
  return {(to[body::at::total_urine] - from[body::at::total_urine]) / days,
          (system::water_deficit_pct(b, to) - system::water_deficit_pct(b, from)) / pct * b.mass_kg / days};
}

}  // namespace

std::vector<Row> rows() {
  constexpr const char* patient = R"([{"sex": "male", "age_years": 74, "height_m": 1.72, "mass_kg": 65,
                                       "clothing": "indoor", "lifejacket": false}])";
  std::vector<Row> out{
      make_row(topic, "JAMA 1945, longest at sea", "days without water, cool and dry under a canopy", "d", 11,
               8.25, 13.75, days_alive(at_sea()), "25 %: the mildest conditions are not known"),
      make_row(topic, "Ganzini 2003", "days without food and fluid, 74 years", "d", 15, 5, 15,
               days_alive(indoors(patient)), "85 % of 102 patients died within 15 days"),
      make_row(topic, "UK health guidance on refusing fluids", "days without food and fluid, 30 years", "d",
               10.5, 7, 14, days_alive(indoors(indoor_man)), "7 to 14 days as printed"),
      make_row(topic, "a cell, Austria 1979", "days without food and water in a cool damp cell", "d", 18,
               13.5, 22.5, days_alive(cell()), "25 %: one person, conditions unknown")};
  out[2].kind = Kind::rule;
  blame(out[0], "cool, still and sheltered: neither spray, sickness nor cold, which people at sea had");
  blame(out[3],
        "thought to shiver too much in light clothes at 15 degC, which costs breath; damp walls may have "
        "been licked");
  five_days_dry(out);
  breath_and_fuel(out);
  const Day plain = gamble(0), sugar = gamble(1700);
  const char* study = "Gamble 1947, raft rations";
  Row saved = make_row(topic, study, "urine saved by 100 g of sugar a day", "L/d", 0.225, 0.1, 0.35,
                       plain.urine_L - sugar.urine_L, "recalled: 0.2 to 0.25");
  Row balance = make_row(topic, study, "water lost a day with 0.8 L and 100 g of sugar", "kg/d", 0, -0.2, 0.2,
                         sugar.lacking_kg, "0.2 kg: recalled as near balance");
  saved.source_class = balance.source_class = Class::from_memory;
  out.push_back(saved);
  out.push_back(balance);
  return out;
}

}  // namespace bide::validation::without_water
