#include <algorithm>
#include <cmath>

#include "bide/body/anthropometry.hpp"
#include "bide/core/units.hpp"
#include "validation/support/trial.hpp"
#include "validation/topics.hpp"

namespace bide::validation::groups {

namespace {

constexpr const char* topic = "groups";
constexpr const char* weather = BIDE_SOURCE_DIR "/validation/groups/weather/";
constexpr int rectal = body::at::node(body::trunk, body::core);
constexpr int oesophageal = body::at::blood;

// Air in which extra heat reaches a twentieth of that at 30 degC: five hours seated at each whole degree, the
// last read, straight between.
double critical_air_degC(const Who& who) {
  constexpr double warm_degC = 30, cold_degC = 10, share = 0.05;
  const auto last_hour_W = [&](double degC) { return trial_of(in_room(who, degC, 5), 60).heat_W(240, 300); };
  const double rest_W = last_hour_W(warm_degC);
  double before = -share;
  for (double degC = warm_degC - 1; degC >= cold_degC; degC -= 1) {
    const double above = last_hour_W(degC) / rest_W - 1 - share;
    if (above >= 0) return degC + above / (above - before);
    before = above;
  }
  return cold_degC;
}

void critical_air(std::vector<Row>& out) {
  const char *fatness = "Brychta et al. 2019", *sex = "Brychta et al. 2024";
  const double lean = critical_air_degC({.height_m = 1.77, .fat_pct = 17, .clothing = "tropical"});
  const double obese = critical_air_degC(
      {.age_years = 30, .height_m = 1.78, .mass_kg = 105, .fat_pct = 36, .clothing = "tropical"});
  const double women = critical_air_degC(
      {.sex = "female", .height_m = 1.65, .mass_kg = 60, .fat_pct = 27, .clothing = "tropical"});
  out.push_back(make_row(topic, fatness, "critical air temperature of lean men", "degC", 22.9, 21.7, 24.1,
                         lean, "1 SD of 12 men"));
  out.push_back(make_row(topic, fatness, "critical air temperature of obese men", "degC", 21.1, 19.4, 22.8,
                         obese, "1 SD of 9 men"));
  out.push_back(make_row(topic, sex, "critical air temperature of lean women", "degC", 21.9, 20.6, 23.2,
                         women, "1 SD of 16 women"));
  out.push_back(make_row(topic, sex, "critical air temperature, women less men", "K", -1.0, -2.0, 0.0,
                         women - lean, "2 SE, from the printed p of 0.047"));
  out.back().standard_error = 0.5;
  out.back().trivial = 0;
}

void women_at_5_degC(std::vector<Row>& out) {
  const char* study = "Glickman-Weiss et al. 2000";
  const auto stay = [](const Who& who) { return trial_of(in_room(who, 5, 1.5), 10); };
  const Trial women =
      stay({.sex = "female", .age_years = 22.7, .height_m = 1.65, .mass_kg = 60, .fat_pct = 25});
  const Trial men = stay({.age_years = 22.3, .height_m = 1.78, .mass_kg = 75});
  out.push_back(sign_row(topic, study, "oesophageal after 90 min at 5 degC, women less men", "K", 0.02, 1.5,
                         women.at(90)[oesophageal] - men.at(90)[oesophageal], "sign only: women higher"));
  out.push_back(make_row(topic, study, "heat per area in 90 min at 5 degC, women over men", "-", 1, 0.85,
                         1.15, women.heat_W_m2(0, 90) / men.heat_W_m2(0, 90), "no difference: 15 %"));
  out.push_back(make_row(topic, study, "mean skin after 90 min at 5 degC, women less men", "K", 0, -1, 1,
                         women.skin_degC(90) - men.skin_degC(90), "no difference: 1 K"));
}

void boys_and_men(std::vector<Row>& out) {
  const char* study = "Inoue, Araki & Tsujita 1996";
  const auto add = [&](const char* who, const Who& person, double rest_W_m2, double rest_se, double W_m2,
                       double se) {
    const Trial rest = trial_of(
        [&] {
          Rest r = in_room(person, 28, 1);
          r.humidity_pct = 65;
          return r;
        }(),
        10);
    Rest cooling = in_room(person, 28, 1);
    cooling.weather_file = std::string(weather) + "fall_28_to_15.csv";
    const Trial cooled = trial_of(cooling, 10);
    const char* why = "2 SE of eleven";
    out.push_back(make_row(topic, study, std::string("heat at rest at 28 degC, ") + who, "W/m2", rest_W_m2,
                           rest_W_m2 - 2 * rest_se, rest_W_m2 + 2 * rest_se, rest.heat_W_m2(30, 60), why));
    out.back().standard_error = rest_se;
    out.push_back(make_row(topic, study, std::string("heat while air falls from 28 to 15 degC, ") + who,
                           "W/m2", W_m2, W_m2 - 2 * se, W_m2 + 2 * se, cooled.heat_W_m2(0, 60), why));
    out.back().standard_error = se;
    return cooled.change(rectal, 0, 60);
  };
  const double boys_K =
      add("boys of 8", {.age_years = 8, .height_m = 1.28, .mass_kg = 27}, 57.1, 1.2, 63.6, 1.1);
  const double men_K =
      add("men", {.age_years = 21, .height_m = 1.71, .mass_kg = 63, .fat_pct = 13}, 52.0, 0.9, 61.6, 1.1);
  out.push_back(sign_row(topic, study, "core change while air falls from 28 to 15 degC, boys of 8", "K", -1.5,
                         -0.05, boys_K, "sign only: it fell"));
  out.push_back(make_row(topic, study, "core change while air falls from 28 to 15 degC, men", "K", 0, -0.2,
                         0.3, men_K, "no fall: 0.2 K"));
}

// Air from 31.5 to 39.5, to 21.5 and back to 31.5 degC, 0.3 K a minute.
void old_in_changing_air(std::vector<Row>& out) {
  const auto end_less_start_K = [](const Who& who) {
    Rest r = in_room(who, 31.5, 2);
    r.weather_file = std::string(weather) + "ramp_31_39_21_31.csv";
    return trial_of(r, 10).change(rectal, 0, 120);
  };
  out.push_back(
      sign_row(topic, "Ogawa et al. 1993", "core after warm and cool air less that before, old less young",
               "K", -2, -0.02,
               end_less_start_K({.age_years = 73, .height_m = 1.62, .mass_kg = 58, .fat_pct = 20}) -
                   end_less_start_K({.age_years = 22, .height_m = 1.71, .mass_kg = 63, .fat_pct = 14}),
               "sign only: the old were not back"));
}

void old_in_cold_air(std::vector<Row>& out) {
  const char* study = "Potkanowicz et al. 2002";
  const auto stay = [](const Who& who) { return trial_of(in_room(who, 12, 2), 30); };
  constexpr double old_kg = 80, young_kg = 78;
  const Trial old = stay({.age_years = 67.7, .mass_kg = old_kg, .fat_pct = 25});
  const Trial young = stay({.age_years = 26.7, .height_m = 1.78, .mass_kg = young_kg, .fat_pct = 16});
  out.push_back(sign_row(topic, study, "core after 2 h at 12 degC, old less young", "K", -1.5, -0.02,
                         old.core_degC(120) - young.core_degC(120), "sign only: lower"));
  out.push_back(sign_row(
      topic, study, "oxygen uptake after 2 h at 12 degC, old less young", "mL/(kg min)", -5, -0.05,
      oxygen_mL_kg_min(old.heat_W(90, 120), old_kg) - oxygen_mL_kg_min(young.heat_W(90, 120), young_kg),
      "sign only: lower"));
  out.push_back(sign_row(topic, study, "mean skin after 2 h at 12 degC, old less young", "K", 0.05, 3,
                         old.skin_degC(120) - young.skin_degC(120), "sign only: warmer"));
}

void basal_rate(std::vector<Row>& out) {
  using scenario::Sex;
  const char *calloway = "Calloway & Zanni 1980", *fao = "FAO/WHO/UNU 2004";
  constexpr double mass_kg = 75, height_m = 1.73;
  out.push_back(make_row(topic, calloway, "basal heat of men of 70 over that of men of 25", "-", 0.87, 0.83,
                         0.91,
                         body::basal_heat_W(Sex::male, 70, mass_kg, height_m) /
                             body::basal_heat_W(Sex::male, 25, mass_kg, height_m),
                         "13 % below, 4 points either way: no spread"));
  const Trial seated = trial_of(
      in_room(
          {.age_years = 70, .height_m = height_m, .mass_kg = mass_kg, .fat_pct = 25, .clothing = "indoor"},
          25, 2),
      60);
  out.push_back(make_row(topic, calloway, "heat sitting quietly over basal", "-", 1.30, 1.22, 1.38,
                         seated.heat_W(60, 120) / seated.build().basal_total_W,
                         "down to lying, 1.22, and as far up"));
  const auto per_decade_pct = [](Sex sex, double kg, double m) {
    return pct * (1 - body::basal_heat_W(sex, 60, kg, m) / body::basal_heat_W(sex, 50, kg, m));
  };
  out.push_back(make_row(topic, fao, "fall of basal heat a decade, men", "%", 2.9, 2.3, 3.5,
                         per_decade_pct(Sex::male, 70, 1.75), "20 %: no spread"));
  out.push_back(make_row(topic, fao, "fall of basal heat a decade, women", "%", 2.0, 1.6, 2.4,
                         per_decade_pct(Sex::female, 60, 1.63), "20 %: no spread"));
}

}  // namespace

std::vector<Row> rows() {
  std::vector<Row> out;
  critical_air(out);
  women_at_5_degC(out);
  boys_and_men(out);
  old_in_changing_air(out);
  old_in_cold_air(out);
  basal_rate(out);
  blame_named(
      out,
      {{"critical air temperature",
        "the skin's term begins at 31.4 degC for everybody, which near-nude skin passes "
        "in air of 25"},
       {"oesophageal after 90 min", "the fatter shiver less for the same cold, and their core pays for it"},
       {"heat per area in 90 min", "the fatter shiver less for the same cold: by the root of fatness"},
       {"mean skin after 90 min", "goes with the heat made, and with more fat under the skin"},
       {"heat while air falls", "shivering begins only when the skin is below 31.4 degC, late in the hour"},
       {"core change while air falls",
        "vessels close well enough to warm a child's core, whose greater surface counts for too little"},
       {"mean skin after 2 h at 12",
        "the old man here is the fatter: more fat under the skin keeps it colder than his vessels, which "
        "close less "
        "than a young man's, warm it"},
       {"heat sitting quietly", "awake at rest is 1.15 times basal in the model"},
       {"fall of basal heat a decade, women",
        "the regression falls by 5 kcal a day a year for both sexes, twice the report's share for women"}});
  return out;
}

}  // namespace bide::validation::groups
