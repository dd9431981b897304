#include "bide/body/fuel.hpp"
#include "bide/core/units.hpp"

#include <cmath>

#include "validation/support/starve.hpp"
#include "validation/topics.hpp"

namespace bide::validation::starvation {

namespace {

constexpr const char* topic = "starvation";
constexpr double kJ_kcal = 4.184;

double days_alive(const std::string& who, double fixed_W) {
  return starve(who, fixed_W).days;
}

constexpr double days = 44, fasting_kg = 96;

Run run_44_days() {
  const std::string man = R"({"sex": "male", "age_years": 40, "height_m": 1.80, "mass_kg": 96,
                              "body_fat_pct": 20, "clothing": "indoor", "lifejacket": false})";
  return run_case(scenario_of(fasting_rest(man, days * 24), 240), day_s);
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

std::vector<Row> rows() {
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
  out.push_back(
      calibrated(make_row(topic, nitrogen, "nitrogen of men, first days", "g/d", 14.5, 10.9, 18.1,
                          body::nitrogen_rest_g_s(2 * day_s, 61.0, 12.9, 0.0, 0.0) * day_s, "25 %")));
  out.push_back(
      calibrated(make_row(topic, nitrogen, "nitrogen of obese women, week 4", "g/d", 3, 2, 4,
                          body::nitrogen_rest_g_s(25 * day_s, 55.0, 45.0, 0.0, 0.0) * day_s, "1 g/d")));
  Row keys = calibrated(make_row(topic, "Keys 1950", "basal heat at a quarter of the mass lost", "%", -39,
                                 -41, -37, 100 * (body::starved_basal_factor(17.5, 70.0) - 1), "2 points"));
  keys.source_class = Class::from_memory;
  out.push_back(keys);
  return out;
}

std::vector<Curve> curves(const std::vector<Row>& rows) {
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

}  // namespace bide::validation::starvation
