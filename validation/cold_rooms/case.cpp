#include <utility>

#include "bide/core/units.hpp"
#include "validation/support/trial.hpp"
#include "validation/topics.hpp"

namespace bide::validation::cold_rooms {

namespace {

constexpr const char* topic = "cold_rooms";
constexpr const char* weather = BIDE_SOURCE_DIR "/validation/cold_rooms/weather/";
constexpr int rectal = body::at::node(body::trunk, body::core);

Rest under(const char* file, const Who& who, double hours) {
  Rest r = in_room(who, 0, hours);
  r.weather_file = std::string(weather) + file;
  return r;
}

// Shivering above a third of resting heat is taken as what an observer sees.
constexpr double seen_W = 30;

void unclothed_hour(std::vector<Row>& out) {
  const char* study = "Acute exposure to 10 degC, five men";
  constexpr double every_min = 5, longest_min = 120;
  const Trial t = trial_of(in_room({.clothing = "nude"}, 10, longest_min / 60), every_min);
  out.push_back(make_row(topic, study, "shivering in minutes 5 to 10, unclothed at 10 degC", "W", 15, 1,
                         seen_W, t.shivering_W(5, 10), "heat up within 5 min, and no shivering seen yet"));
  double from_min = 0;
  while (from_min + every_min < longest_min && t.shivering_W(from_min, from_min + every_min) < seen_W)
    from_min += every_min;
  out.push_back(make_row(topic, study, "time until shivering is seen, unclothed at 10 degC", "min", 30, 15,
                         60, from_min + every_min / 2,
                         "a factor of two: no spread; seen means a third of resting heat"));
}

// 25 degC falls to 10 in half an hour and stays for two and a half.
constexpr Who at_rest{.age_years = 22.8, .height_m = 1.77, .mass_kg = 78, .fat_pct = 16};
constexpr Who after_toil{.age_years = 22.8,
                         .height_m = 1.77,
                         .mass_kg = 74.1,
                         .fat_pct = 14.4,
                         .more = R"(, "hours_since_sleep_h": 84)"};
Trial down_to_10(const Who& who) {
  return trial_of(under("ramp_25_to_10.csv", who, 3), 5);
}

void three_hours(std::vector<Row>& out) {
  const char* study = "Castellani et al. 2003";
  const auto add = [&](const char* when, const Who& who, double fall_K, double fall_sd, double W_m2,
                       double W_sd, bool set_a_number) {
    const Trial t = down_to_10(who);
    out.push_back(make_row(topic, study, std::string("rectal fall in 3 h to 10 degC, ") + when, "K", fall_K,
                           fall_K - fall_sd, fall_K + fall_sd, -t.change(rectal, 0, 180), "1 SD of ten men"));
    out.back().trivial = 0;
    out.back().calibrated = set_a_number;
    out.push_back(make_row(topic, study, std::string("heat made at 30 min, 10 degC reached, ") + when, "W/m2",
                           W_m2, W_m2 - W_sd, W_m2 + W_sd, t.heat_W_m2(25, 35), "1 SD of ten men"));
    out.back().calibrated = set_a_number;
  };
  add("rested", at_rest, 0.45, 0.12, 66.9, 4.4, false);
  add("after 84 h of toil", after_toil, 0.52, 0.09, 55.4, 3.3, true);
}

// Two hours at 10 degC, then two at 25.
constexpr Who of_two_parts{.age_years = 23, .height_m = 1.78, .mass_kg = 78};
Trial two_parts() {
  return trial_of(under("step_10_to_25.csv", of_two_parts, 4), 10);
}

double oxygen_in(const Trial& two_parts, double from_min, double to_min) {
  return oxygen_mL_kg_min(two_parts.heat_W(from_min, to_min), of_two_parts.mass_kg);
}

void cold_then_mild(std::vector<Row>& out) {
  const char* study = "Esmat et al. 2012";
  const Trial t = two_parts();
  const char *about = "said to be about: 1.5 K", *fifth = "said to be about: 20 %";
  out.push_back(make_row(topic, study, "mean skin after 2 h at 10 degC", "degC", 22, 20.5, 23.5,
                         t.skin_degC(120), about));
  out.push_back(make_row(topic, study, "oxygen uptake after 2 h at 10 degC", "mL/(kg min)", 7, 5.6, 8.4,
                         oxygen_in(t, 110, 120), fifth));
  out.push_back(make_row(topic, study, "rectal change in 2 h at 25 degC after 2 h at 10", "K", -0.5, -0.8,
                         -0.2, t.change(rectal, 120, 240), "said to be about: 0.3 K"));
  out.back().trivial = 0;
  out.push_back(make_row(topic, study, "mean skin after 2 h at 25 degC after 2 h at 10", "degC", 27, 25.5,
                         28.5, t.skin_degC(240), about));
  out.push_back(make_row(topic, study, "oxygen uptake after 2 h at 25 degC after 2 h at 10", "mL/(kg min)", 4,
                         3.2, 4.8, oxygen_in(t, 230, 240), fifth));
}

// The same women a day at 22 and at 28 degC: more heat, percent.
void mild_day(std::vector<Row>& out) {
  const char* study = "Mild cold and 24-h energy expenditure, nine women";
  const auto stay = [](double air_degC) {
    Rest r = in_room({.sex = "female",
                      .age_years = 25,
                      .height_m = 1.65,
                      .mass_kg = 60,
                      .fat_pct = 28,
                      .clothing = "tropical"},
                     air_degC, 30);
    r.stores = R"({"extra": [{"kind": "water_L", "quantity": 10},
                             {"kind": "emergency_ration_10000_kJ", "quantity": 2}]})";
    r.rationing = R"({"rule": "fixed_per_day", "water_L_per_day": 2, "food_kJ_per_day": 8500})";
    r.routine = R"({"sleep_h_per_night": 8, "opening_fraction_day": 1, "opening_fraction_night": 1})";
    return trial_of(r, 60);
  };
  const Trial cool = stay(22), warm = stay(28);
  const auto more_pct = [&](std::initializer_list<int> totals) {
    double cool_W = 0, warm_W = 0;
    for (const int total : totals) {
      cool_W += cool.mean_W(total, 360, 1800);
      warm_W += warm.mean_W(total, 360, 1800);
    }
    return pct * (cool_W / warm_W - 1);
  };
  using namespace body::at;
  out.push_back(make_row(topic, study, "heat made in 24 h, 22 over 28 degC", "%", 7.0, 4.8, 9.2,
                         more_pct({total_metabolic}), "2 SE of nine women"));
  out.back().standard_error = 1.1;
  out.back().trivial = 0;
  out.push_back(make_row(topic, study, "sensible heat lost in 24 h, 22 over 28 degC", "%", 29, 19, 39,
                         more_pct({total_to_air, total_to_canopy, total_to_floor, total_to_floor_water,
                                   total_to_sea, total_to_tube}),
                         "10 points: no spread"));
  out.push_back(make_row(topic, study, "evaporative heat lost in 24 h, 22 over 28 degC", "%", -39, -54, -24,
                         more_pct({total_evaporation, total_breath}), "15 points: no spread"));
}

// Share of the core in the mean body temperature that accounts for the heat stored.
double core_share(const Trial& t, double to_min) {
  double capacity_J_K = t.build().blood_capacity_J_K + t.build().finger_capacity_J_K;
  for (const auto& segment : t.build().capacity_J_K)
    for (const double node : segment) capacity_J_K += node;
  const double mean_K = t.change(body::at::total_stored, 0, to_min) / capacity_J_K;
  const double skin_K = t.skin_degC(to_min) - t.skin_degC(0);
  return (mean_K - skin_K) / (t.change(rectal, 0, to_min) - skin_K);
}

}  // namespace

std::vector<Row> rows() {
  std::vector<Row> out;
  unclothed_hour(out);
  three_hours(out);
  cold_then_mild(out);
  const Trial rested = trial_of(in_room({.age_years = 24, .height_m = 1.77, .mass_kg = 78}, 10, 4), 60);
  out.push_back(make_row(topic, "Young et al. 1998", "core change, 4 h at 10 degC, weeks after toil", "K", 0,
                         -0.3, 0.4, rested.change(rectal, 0, 240), "no fall: 0.3 K"));
  mild_day(out);
  out.push_back(make_row(topic, "Burton's mean body temperature",
                         "share of the core in the heat stored, 2 h at 15 degC in shorts", "-", 0.65, 0.55,
                         0.75, core_share(trial_of(in_room({}, 15, 2), 60), 120), "0.1 either way"));
  out.back().source_class = Class::from_memory;
  out.back().seen_before = true;
  blame_named(
      out,
      {{"rectal fall in 3 h to 10 degC, rested",
        "it starts at 8 h, when the clock lifts the core by 0.2 K in three hours"},
       {"rectal fall in 3 h to 10 degC, after",
        "the threshold that lack of sleep lowers is the whole of shivering's here"},
       {"heat made at 30 min", "lack of sleep then stops what a cold skin asks for over a warm core"},
       {"mean skin after 2 h at 10", "the limbs keep too much flow, and their skin stays too warm"},
       {"oxygen uptake after 2 h at 10", "the model makes all that it loses, where people ran a debt"},
       {"rectal change in 2 h at 25", "limbs cool too little in the cold, and keep little cold to give back"},
       {"mean skin after 2 h at 25", "limbs that kept their heat warm again too fast"},
       {"heat made in 24 h", "the model shivers at 22 degC in light clothes"},
       {"sensible heat lost", "goes with the heat made, which is too much at 22 degC"},
       {"evaporative heat lost",
        "at 28 degC people lost more through the skin than at 22, and the model does not; its breath "
        "follows the heat made"},
       {"share of the core",
        "muscle and the tissue under the skin stay near the core, so the mean of the body follows it "
        "too closely"}});
  return out;
}

std::vector<Curve> curves(const std::vector<Row>& rows) {
  const auto told = [&](const char* quantity, double min) {
    CurvePoint out = published_of(rows_named(rows, quantity).at(0));
    out.x = min;
    return out;
  };
  Curve core;
  core.title = "Core temperature while a room cools to 10 degC and stays there";
  core.says =
      "Castellani and others: ten men, rested and after 84 h with two of sleep, at the end with one standard "
      "deviation. The second set a number of the model.";
  core.y_label = "change of the core", core.y_unit = "K";
  for (const auto& [name, who] : {std::pair{"rested", at_rest}, {"after 84 h of toil", after_toil}}) {
    CurvePoint fall = told((std::string("rectal fall in 3 h to 10 degC, ") + name).c_str(), 180);
    fall = {fall.x, -fall.y, -*fall.high, -*fall.low};
    Condition condition{name, {fall}, {}};
    const Trial t = down_to_10(who);
    for (double min = 0; min <= 180; min += t.every_min)
      condition.model.push_back({min, t.change(rectal, 0, min), {}, {}});
    core.conditions.push_back(condition);
  }

  const Trial t = two_parts();
  Condition skin_of, oxygen_of;
  skin_of.published = {told("mean skin after 2 h at 10 degC", 120), told("mean skin after 2 h at 25", 240)};
  oxygen_of.published = {told("oxygen uptake after 2 h at 10 degC", 120),
                         told("oxygen uptake after 2 h at 25", 240)};
  for (double min = 0; min <= 240; min += t.every_min) {
    skin_of.model.push_back({min, t.skin_degC(min), {}, {}});
    if (min > 0) oxygen_of.model.push_back({min, oxygen_in(t, min - t.every_min, min), {}, {}});
  }
  Curve skin, oxygen;
  skin.title = "Mean skin temperature in two hours at 10 degC and two at 25";
  skin.says = "Esmat and others: eight men in shorts. The text says about; 1.5 K is what the rows allow.";
  skin.y_label = "mean skin temperature", skin.y_unit = "degC";
  skin.conditions = {skin_of};
  oxygen.title = "Oxygen uptake in two hours at 10 degC and two at 25";
  oxygen.says = "The same men. The text says about; 20 % is what the rows allow.";
  oxygen.y_label = "oxygen uptake", oxygen.y_unit = "mL/(kg min)";
  oxygen.y_from_zero = true;
  oxygen.conditions = {oxygen_of};
  for (Curve* curve : {&core, &skin, &oxygen}) curve->x_label = "time", curve->x_unit = "min";
  return {core, skin, oxygen};
}

}  // namespace bide::validation::cold_rooms
