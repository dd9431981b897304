#include "bide/body/water.hpp"
#include "bide/core/units.hpp"
#include "bide/system/readings.hpp"
#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation::kidney {

namespace {

constexpr const char* topic = "kidney";

// Solute and flow in the seventeenth dry hour.
struct Urine {
  double litres_day, mOsm_kg, mOsm_day, urea_day;
};

Urine dry_for_16_h(const Rest& rest, double fasted_s) {
  const Run run = run_case(scenario_of(rest, 60), hour_s, [fasted_s](system::Compiled<double>& compiled) {
    if (fasted_s > 0) compiled.persons[0].fasted_s = fasted_s;
  });
  constexpr std::size_t from = 55, middle = 56, to = 57;
  const double* x = person(run.samples.at(middle));
  const body::Build<double>& b = run.compiled.persons[0];
  const double urea = body::urea_excretion_mOsm_s(x[body::at::urea]);
  const double solute = urea + body::ketone_excretion_mOsm_s(x[body::at::fasted]) +
                        body::salt_excretion_mOsm_s(x[body::at::extracellular_osmoles],
                                                    b.extracellular_osmoles_mOsm, b.per_salt_balance_s);
  const auto place = static_cast<std::size_t>(system::person_offset(0) + body::at::total_urine);
  const double kg_s = run.rates(from, to)[place];
  return {kg_s * day_s, solute / kg_s, solute * day_s, urea * day_s};
}

Row point(const char* study, const char* quantity, const char* unit, double published, double low,
          double high, double model) {
  Row r = make_row(topic, study, quantity, unit, published, low, high, model,
                   "set the model: 5 %, or as printed");
  r.calibrated = true;
  return r;
}

constexpr const char* young_man = R"([{"sex": "male", "age_years": 22, "height_m": 1.78, "mass_kg": 75,
                                       "clothing": "indoor", "lifejacket": false}])";

// So many days with so much water, 10,500 kJ and so much sodium a day.
Run days_fed(double days, double water_L_day, double sodium_mmol_day) {
  Rest r;
  r.duration_h = days * 24;
  r.crew = young_man;
  r.stores = R"({"extra": [{"kind": "water_L", "quantity": 30},
                           {"kind": "emergency_ration_10000_kJ", "quantity": 10}]})";
  r.rationing = R"({"rule": "fixed_per_day", "water_L_per_day": )" + std::to_string(water_L_day) +
                R"(, "food_kJ_per_day": 10500})";
  return run_case(scenario_of(r, 60), day_s, [=](system::Compiled<double>& compiled) {
    constexpr double kJ_day = 10500;
    compiled.structure.gear.food.sodium_mmol_kJ = sodium_mmol_day / kJ_day;
  });
}

void fed_and_watered(std::vector<Row>& out) {
  constexpr double usual_salt_mmol = 170;
  const Run usual = days_fed(5, 2.1, usual_salt_mmol);
  out.push_back(make_row(topic, "Armstrong et al. 2010", "urine with 2.1 L of water a day", "L/d", 1.3, 0.88,
                         2.25,
                         (person(usual.samples.at(5))[body::at::total_urine] -
                          person(usual.samples.at(2))[body::at::total_urine]) /
                             3,
                         "range as printed, 59 men"));
  const Run salty = days_fed(7, 2.5, 550), plain = days_fed(7, 2.5, 50);
  const body::Build<double>& b = salty.compiled.persons[0];
  const auto extracellular_kg = [&b](const double* x) {
    return x[body::at::extracellular_osmoles] / system::osmolality_mOsm_kg(b, x);
  };
  const double *more = person(salty.samples.back()), *less = person(plain.samples.back());
  constexpr double plasma_mL_kg = 43;
  const double plasma_mL = plasma_mL_kg * b.mass_kg / extracellular_kg(person(plain.samples.front()));
  const char* heer = "Heer et al. 2000";
  out.push_back(make_row(topic, heer, "plasma volume, 550 less 50 mmol of salt a day", "mL", 315, 241, 389,
                         plasma_mL * (extracellular_kg(more) - extracellular_kg(less)),
                         "2 SE of 37; plasma taken to change as the extracellular volume does"));
  out.back().standard_error = 37;
  out.back().trivial = 0;
  out.push_back(make_row(topic, heer, "body water, 550 less 50 mmol of salt a day", "kg", 0, -0.4, 0.4,
                         more[body::at::body_water] - less[body::at::body_water],
                         "unchanged: 0.4 kg of weighing"));
}

}  // namespace

std::vector<Row> rows() {
  const char *dontas = "Dontas 1972", *adolph = "Adolph 1947, lowest urine flow",
             *report = "water intakes report 2005", *soroka = "Soroka et al., 16 h dry";
  constexpr double thirsty_mOsm_kg = 300, drunk_mOsm_kg = 270, mL_kg = 1000;
  const auto flow_L_day = [](double solute_mOsm_day, double age_years) {
    return body::urine_rate_kg_s(solute_mOsm_day / day_s, body::greatest_urine_osmolality_mOsm_kg(age_years),
                                 thirsty_mOsm_kg) *
           day_s;
  };
  Rest fed;
  fed.duration_h = 60;
  fed.crew = R"([{"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 70, "clothing": "indoor",
                  "lifejacket": false}])";
  fed.stores = R"({"extra": [{"kind": "water_L", "quantity": 4},
                             {"kind": "emergency_ration_10000_kJ", "quantity": 2}]})";
  fed.rationing = R"({"rule": "fixed_per_day", "water_L_per_day": 2, "food_kJ_per_day": 10000})";
  const Urine after_food = dry_for_16_h(fed, 0);
  Rest fasted = fed;
  fasted.crew = R"([{"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 110, "body_fat_pct": 45,
                     "clothing": "indoor", "lifejacket": false}])";
  fasted.stores = R"({"extra": [{"kind": "water_L", "quantity": 4}]})";
  const Urine after_fast = dry_for_16_h(fasted, 28 * day_s);
  const char *wide = "25 %: no spread known", *ages = "10 %: the age is not known",
             *set = "set the model: 20 %";
  std::vector<Row> out{
      point(dontas, "least urine at 24 years", "L/d", 0.392, 0.372, 0.412, flow_L_day(0.392 * 1089, 24)),
      point(dontas, "least urine at 79 years", "L/d", 0.700, 0.665, 0.735, flow_L_day(0.700 * 808, 79)),
      point(dontas, "least urine of women at 79 years", "L/d", 1.086, 1.032, 1.140,
            flow_L_day(1.086 * 843, 79)),
      make_row(topic, report, "least urine for 600 mOsm", "L/d", 0.5, 0.4, 0.6, flow_L_day(600, 24),
               "20 %: the report's design figure of 1200 mOsm/kg is above the 1089 it quotes"),
      point(adolph, "lowest flow", "mL/h", 15, 14.25, 15.75, flow_L_day(1, 24) * mL_kg / 24),
      point(report, "greatest flow", "mL/h", 800, 600, 1000,
            body::urine_rate_kg_s(1.0, body::greatest_urine_osmolality_mOsm_kg(24), drunk_mOsm_kg) * hour_s *
                mL_kg),
      make_row(topic, soroka, "urine after a normal diet", "L/d", 0.72, 0.54, 0.90, after_food.litres_day,
               wide),
      make_row(topic, soroka, "urine osmolality after a normal diet", "mOsm/kg", 918, 826, 1010,
               after_food.mOsm_kg, ages),
      make_row(topic, soroka, "solute after a normal diet", "mOsm/d", 661, 529, 793, after_food.mOsm_day,
               set),
      make_row(topic, soroka, "urea after a normal diet", "mmol/d", 324, 259, 389, after_food.urea_day, set),
      make_row(topic, soroka, "urine after a long fast", "L/d", 0.72, 0.54, 0.90, after_fast.litres_day,
               wide),
      make_row(topic, soroka, "urine osmolality after a long fast", "mOsm/kg", 745, 639, 851,
               after_fast.mOsm_kg, "2 standard errors; its ratio to the fed value set the model"),
      make_row(topic, soroka, "solute after a long fast", "mOsm/d", 536, 429, 643, after_fast.mOsm_day,
               "20 %: no spread known"),
      make_row(topic, soroka, "urea after a long fast", "mmol/d", 102, 71, 133, after_fast.urea_day,
               "30 %: the days of fasting differ")};
  out[3].kind = Kind::rule;
  out[7].standard_error = 20;
  out[11].standard_error = 53;
  for (const std::size_t i : {8U, 9U, 11U}) out[i].calibrated = true;
  for (const std::size_t i : {6U, 7U, 8U, 9U})
    blame(out[i],
          "urea of the eaten and of the body's own protein add up, and after 16 h dry the plasma stands at "
          "290, "
          "where the urine is held to be only half as dense as it can be");
  for (const std::size_t i : {10U, 11U, 12U})
    blame(out[i], "the long faster starts 16 h dry near 288, where the urine is held to be dilute");
  blame(
      out[13],
      "2.5 g of nitrogen a day leave as ammonium whatever is left for urea, also in people who lose little");
  fed_and_watered(out);
  blame_named(out, {{"plasma volume, 550",
                     "salt that is kept until more is passed keeps its water outside the cells; theirs kept "
                     "less, or kept it without water"},
                    {"body water, 550",
                     "salt that is kept until more is passed keeps its water outside the cells; theirs kept "
                     "less, or kept it without water"}});
  return out;
}

}  // namespace bide::validation::kidney
