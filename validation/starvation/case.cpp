#include "body/fuel.hpp"

#include <cmath>

#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation {

namespace {

constexpr const char* topic = "starvation";
constexpr double hour_s = 3600, day_s = 86400, kJ_kcal = 4.184;
constexpr double activity = 1.3;  // of a person who sits and moves about, over basal; judgement

Rest person_rest(const std::string& person, double hours) {
  Rest r;
  r.duration_h = hours;
  r.crew = "[" + person + "]";
  r.rationing = R"({"rule": "fixed_per_day", "water_L_per_day": 3})";
  r.stores = R"({"extra": [{"kind": "water_L", "quantity": 200}]})";
  return r;
}

// Days to the end, the fuel functions carried day by day. `fixed_W` above 0 replaces the person's own heat.
double days_alive(const std::string& who, double fixed_W) {
  const Run built = run_case(scenario_of(person_rest(who, 1), 60), hour_s);
  const body::Build<double>& b = built.compiled.persons[0];
  constexpr double step_s = day_s / 24, longest_days = 400;
  double glycogen = b.glycogen_kJ, fat = b.fat_kg, protein = b.protein_kg, t = 0;
  while (t < longest_days * day_s) {
    const double lost = b.fat_kg - fat + b.protein_kg - protein;
    const double heat =
        fixed_W > 0 ? fixed_W : b.basal_total_W * activity * body::starved_basal_factor(lost, b.mass_kg);
    const double nitrogen = body::nitrogen_rest_g_s(t, b.lean_kg, b.body_fat_pct, 0.0);
    const double from_protein = body::protein_heat_W(nitrogen, 0.0, 0.0);
    const auto mix = body::fuel_mix(heat, 0.0, from_protein, glycogen, b.glycogen_kJ, t);
    const auto r = body::fuel_rates(heat, mix, glycogen, b.glycogen_kJ, 0.0, 0.0, 0.0);
    glycogen += step_s * r.glycogen_kJ_s;
    fat += step_s * r.fat_kg_s;
    protein += step_s * r.protein_kg_s;
    t += step_s;
    if (body::starvation_progress(protein, b.protein_kg, fat, b.fat_kg,
                                  built.compiled.limits.lethal_protein_fraction_used,
                                  constants::lethal_fat_left_kg.value) >= 1)
      break;
  }
  return t / day_s;
}

constexpr double days = 44, fasting_kg = 96;

Run run_44_days() {
  const std::string man = R"({"sex": "male", "age_years": 40, "height_m": 1.80, "mass_kg": 96,
                              "body_fat_pct": 20, "clothing": "indoor", "lifejacket": false})";
  return run_case(scenario_of(person_rest(man, days * 24), 240), day_s);
}

void fast_of_44_days(std::vector<Row>& out) {
  const char* study = "44-day fast 2003";
  const Run run = run_44_days();
  const double *first = person(run.samples.front()), *last = person(run.samples.back());
  const double kJ = last[body::at::total_oxidised];
  const double protein_kJ =
      last[body::at::total_nitrogen] * constants::protein_per_nitrogen * constants::protein_kJ_g;
  out.push_back(make_row(topic, study, "mass after 44 days", "%", -25.5, -28.5, -22.5,
                         100 * (weighed_kg(last) - weighed_kg(first)) / fasting_kg, "3 points: one person"));
  blame(out.back(),
        "the water of glycogen and of lean tissue stays: 3 to 4 kg for each kg of protein is not let go");
  out.push_back(make_row(topic, study, "protein after 44 days", "%", -20, -25, -15,
                         100 * (last[body::at::protein_mass] / first[body::at::protein_mass] - 1),
                         "5 points: one person"));
  out.push_back(make_row(topic, study, "energy a day over 44 days", "kcal/d", 1897, 1638, 2155,
                         kJ / kJ_kcal / days, "range as printed"));
  blame(out.back(), "15 to 23 W of it is shivering in a room of 22 degC in light clothes");
  out.push_back(make_row(topic, study, "energy from protein over 44 days", "%", 15, 13, 17,
                         100 * protein_kJ / kJ, "range as printed"));
}

Row calibrated(Row r) {
  r.calibrated = true;
  return r;
}

}  // namespace

std::vector<Row> starvation_rows() {
  const std::string lean = R"({"sex": "male", "age_years": 25, "height_m": 1.75, "mass_kg": 70,
                               "body_fat_pct": 12.857})";
  const std::string man = R"({"sex": "male", "age_years": 30, "height_m": 1.75, "mass_kg": 70})";
  const std::string woman = R"({"sex": "female", "age_years": 30, "height_m": 1.63, "mass_kg": 70})";
  const char *speakman = "Speakman 2013", *nitrogen = "nitrogen of 72 fasting people";
  std::vector<Row> out{
      calibrated(make_row(topic, "Elia 1992, model man", "lean man at 1500 kcal/d", "d", 64, 57.6, 70.4,
                          days_alive(lean, 1500 * kJ_kcal * 1000 / day_s), "10 %")),
      make_row(topic, "lean total fasts in Elia's table 3", "lean man without food", "d", 65, 57, 73,
               days_alive(lean, 0), "range of 9 people"),
      make_row(topic, speakman, "man of 70 kg without food", "d", 95, 71.25, 118.75, days_alive(man, 0),
               "25 %"),
      make_row(topic, speakman, "woman of 70 kg without food", "d", 144, 108, 180, days_alive(woman, 0),
               "25 %")};
  for (Row& r : out)
    if (r.study == speakman || r.calibrated) r.kind = Kind::predicted_by_others;
  for (Row& r : out)
    blame(r, "1.3 times basal is more than these people spent, about 1500 kcal a day by Elia");
  fast_of_44_days(out);
  out.push_back(calibrated(make_row(topic, nitrogen, "nitrogen of men, first days", "g/d", 14.5, 10.9, 18.1,
                                    body::nitrogen_rest_g_s(2 * day_s, 61.0, 12.9, 0.0) * day_s, "25 %")));
  out.push_back(calibrated(make_row(topic, nitrogen, "nitrogen of obese women, week 4", "g/d", 3, 2, 4,
                                    body::nitrogen_rest_g_s(25 * day_s, 55.0, 45.0, 0.0) * day_s, "1 g/d")));
  Row keys = calibrated(make_row(topic, "Keys 1950", "basal heat at a quarter of the mass lost", "%", -39,
                                 -41, -37, 100 * (body::starved_basal_factor(17.5, 70.0) - 1), "2 points"));
  keys.source_class = Class::from_memory;
  out.push_back(keys);
  return out;
}

std::vector<Curve> starvation_curves(const std::vector<Row>& rows) {
  Curve mass;
  mass.title = "Body mass over a fast of 44 days";
  mass.says =
      "One man who took nothing but water: his mass at the end, with 3 points either way, and the model's "
      "man. His "
      "protein at the end, with 5 points either way, is of the protein he began with.";
  mass.x_label = "time", mass.x_unit = "d";
  mass.y_label = "change", mass.y_unit = "%";
  const Run run = run_44_days();
  const double* first = person(run.samples.front());
  Condition body_mass{"body mass", {published_of(rows_named(rows, "mass after 44 days").at(0))}, {}};
  Condition protein{"body protein", {published_of(rows_named(rows, "protein after 44 days").at(0))}, {}};
  body_mass.published[0].x = protein.published[0].x = days;
  constexpr int every_d = 4;
  for (const Sample& sample : run.samples) {
    if (static_cast<int>(std::lround(sample.t_s / day_s)) % every_d != 0) continue;
    const double* x = person(sample);
    body_mass.model.push_back(
        {sample.t_s / day_s, 100 * (weighed_kg(x) - weighed_kg(first)) / fasting_kg, {}, {}});
    protein.model.push_back(
        {sample.t_s / day_s, 100 * (x[body::at::protein_mass] / first[body::at::protein_mass] - 1), {}, {}});
  }
  mass.conditions = {body_mass, protein};

  std::vector<Row> alive;
  for (const Row& row : rows)
    if (row.unit == "d") alive.push_back(row);
  Curve until = by_category(alive);
  until.title = "Days alive without food";
  until.says =
      "People who fasted to the end (range of nine), two predictions by others (10 % and 25 %), and the "
      "model.";
  until.x_label = "person";
  until.y_label = "days alive";
  until.y_from_zero = true;
  return {mass, until};
}

}  // namespace bide::validation
