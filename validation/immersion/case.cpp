#include <sstream>

#include "bide/constants/air.hpp"
#include "bide/core/units.hpp"
#include "validation/support/rest.hpp"
#include "validation/support/two_node.hpp"
#include "validation/topics.hpp"

namespace bide::validation::immersion {

namespace {

constexpr const char* topic = "immersion";
constexpr int rectal = body::at::node(body::trunk, body::core);

Run immersed(double water_degC, double fat_pct, const char* clothing, double hours = 1) {
  Rest r;
  r.duration_h = hours;
  r.air_degC = r.sea_degC = water_degC;
  r.raft.clear();
  r.boarding = R"({"kind": "none"})";
  std::ostringstream crew;
  crew << R"([{"sex": "male", "age_years": 25, "height_m": 1.75, "mass_kg": 75, "body_fat_pct": )" << fat_pct
       << R"(, "clothing": ")" << clothing << "\"}]";
  r.crew = crew.str();
  return run_case(scenario_of(r, 10), 10 * minute_s);
}

double change(const Run& run, std::size_t from, std::size_t to, int entry) {
  return person(run.samples.at(to))[entry] - person(run.samples.at(from))[entry];
}

// The same man and water as two nodes, at rest before he shivers.
TwoNodeEnd by_two_node(double water_degC, const Run& run, double to_s, double from_s) {
  const body::Build<double>& b = run.compiled.persons[0];
  TwoNodePlace place;
  place.around_degC = water_degC;
  place.film_W_m2K = constants::water_film_still_W_m2K;
  place.radiation_W_m2K = 0;
  place.clothing_m2K_W = b.immersed_insulation_m2K_W;
  place.in_water = true;
  return two_node(place, {b.mass_kg, b.area_total_m2}, to_s, from_s);
}

void clothed(std::vector<Row>& out) {
  constexpr double water_degC[] = {5, 10, 15}, cooling_K_h[] = {3.69, 2.67, 1.65}, heat_W[] = {252, 211, 170};
  constexpr const char* study = "Hayward, Eckerson & Collis 1975";
  for (int i = 0; i < 3; ++i) {
    const Run run = immersed(water_degC[i], 15, "indoor");
    std::ostringstream at;
    at << " at " << water_degC[i] << " degC, clothed";
    out.push_back(make_row(topic, study, "cooling" + at.str(), "K/h", cooling_K_h[i], 0.75 * cooling_K_h[i],
                           1.25 * cooling_K_h[i], -change(run, 3, 6, rectal) * 2, "25 %: spread not known"));
    out.back().trivial = 0;
    out.back().at = water_degC[i];
    const double half_core_degC = by_two_node(water_degC[i], run, hour_s / 2, 0).core_degC;
    const TwoNodeEnd simple = by_two_node(water_degC[i], run, hour_s, hour_s / 2);
    out.back().two_node = (half_core_degC - simple.core_degC) * 2;
    blame(out.back(), "goes with the heat made, which is 140 W above this study's");
    out.push_back(make_row(topic, study, "heat production" + at.str(), "W", heat_W[i], 0.75 * heat_W[i],
                           1.25 * heat_W[i], change(run, 3, 6, body::at::total_metabolic) / (hour_s / 2),
                           "25 %: spread not known"));
    out.back().at = water_degC[i];
    out.back().two_node = simple.metabolic_W;
    blame(out.back(), "the shivering law, from later trials, gives about twice the heat of this study");
  }
}

void nude(std::vector<Row>& out) {
  constexpr double water_degC[] = {20, 28}, fall_K[] = {-0.9, -0.5}, low_W[] = {275, 90},
                   moderate_W[] = {195, 45};
  constexpr const char* study = "Tikuisis, Gonzalez & Pandolf 1988";
  for (int i = 0; i < 2; ++i) {
    const Run low = immersed(water_degC[i], 10, "shorts");
    const Run moderate = immersed(water_degC[i], 18, "shorts");
    std::ostringstream at;
    at << " after 1 h at " << water_degC[i] << " degC, nude";
    out.push_back(make_row(topic, study, "rectal change" + at.str(), "K", fall_K[i], fall_K[i] - 0.4,
                           fall_K[i] + 0.4, (change(low, 0, 6, rectal) + change(moderate, 0, 6, rectal)) / 2,
                           "0.4 K: spread not stated"));
    out.back().trivial = 0;
    out.back().two_node = by_two_node(water_degC[i], low, hour_s, 0).core_degC - two_node_start_degC;
    blame(out.back(), "shivering answers too soon in mild water");
    const auto rise = [&](const Run& run, const char* who, double W) {
      out.push_back(make_row(topic, study, std::string("metabolic rise of ") + who + at.str(), "W", W,
                             0.65 * W, 1.35 * W,
                             change(run, 5, 6, body::at::total_shivering) / (10 * minute_s),
                             "35 %: fatness of the groups is a judgement"));
      out.back().trivial = 0;
      blame(out.back(), "the law weakens with the root of fatness; 18 % may be leaner than the group was");
    };
    rise(low, "low fat", low_W[i]);
    rise(moderate, "moderate fat", moderate_W[i]);
  }
}

}  // namespace

std::vector<Row> rows() {
  std::vector<Row> out;
  clothed(out);
  nude(out);
  const Run mild = immersed(29, 14, "shorts", 3);
  out.push_back(make_row(topic, "Van Someren, Coleshaw, Mincer & Keatinge",
                         "core change, 3 h at 29 degC, nude", "K", -0.95, -1.4, -0.5,
                         change(mild, 0, 18, rectal), "range as printed; 14 % fat is a judgement"));
  blame(out.back(), "shivering then holds the core, half a kelvin low; theirs went on falling");
  out.back().trivial = 0;
  return out;
}

namespace {

// Hayward, Eckerson & Collis 1975: minutes to a rectal temperature of 30 degC are 15 + 7.2 / C, where C,
// K/min, is 0.0785 - 0.0034 of the water temperature; from 4.6 to 18.2 degC, second hand.
Curve time_to_30() {
  Curve curve;
  curve.title = "Time in the water to a core of 30 degC";
  curve.says =
      "The law of Hayward, Eckerson and Collis for clothed people holding still in a lifejacket, and the "
      "model, which is "
      "left out where it does not get there in twelve hours. Nobody was cooled so far: the law extends "
      "measured cooling.";
  curve.x_label = "water temperature", curve.x_unit = "degC";
  curve.y_label = "time", curve.y_unit = "h";
  curve.y_from_zero = true;
  constexpr double limit_degC = 30, longest_h = 12;
  Condition all;
  for (const double water_degC : {5.0, 7.5, 10.0, 12.5, 15.0, 18.0}) {
    const double C_K_min = 0.0785 - 0.0034 * water_degC;
    all.published.push_back({water_degC, (15 + 7.2 / C_K_min) * minute_s / hour_s, {}, {}});
    const Run run = immersed(water_degC, 15, "indoor", longest_h);
    const double s = time_reached_s(
        run, [](const double* x) { return x[rectal]; }, limit_degC, false);
    if (s < run.samples.back().t_s) all.model.push_back({water_degC, s / hour_s, {}, {}});
  }
  curve.conditions = {all};
  return curve;
}

}  // namespace

std::vector<Curve> curves(const std::vector<Row>& rows) {
  Curve cooling = against_water(rows, "cooling at ", "cooling of the core", "K/h");
  cooling.title = "Cooling of clothed people in still water";
  cooling.says =
      "Hayward, Eckerson and Collis, with 25 % (their spread is not known), and the model from 30 to 60 min.";
  Curve heat = against_water(rows, "heat production at ", "heat made", "W");
  heat.title = "Heat made by clothed people in still water";
  heat.says = "The same study: the shivering law of later trials gives about twice the heat.";
  return {cooling, heat, time_to_30()};
}

}  // namespace bide::validation::immersion
