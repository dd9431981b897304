#include <sstream>

#include "bide/body/respiration.hpp"
#include "bide/core/units.hpp"
#include "bide/system/readings.hpp"
#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation::losses {

namespace {

constexpr double g_kg = 1000, mmHg_Pa = 133.322;
constexpr const char* topic = "losses";
constexpr const char* man =
    R"([{"sex": "male", "age_years": 25, "height_m": 1.75, "mass_kg": 70, "lifejacket": false, )";

double breath_g_h(double metabolic_W, double mmHg) {
  return body::breath_water_kg_s(body::breath_latent_W(metabolic_W, mmHg * mmHg_Pa)) * hour_s * g_kg;
}

// Freund & Sawka 1996, table 9-2, mL/h.
constexpr double W[3] = {100, 300, 600};
struct Air {
  const char* name;
  double mmHg, mL_h[3];
};
constexpr Air airs[] = {
    {"25 degC, 65 %", 15, {10, 30, 60}}, {"0 degC", 5, {13, 40, 80}}, {"-20 degC", 1, {15, 45, 90}}};

void respiratory(std::vector<Row>& out) {
  for (const Air& air : airs) {
    for (int i = 0; i < 3; ++i) {
      std::ostringstream name;
      name << "respiratory water at " << W[i] << " W, " << air.name;
      out.push_back(make_row(topic, "Freund & Sawka 1996, table 9-2", name.str(), "mL/h", air.mL_h[i],
                             0.9 * air.mL_h[i], 1.1 * air.mL_h[i], breath_g_h(W[i], air.mmHg),
                             "10 %: printed to one or two figures"));
      out.back().kind = Kind::predicted_by_others;
      out.back().at = W[i];
    }
  }
  // 20.5 degC, 57.5 %: 0.575 x 18.1 mmHg; 58.2 W/m2 of 1.8 m2.
  out.push_back(make_row(topic, "respiratory loss of 107 sitting people", "respiratory water sitting", "g/d",
                         228, 194, 262, breath_g_h(58.2 * 1.8, 0.575 * 18.1) * 24,
                         "15 %: the metabolic rate is not stated"));
  blame(out.back(),
        "air is taken to leave at 5.87 kPa of vapour; theirs left at 33.2 degC and 88 %, 4.5 kPa");
}

void fasting(std::vector<Row>& out) {
  Rest r;
  r.duration_h = 72;
  r.crew = std::string(man) + R"("clothing": "indoor"}])";
  r.stores = R"({"extra": [{"kind": "water_L", "quantity": 9}]})";
  r.rationing = R"({"rule": "fixed_per_day", "water_L_per_day": 3})";
  const Run run = run_case(scenario_of(r, 60), hour_s);
  const double *from = person(run.samples.at(24)), *to = person(run.samples.at(72));
  const auto g_day = [&](int entry) { return (to[entry] - from[entry]) / 2 * g_kg; };
  const double skin = g_day(body::at::total_skin_water) + g_day(body::at::total_sweat_drip);
  out.push_back(make_row(topic, "Benedict, fasting man", "skin and lung, fasting at rest", "g/d", 700, 600,
                         800, skin + g_day(body::at::total_breath_water), "as printed"));
  out.push_back(make_row(topic, "Kuno 1956 and a manual", "skin alone at rest", "g/d", 400, 280, 450, skin,
                         "from the manual's least to Kuno's average"));
}

double core_after_2_h_degC(double deficit_pct) {
  Rest r;
  r.duration_h = 2;
  r.air_degC = r.sea_degC = 40;
  r.humidity_pct = 25;
  r.crew = std::string(man) + R"("clothing": "shorts", "water_deficit_pct": )" + std::to_string(deficit_pct) +
           "}]";
  return system::core_degC(person(run_case(scenario_of(r, 60), hour_s).samples.back()));
}

// 250 mL at the start of every hour, as they drank.
double immersed_urine_L(double water_degC, double drunk_L_h) {
  Rest r;
  r.duration_h = 3;
  r.air_degC = r.sea_degC = water_degC;
  r.raft.clear();
  r.boarding = R"({"kind": "none"})";
  r.crew = std::string(man) + R"("clothing": "shorts"}])";
  return person(
      run_case(scenario_of(r, 60), hour_s, {}, {hour_s, drunk_L_h, 0}).samples.back())[body::at::total_urine];
}

double dry_urine_L(double air_degC) {
  Rest r;
  r.duration_h = 3;
  r.air_degC = r.sea_degC = air_degC;
  r.humidity_pct = 60;
  r.crew = std::string(man) + R"("clothing": "shorts"}])";
  return person(run_case(scenario_of(r, 60), hour_s).samples.back())[body::at::total_urine];
}

double open_boat_days() {
  Rest r;
  r.duration_h = 20 * 24;
  r.start = "2031-06-10T08:00:00Z";
  r.latitude_deg = 40;
  r.air_degC = r.sea_degC = 18;
  r.humidity_pct = 80;
  r.wind_m_s = 3;
  r.cloud = 0.7;
  r.raft = R"({"kind": "offshore_foam_4", "canopy": "none"})";
  r.crew = std::string(man) + R"("clothing": "temperate_sailing"}])";
  const Run run = run_case(scenario_of(r, 60), hour_s);
  const body::Build<double>& b = run.compiled.persons[0];
  return time_reached_s(
             run, [&b](const double* x) { return system::water_deficit_pct(b, x); },
             run.compiled.limits[system::Limit::lethal_water_deficit], true) /
         day_s;
}

}  // namespace

std::vector<Row> rows() {
  std::vector<Row> out;
  respiratory(out);
  fasting(out);
  constexpr double lacking_pct = 1.3;
  Row heat =
      make_row(topic, "dry men at rest in 40 degC", "core rise per lacking water", "degC per % of mass", 0.09,
               0.05, 0.25, (core_after_2_h_degC(lacking_pct) - core_after_2_h_degC(0)) / lacking_pct,
               "from half of it to the reviews' 0.25; set the sweat threshold");
  heat.calibrated = true;
  out.push_back(heat);
  constexpr double more_pct = 4;
  Row reviews =
      make_row(topic, "reviews, mostly exercise", "core rise per lacking water, 4 %", "degC per % of mass",
               0.175, 0.1, 0.25, (core_after_2_h_degC(more_pct) - core_after_2_h_degC(0)) / more_pct,
               "as printed; set the sweat threshold");
  reviews.calibrated = true;
  out.push_back(reviews);
  const char* deuster = "Deuster 1989, 3 h head out";
  for (const auto& [degC, litres] : {std::pair{25.0, 1.72}, {35.0, 1.51}}) {
    std::ostringstream name;
    name << "urine of 3 h in " << degC << " degC water";
    Row r = make_row(topic, deuster, name.str(), "L", litres, 0.75 * litres, 1.25 * litres,
                     immersed_urine_L(degC, 0.25), "25 %; seen while the fluid shift was set");
    r.calibrated = true;
    blame(r,
          "most of the 0.75 L they drank is kept, for plasma has to thin below 284 before urine thins, where "
          "the men "
          "passed nearly all of it; men who did not drink come out right");
    out.push_back(r);
  }
  out.push_back(make_row(topic, "Tajima 1988, 3 h head out",
                         "urine of 3 h in 34.5 degC water over that in air", "L", 0.494, 0.316, 0.672,
                         immersed_urine_L(34.5, 0) - dry_urine_L(29),
                         "2 standard errors of 0.089, seven men; set the fluid shift"));
  out.back().standard_error = 0.089;
  out.back().calibrated = true;
  out.push_back(make_row(topic, "open boats without water", "days without water in an open boat, 18 degC",
                         "d", 10, 8, 12, open_boat_days(), "8 to 12 days as printed, longest 11"));
  blame(out.back(),
        "still and dry, without the work, sickness and spray of people in boats; all water that "
        "used tissue sets free counts as his to lose");
  return out;
}

std::vector<Curve> curves(const std::vector<Row>& rows) {
  Curve curve;
  curve.title = "Water lost with the breath, by metabolic rate and air";
  curve.says = "Table 9-2 of Freund and Sawka, printed to one or two figures, with 10 %, and the model.";
  curve.x_label = "metabolic rate", curve.x_unit = "W";
  curve.y_label = "water", curve.y_unit = "mL/h";
  curve.y_from_zero = true;
  constexpr double step_W = 50, most_W = 650;
  const std::vector<Row> table = rows_named(rows, "respiratory water at ");
  for (std::size_t air = 0; air < std::size(airs); ++air) {
    Condition condition{airs[air].name, {}, {}};
    for (std::size_t i = 0; i < 3; ++i) condition.published.push_back(published_of(table.at(3 * air + i)));
    for (double rate = step_W; rate <= most_W; rate += step_W)
      condition.model.push_back({rate, breath_g_h(rate, airs[air].mmHg), {}, {}});
    curve.conditions.push_back(condition);
  }
  return {curve};
}

}  // namespace bide::validation::losses
