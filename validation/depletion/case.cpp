#include "bide/body/fuel.hpp"
#include "bide/core/units.hpp"
#include "validation/support/starve.hpp"
#include "validation/topics.hpp"

namespace bide::validation::depletion {

namespace {

constexpr const char* topic = "depletion";

double bmi_at_end(const Starved& s, double height_m) {
  return (s.mass_kg - s.mass_lost_kg) / (height_m * height_m);
}

void lethal(std::vector<Row>& out) {
  const Starved man = starve(R"({"sex": "male", "age_years": 25, "height_m": 1.75, "mass_kg": 70,
                                 "body_fat_pct": 12.857})",
                             0);
  const Starved woman = starve(R"({"sex": "female", "age_years": 25, "height_m": 1.63, "mass_kg": 56})", 0);
  const char* henry = "Henry, body mass index at death";
  out.push_back(make_row(topic, henry, "body mass index at death, man", "kg/m2", 13, 11.9, 14.1,
                         bmi_at_end(man, 1.75), "one coefficient of variation, 8.7 %"));
  out.push_back(make_row(topic, henry, "body mass index at death, woman", "kg/m2", 11, 9.5, 12.5,
                         bmi_at_end(woman, 1.63), "one coefficient of variation, 14 %"));
  out.push_back(make_row(topic, "loss of mass at death", "mass lost at death, lean man", "%", 40, 35, 45,
                         100 * man.mass_lost_kg / man.mass_kg, "5 points: a round figure at second hand"));
  Row strikers =
      make_row(topic, "hunger strikers on water", "lean man without food, earliest death", "d", 49, 42, 73,
               starve(R"({"sex": "male", "age_years": 30, "height_m": 1.75, "mass_kg": 70})", 0).days,
               "no death expected before 6 to 8 weeks, latest reported 73 days");
  strikers.kind = Kind::rule;
  out.push_back(strikers);
  for (std::size_t i = 0; i < out.size(); ++i)
    blame(
        out[i],
        i + 1 < out.size()
            ? "1.3 times basal ends the lean man's fat after 49 days, when 30 % of protein is gone, not 38 %"
            : "body fat by the regression, 18 % or more, against the lean men of the reports");
}

// Six men, ten days, water at will.
void ten_days(std::vector<Row>& out) {
  Rest r =
      fasting_rest(R"({"sex": "male", "age_years": 33, "height_m": 1.76, "mass_kg": 75, "body_fat_pct": 16,
                            "clothing": "indoor", "lifejacket": false})",
                   240);
  r.rationing = R"({"rule": "by_thirst", "food_only_with_water": false})";
  const Run run = run_case(scenario_of(r, 240), 24 * hour_s);
  const double *first = person(run.samples.front()), *last = person(run.samples.back());
  const char* study = "Consolazio 1967, ten days without food";
  out.push_back(make_row(topic, study, "mass after ten days without food", "kg", -7.30, -8.76, -5.84,
                         weighed_kg(last) - weighed_kg(first), "20 %: no spread known, six men"));
  out.push_back(make_row(topic, study, "fat after ten days without food", "kg", -3.46, -4.33, -2.60,
                         last[body::at::fat_mass] - first[body::at::fat_mass],
                         "25 %: by densitometry in six men"));
  blame(out.back(),
        "3.46 kg in ten days are 3250 kcal of fat a day: the men were active, or density took lost water "
        "for fat");
  out.push_back(make_row(topic, study, "protein after ten days without food", "kg", -0.77, -1.01, -0.62,
                         last[body::at::protein_mass] - first[body::at::protein_mass],
                         "20 % less, to the 31 % more that creatinine gave"));
}

void weeks(std::vector<Row>& out) {
  const Rest r = fasting_rest(R"({"sex": "male", "age_years": 40, "height_m": 1.75, "mass_kg": 80,
                                  "body_fat_pct": 22, "clothing": "indoor", "lifejacket": false})",
                              21 * 24);
  const Run run = run_case(scenario_of(r, 240), 24 * hour_s);
  const auto kg_day = [&run](std::size_t from, std::size_t to) {
    return (weighed_kg(person(run.samples.at(from))) - weighed_kg(person(run.samples.at(to)))) /
           static_cast<double>(to - from);
  };
  const char* study = "Kerndt 1982, long fast";
  out.push_back(make_row(topic, study, "mass lost a day, week 1", "kg/d", 0.9, 0.6, 1.2, kg_day(0, 7),
                         "a third: one person"));
  blame(out.back(),
        "too little salt and water seems to leave in the first week: the balance of extracellular salt holds "
        "it with a time of one day");
  out.push_back(make_row(topic, study, "mass lost a day, week 3", "kg/d", 0.3, 0.2, 0.4, kg_day(14, 21),
                         "a third: one person"));
  blame(out.back(),
        "nitrogen of a man of 22 % fat falls only to some 9 g a day: 0.24 kg of wet lean tissue beside as "
        "much fat");
}

void nitrogen(std::vector<Row>& out) {
  const char* study = "nitrogen of 72 fasting people";
  const Starved lean = starve(R"({"sex": "male", "age_years": 25, "height_m": 1.75, "mass_kg": 70,
                                  "body_fat_pct": 12.857})",
                              0, 6);
  const Starved obese = starve(R"({"sex": "female", "age_years": 35, "height_m": 1.63, "mass_kg": 100,
                                   "body_fat_pct": 45})",
                               0, 25);
  Row early = make_row(topic, study, "energy from protein, lean men, day 6", "%", 15, 12, 18,
                       lean.protein_energy_pct, "20 %; nitrogen of the same people set the model");
  Row late = make_row(topic, study, "energy from protein, obese, week 4", "%", 5, 4, 6,
                      obese.protein_energy_pct, "20 %; nitrogen of the same people set the model");
  early.calibrated = late.calibrated = true;
  out.push_back(early);
  out.push_back(late);
  // Fed on a diet without protein, 70 kg: food enough, the last of it an hour ago.
  constexpr double lean_kg = 59.5, mass_kg = 70, plenty_W = 70, mg_g = 1000;
  out.push_back(make_row(
      topic, "fed without protein", "nitrogen of people fed without protein", "mg/(kg d)", 37.2, 26.2, 48.2,
      body::nitrogen_rest_g_s(hour_s, lean_kg, 15.0, plenty_W, 1.0) * day_s * mg_g / mass_kg, "2 SD of 5.5"));
  blame(out.back(),
        "food sets the clock of fasting back, and sugar spares at most half of the first day's 13 g");
}

struct Change {
  double mass_kg, fat_kg;
};
Change change_of(const Run& run, std::size_t from_day, std::size_t to_day) {
  const double *from = person(run.samples.at(from_day)), *to = person(run.samples.at(to_day));
  return {weighed_kg(to) - weighed_kg(from), to[body::at::fat_mass] - from[body::at::fat_mass]};
}

Run fast_of(const char* who, double days) {
  return run_case(scenario_of(fasting_rest(who, days * 24), 240), day_s);
}

void water_only(std::vector<Row>& out) {
  const Run man = fast_of(R"({"sex": "male", "age_years": 35, "height_m": 1.80, "mass_kg": 82,
                              "clothing": "indoor", "lifejacket": false})",
                          7);
  const Run woman = fast_of(R"({"sex": "female", "age_years": 35, "height_m": 1.66, "mass_kg": 70,
                                "clothing": "indoor", "lifejacket": false})",
                            7);
  constexpr double men = 7, women = 5;
  out.push_back(
      make_row(topic, "Pietzner et al. 2024", "mass after seven days on water", "kg", -5.7, -6.5, -4.9,
               (men * change_of(man, 0, 7).mass_kg + women * change_of(woman, 0, 7).mass_kg) / (men + women),
               "1 SD of seven men and five women"));
  out.back().trivial = 0;
  const Change fortnight = change_of(fast_of(R"({"sex": "male", "age_years": 62, "height_m": 1.72,
                                                 "mass_kg": 90, "clothing": "indoor", "lifejacket": false})",
                                             14),
                                     0, 14);
  out.push_back(make_row(topic, "Prolonged water-only fasting, data set 2025",
                         "share of what is lost that is not fat, 14 days on water", "%", 74, 64, 84,
                         100 * (1 - fortnight.fat_kg / fortnight.mass_kg), "10 points: no spread"));
}

void late_in_a_long_fast(std::vector<Row>& out) {
  const char* study = "Components of weight loss in obese patients";
  constexpr double mass_kg = 120, g_kg_days = 1000.0 / 7;
  const Run run = fast_of(R"({"sex": "female", "age_years": 40, "height_m": 1.65, "mass_kg": 120,
                              "body_fat_pct": 48, "clothing": "indoor", "lifejacket": false})",
                          35);
  const Change week = change_of(run, 28, 35);
  const double at_kg = mass_kg + change_of(run, 0, 28).mass_kg;
  out.push_back(make_row(topic, study, "fat lost in week 5, obese", "g/(kg d)", 1.8, 1.5, 2.1,
                         -week.fat_kg / at_kg * g_kg_days, "range as printed, seven patients"));
  out.push_back(make_row(topic, study, "lean tissue lost in week 5, obese", "g/(kg d)", 1.1, 0.9, 1.3,
                         -(week.mass_kg - week.fat_kg) / at_kg * g_kg_days,
                         "range as printed, seven patients"));
}

}  // namespace

std::vector<Row> rows() {
  std::vector<Row> out;
  lethal(out);
  ten_days(out);
  weeks(out);
  nitrogen(out);
  water_only(out);
  late_in_a_long_fast(out);
  blame_named(out, {{"mass after seven days", "too little salt and water seems to leave in the first week"},
                    {"share of what is lost", "too little salt and water seems to leave in the first week"}});
  return out;
}

}  // namespace bide::validation::depletion
