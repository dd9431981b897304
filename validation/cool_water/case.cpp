#include <algorithm>
#include <cmath>
#include <sstream>

#include "bide/core/units.hpp"
#include "validation/support/trial.hpp"
#include "validation/topics.hpp"

namespace bide::validation::cool_water {

namespace {

constexpr const char* topic = "cool_water";
constexpr int rectal = body::at::node(body::trunk, body::core);
constexpr int oesophageal = body::at::blood;

std::string at_degC(const char* what, double water_degC, const char* then = "") {
  std::ostringstream out;
  out << what << ' ' << water_degC << " degC" << then;
  return out.str();
}

// Swimsuits, at rest, one hour: 3.818 - 0.109 Tw K/h.
void swimsuits(std::vector<Row>& out) {
  for (const double water_degC : {15.0, 20.0, 25.0}) {
    const double K_h = 3.818 - 0.109 * water_degC;
    const Trial t = trial_of(in_water({.age_years = 22, .height_m = 1.71, .mass_kg = 65}, water_degC, 1), 10);
    out.push_back(make_row(topic, "Thermal balance of man in water, 1996",
                           at_degC("cooling in swimsuits at rest,", water_degC), "K/h", K_h, 0.75 * K_h,
                           1.25 * K_h, -t.change(rectal, 0, 60), "25 %: no spread"));
    out.back().at = water_degC;
    out.back().trivial = 0;
    out.back().seen_before = true;
  }
}

constexpr double cool_h = 6;
Trial in_cool_water() {
  return trial_of(
      in_water({.age_years = 37.5, .height_m = 1.79, .mass_kg = 81.8, .fat_pct = 17.3}, 20.2, cool_h), 10);
}

double debt_kJ(const Trial& in_cool_water, double min) {
  constexpr double kJ = 1000;
  return -in_cool_water.change(body::at::total_stored, 0, min) / kJ;
}

void hours_in_cool_water(std::vector<Row>& out) {
  const char* study = "Tikuisis 2003";
  const Trial t = in_cool_water();
  out.push_back(make_row(topic, study, "heat debt after 2 h in cool water", "kJ", 932, 598, 1266,
                         debt_kJ(t, 120), "1 SD of six men"));
  out.back().at = 2;
  out.back().trivial = 0;
  out.push_back(make_row(topic, study, "heat debt regained an hour, hours 2 to 6 in cool water", "kJ/h", 48,
                         24, 72, (debt_kJ(t, 120) - debt_kJ(t, 360)) / 4,
                         "half of it either way: no spread"));
  const double heat_W = t.heat_W(60, 240);
  out.push_back(make_row(topic, study, "heat over rest, hours 1 to 4 in cool water", "-", 2, 1.6, 2.4,
                         heat_W / (heat_W - t.shivering_W(60, 240)), "said to be about twice: 20 %"));
  out.push_back(make_row(topic, study, "core change in the first hour in cool water", "K", 0, -0.3, 0.3,
                         t.change(rectal, 0, 60), "an insignificant rise: 0.3 K"));
  out.push_back(make_row(topic, study, "core change from 1 to 6 h in cool water", "K", -1, -2, -0.2,
                         t.change(rectal, 60, 360), "fell for hours, nobody to 35 degC"));
}

// To an oesophageal temperature of 33.75 degC in 8 degC water, then out, dry and wrapped.
void cooled_and_out(std::vector<Row>& out) {
  const char* study = "Giesbrecht & Bristow 1992";
  const Who man{.age_years = 28, .height_m = 1.78, .mass_kg = 77.7, .fat_pct = 18.4};
  constexpr double limit_degC = 33.75, longest_h = 4;
  const Trial in = trial_of(in_water(man, 8, longest_h), 5);
  const double out_s = time_reached_s(
      in.run, [](const double* x) { return x[oesophageal]; }, limit_degC, false);
  out.push_back(make_row(topic, study, "time to an oesophageal temperature of 33.75 degC in 8 degC water",
                         "min", 66.5, 53, 80, out_s / minute_s, "range as printed, five men"));
  Who wrapped = man;
  wrapped.more = R"(, "thermal_protective_aid": true, "seat": "foam_pad")";
  Rest r = in_room(wrapped, 22, longest_h + 2);
  r.sea_degC = 8;
  r.stores = R"({"extra": [{"kind": "thermal_protective_aid"}, {"kind": "foam_pad"}]})";
  const double whole_min = std::round(out_s / minute_s);
  r.boarding = R"({"kind": "swim", "in_water": "still", "water_shipped_L": 0,
                   "minutes_in_water": )" +
               std::to_string(whole_min) + "}";
  const Trial t = trial_of(r, 1);
  const auto oesophageal_degC = [&](double min) { return t.at(whole_min + min)[oesophageal]; };
  double least_degC = oesophageal_degC(0);
  constexpr double watched_min = 60;
  for (double min = 1; min <= watched_min; ++min) least_degC = std::min(least_degC, oesophageal_degC(min));
  out.push_back(make_row(topic, study, "afterdrop at rest out of 8 degC water", "K", 0.41, 0.29, 0.53,
                         oesophageal_degC(0) - least_degC, "2 SE of five men"));
  out.back().standard_error = 0.06;
  out.back().trivial = 0;
  constexpr double K_h = 0.07 * 60;
  out.push_back(make_row(topic, study, "rewarming in minutes 30 to 60 out of 8 degC water", "K/h", K_h,
                         0.7 * K_h, 1.3 * K_h, (oesophageal_degC(60) - oesophageal_degC(30)) * 2,
                         "30 %: no spread"));
  out.back().trivial = 0;
}

// Dry suits over two undergarments, two groups of men, 3 h in 10 degC water.
struct Suit {
  const char* name;
  double immersed_m2K_W;  // README: from the settled heat and skin of the fatter men
  double skin_degC, heat_W, core_degC, lean_core_degC;
};
constexpr Suit suits[] = {{"medium", 0.156, 23.6, 184, 36.4, 35.9}, {"heavy", 0.225, 25.5, 147, 36.5, 36.3}};
constexpr double fatter_pct = 18.6, lean_pct = 10.6;

Trial in_suit(const Suit& suit, double fat_pct) {
  return trial_of(
      in_water({.height_m = 1.77, .mass_kg = 75, .fat_pct = fat_pct, .clothing = "suit_insulated"}, 10, 3),
      30, [&](system::Compiled<double>& compiled) {
        compiled.persons[0].immersed_insulation_m2K_W = suit.immersed_m2K_W;
      });
}

void dry_suits(std::vector<Row>& out) {
  const char* study = "Toner et al. 1989";
  const auto add = [&](const std::string& what, const char* unit, double value, double half, double model,
                       const char* why) {
    out.push_back(make_row(topic, study, what, unit, value, value - half, value + half, model, why));
    out.back().seen_before = true;
  };
  const char *tenths = "0.4 K: no spread", *fifth = "20 %: no spread";
  for (const Suit& s : suits) {
    const Trial fatter = in_suit(s, fatter_pct), lean = in_suit(s, lean_pct);
    const std::string in = std::string(" after 3 h in a dry suit, ") + s.name;
    add("mean skin, 18.6 % fat," + in, "degC", s.skin_degC, 1.5, fatter.skin_degC(180), "1.5 K: no spread");
    add("heat made, 18.6 % fat," + in, "W", s.heat_W, 0.2 * s.heat_W, fatter.heat_W(150, 180), fifth);
    add("core, 18.6 % fat," + in, "degC", s.core_degC, 0.4, fatter.core_degC(180), tenths);
    add("core, 10.6 % fat," + in, "degC", s.lean_core_degC, 0.4, lean.core_degC(180), tenths);
  }
}

// What the regression of 1977 asks for at the model's own skin and rectal temperatures, W/kg.
double law_1977_W_kg(double skin_degC, double rectal_degC) {
  constexpr double gain = 0.0314, skin_zero_degC = 42.2, rectal_zero_degC = 41.4, least = 1.1, most = 6.4;
  return std::clamp(gain * (skin_degC - skin_zero_degC) * (rectal_degC - rectal_zero_degC), least, most);
}

void heat_by_law(std::vector<Row>& out) {
  for (const double water_degC : {5.0, 10.0, 15.0}) {
    constexpr double mass_kg = 75;
    const Trial t = trial_of(in_water({.mass_kg = mass_kg, .clothing = "indoor"}, water_degC, 1), 10);
    double asked_W = 0;
    constexpr double from_min = 30, to_min = 60, step_min = 10;
    for (double min = from_min; min < to_min; min += step_min)
      asked_W += mass_kg * step_min / (to_min - from_min) *
                 law_1977_W_kg((t.skin_degC(min) + t.skin_degC(min + step_min)) / 2,
                               (t.core_degC(min) + t.core_degC(min + step_min)) / 2);
    out.push_back(make_row(topic, "Hayward, Eckerson & Collis 1977",
                           at_degC("heat over the law of 1977, clothed in", water_degC, " water"), "-", 1,
                           0.75, 1.25, t.heat_W(from_min, to_min) / asked_W, "25 %: no spread"));
    out.back().at = water_degC;
  }
}

// Two hours in 24 and in 32 degC: what 5.01 per K of skin and 23.79 per K of rectal ask for, W/m2.
void law_of_1976(std::vector<Row>& out) {
  const auto stay = [](double water_degC) { return trial_of(in_water({}, water_degC, 2), 30); };
  const Trial cool = stay(24), warm = stay(32);
  const double asked_W_m2 = 5.01 * (warm.skin_degC(120) - cool.skin_degC(120)) +
                            23.79 * (warm.core_degC(120) - cool.core_degC(120));
  out.push_back(make_row(topic, "Comparison of shivering in air and water, 1976",
                         "heat in 24 less 32 degC water over what skin and rectal ask for", "-", 1, 0.5, 1.5,
                         (cool.heat_W_m2(60, 120) - warm.heat_W_m2(60, 120)) / asked_W_m2,
                         "half of it either way, as in air"));
  out.back().calibrated = true;
}

}  // namespace

std::vector<Row> rows() {
  std::vector<Row> out;
  swimsuits(out);
  hours_in_cool_water(out);
  cooled_and_out(out);
  dry_suits(out);
  heat_by_law(out);
  law_of_1976(out);
  blame_named(
      out,
      {{"cooling in swimsuits",
        "heat made at rest is too much, and vessels close too well in mild water, so the core falls "
        "too slowly in the first hour"},
       {"heat debt regained",
        "shivering is three times rest at first and tires to what can be kept up, and the debt then grows"},
       {"heat over rest", "heat made at rest in the cold is too much while it lasts"},
       {"core change in the first hour",
        "the core gives its heat to the limbs at once, where people's core holds first"},
       {"afterdrop",
        "muscle under the skin is too near the core, so little cold is left to reach it afterwards"},
       {"rewarming", "core and limbs warm together, by 2.4 K/h at most, where people's core warms first"},
       {"mean skin, 18.6",
        "tissue under the skin insulates too little: 0.052 m2 K/W where the printed figures give "
        "0.070 (core less skin over heat and area)"},
       {"core, 1", "heat made in the cold is too much for a core that has not fallen"},
       {"heat in 24 less 32", "heat made at rest in the cold is too much"}});
  return out;
}

namespace {

Curve debt_over_hours(const std::vector<Row>& rows) {
  Curve out;
  out.title = "Heat debt over six hours in water of 20 degC";
  out.says =
      "Tikuisis: six men, at its most after two hours, with one standard deviation; from there they regained "
      "48 kJ an hour.";
  out.x_label = "time", out.x_unit = "h";
  out.y_label = "heat debt", out.y_unit = "kJ";
  out.y_from_zero = true;
  Condition men;
  men.published = {published_of(rows_named(rows, "heat debt after 2 h").at(0))};
  const Trial t = in_cool_water();
  for (double min = 0; min <= cool_h * hour_min; min += t.every_min)
    men.model.push_back({min / hour_min, debt_kJ(t, min), {}, {}});
  out.conditions = {men};
  return out;
}

// The fatter men's skin, and the core of both groups, to the end of the third hour.
std::vector<Curve> in_suits(const std::vector<Row>& rows) {
  Curve skin, core;
  skin.title = "Skin of men in dry suits in water of 10 degC";
  skin.says = "Toner and others: men of 18.6 % fat after three hours. No spread is known; 1.5 K is allowed.";
  skin.y_label = "mean skin temperature";
  core.title = "Core of men in dry suits in water of 10 degC";
  core.says = "Two groups of the same study, of 18.6 and 10.6 % fat. No spread is known; 0.4 K is allowed.";
  core.y_label = "core temperature";
  constexpr double end_min = 180;
  const auto condition = [&](const std::string& name, const std::string& row, const Trial& t, bool of_skin) {
    Condition out{name, {published_of(rows_named(rows, row).at(0))}, {}};
    out.published[0].x = end_min;
    for (double min = 0; min <= end_min; min += t.every_min)
      out.model.push_back({min, of_skin ? t.skin_degC(min) : t.core_degC(min), {}, {}});
    return out;
  };
  for (const Suit& s : suits) {
    const std::string after = std::string(", after 3 h in a dry suit, ") + s.name, suit = s.name;
    const Trial fatter = in_suit(s, fatter_pct), lean = in_suit(s, lean_pct);
    skin.conditions.push_back(condition(suit + " suit", "mean skin, 18.6 % fat" + after, fatter, true));
    core.conditions.push_back(condition(suit + ", 18.6 % fat", "core, 18.6 % fat" + after, fatter, false));
    core.conditions.push_back(condition(suit + ", 10.6 % fat", "core, 10.6 % fat" + after, lean, false));
  }
  for (Curve* curve : {&skin, &core}) {
    curve->x_label = "time", curve->x_unit = "min";
    curve->y_unit = "degC";
  }
  return {skin, core};
}

}  // namespace

std::vector<Curve> curves(const std::vector<Row>& rows) {
  Curve cooling = against_water(rows, "cooling in swimsuits at rest", "cooling of the core", "K/h");
  cooling.title = "Cooling in swimsuits at rest";
  cooling.says = "Twelve students in their first hour, with 25 % (no spread is known).";
  Curve law = against_water(rows, "heat over the law of 1977", "heat made over that of the law", "-");
  law.title = "Heat made over what the law of 1977 asks for";
  law.says =
      "Hayward, Eckerson and Collis: their law at the model's own skin and core is 1 here, with 25 % "
      "(no spread is known).";
  std::vector<Curve> out = in_suits(rows);
  out.insert(out.begin(), {cooling, law, debt_over_hours(rows)});
  return out;
}

}  // namespace bide::validation::cool_water
