#include <array>
#include <functional>
#include <sstream>

#include "bide/core/units.hpp"
#include "bide/outcome/outcome.hpp"
#include "validation/support/outlook.hpp"
#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation::immersion_guidance {

namespace {

constexpr const char* topic = "immersion_guidance";
constexpr int trunk_core = body::at::node(body::trunk, body::core);
constexpr int head_core = body::at::node(body::head, body::core);

struct Bather {
  double water_degC, hours, fat_pct = 15;
  const char* clothing = "indoor";
  const char* lifejacket = "true";
  const char* in_water = "still";
};

std::string scenario_of(const Bather& b) {
  Rest r;
  r.duration_h = b.hours;
  r.air_degC = r.sea_degC = b.water_degC;
  r.raft.clear();
  r.boarding = std::string(R"({"kind": "none", "in_water": ")") + b.in_water + "\"}";
  std::ostringstream crew;
  crew << R"([{"sex": "male", "age_years": 25, "height_m": 1.75, "mass_kg": 75, "body_fat_pct": )"
       << b.fat_pct << R"(, "clothing": ")" << b.clothing << R"(", "lifejacket": )" << b.lifejacket << "}]";
  r.crew = crew.str();
  return scenario_of(r, 5);
}

Run run_of(const Bather& b) {
  return run_case(scenario_of(b), 5 * minute_s);
}

// Between two times of a run sampled every five minutes.
double change(const Run& run, int entry, double from_min, double to_min) {
  constexpr double every_min = 5;
  const auto at = [&](double min) {
    return person(run.samples.at(static_cast<std::size_t>(min / every_min)))[entry];
  };
  return at(to_min) - at(from_min);
}

double cooling_K_h(const Run& run) {
  return -change(run, trunk_core, 30, 60) * 2;
}

double heat_W(const Run& run) {
  return change(run, body::at::total_metabolic, 30, 60) / (30 * minute_s);
}

double hours_to_30_degC(const char* in_water) {
  constexpr double end_point_degC = 30;
  const Run run = run_of({10, 48, 15, "indoor", "true", in_water});
  return time_reached_s(
             run, [](const double* x) { return x[trunk_core]; }, end_point_degC, false) /
         hour_s;
}

void behaviour(std::vector<Row>& out) {
  constexpr const char* study = "Man in cold water, University of Victoria";
  const Run still = run_of({10, 1});
  const Run swimming = run_of({10, 1, 15, "indoor", "true", "swimming"});
  out.push_back(make_row(topic, study, "cooling of a swimmer over a floater's, 10 degC", "-", 1.35,
                         0.85 * 1.35, 1.15 * 1.35, cooling_K_h(swimming) / cooling_K_h(still),
                         "15 %: spread not known"));
  out.back().trivial = 1;
  blame(out.back(), "limbs at work carry less heat to the water here than in the trials");
  out.push_back(make_row(topic, study, "heat made by a swimmer over a floater's, 10 degC", "-", 3, 2, 4,
                         heat_W(swimming) / heat_W(still), "printed as about 3"));
  out.back().trivial = 1;
  blame(out.back(), "the floater already shivers at twice the heat those trials report");
  const double floating_h = hours_to_30_degC("still");
  out.push_back(make_row(topic, study, "time with knees drawn up over floating, 10 degC", "-", 1.5, 1.2, 1.8,
                         hours_to_30_degC("knees_drawn_up") / floating_h, "printed as about 50 %"));
  out.back().trivial = 1;
  blame(out.back(), "how much skin the posture covers is drawn, not measured");
  out.push_back(make_row(topic, "public page on cold water", "time in a huddle over floating, 10 degC", "-",
                         1.45, 1.2, 1.8, hours_to_30_degC("huddled") / floating_h, "4 h against 2.75 h"));
  out.back().kind = Kind::predicted_by_others;
  out.back().trivial = 1;
  blame(out.back(), "how much skin the posture covers is drawn, not measured");
}

void mild_water(std::vector<Row>& out) {
  const auto core_change = [](const char* clothing) {
    const Run run = run_of({17, 0.75, 18, clothing, "false"});
    return (change(run, trunk_core, 0, 45) + change(run, head_core, 0, 45)) / 2;
  };
  const auto add = [&](const char* quantity, double K, double sd, const char* clothing) {
    out.push_back(make_row(topic, "Pretorius et al. 2008", quantity, "K", K, K - sd, K + sd,
                           core_change(clothing), "one standard deviation of eight men"));
    constexpr double root_of_eight = 2.83;
    out.back().standard_error = sd / root_of_eight;
    out.back().trivial = 0;
    blame(out.back(), "vessels close too well in mild water, so the core keeps its heat");
  };
  add("core after 45 min at 17 degC, body exposed", -0.40, 0.3, "shorts");
  add("core after 45 min at 17 degC, body insulated", -0.13, 0.2, "suit_insulated");
}

void suits(std::vector<Row>& out) {
  const auto add = [&](const char* quantity, const char* suit, double water_degC, double hours) {
    const Run run = run_of({water_degC, hours, 15, suit, "true"});
    out.push_back(make_row(topic, "LSA Code 2.3", quantity, "K", 2, -0.5, 2,
                           -change(run, trunk_core, 0, hours * 60), "the criterion itself"));
    out.back().kind = Kind::rule;
    blame(out.back(), "the insulation of the suit in water is a class value from memory");
  };
  add("core fall in an insulated suit, 6 h at 1 degC", "suit_insulated", 1, 6);
  add("core fall in an uninsulated suit, 1 h at 5 degC", "suit_uninsulated", 5, 1);
}

double alive_h(double water_degC, double horizon_h) {
  const timeline::Timeline run = timeline_of(scenario_of(Bather{water_degC, horizon_h}));
  return run.fates.at(0).alive_until_s.value_or(horizon_h * hour_s) / hour_s;
}

void guidance(std::vector<Row>& out) {
  constexpr double horizon_h = 72;
  constexpr const char* halves = "50 % times attributed to Golden and to Lee & Lee";
  constexpr const char* later =
      "guidance counts drowning, cold shock and swimming failure, the model does not";
  const double at_5 = alive_h(5, horizon_h), at_10 = alive_h(10, horizon_h), at_15 = alive_h(15, horizon_h);
  const auto order = [&](const char* quantity, double published, double model) {
    out.push_back(make_row(topic, halves, quantity, "-", published, published / 2, published * 2, model,
                           "a factor of two: only the order is asked for"));
    out.back().kind = Kind::rule;
    out.back().trivial = 1;
    blame(out.back(), later);
  };
  order("time alive, 10 over 5 degC", 2, at_10 / at_5);
  order("time alive, 15 over 10 degC", 3, at_15 / at_10);
  struct Band {
    double water_degC, low_h, high_h;
    const char* name;
  };
  constexpr std::array bands{
      Band{2.3, 0.5, 1.5, "time alive at 2.3 degC"}, Band{7.2, 1, 3, "time alive at 7.2 degC"},
      Band{12.8, 1, 6, "time alive at 12.8 degC"}, Band{18.3, 2, 40, "time alive at 18.3 degC"}};
  for (const Band& b : bands) {
    out.push_back(make_row(topic, "cold-water chart of two Sea Grant pages", b.name, "h",
                           (b.low_h + b.high_h) / 2, b.low_h, b.high_h, alive_h(b.water_degC, horizon_h),
                           "the band as printed"));
    out.back().kind = Kind::rule;
    out.back().at = b.water_degC;
    blame(out.back(), later);
  }
}

}  // namespace

std::vector<Row> rows() {
  std::vector<Row> out;
  behaviour(out);
  mild_water(out);
  suits(out);
  guidance(out);
  return out;
}

std::vector<Curve> curves(const std::vector<Row>& rows) {
  Curve curve;
  curve.title = "Guidance on survival in cold water, and the model's alive until";
  curve.says =
      "A cold-water chart's bands at their middle temperatures, and the model's man. Guidance counts "
      "drowning, cold shock "
      "and swimming failure; the model leaves them out, so it stays later.";
  curve.x_label = "water temperature", curve.x_unit = "degC";
  curve.y_label = "time", curve.y_unit = "h";
  curve.y_from_zero = true;
  Condition bands;
  for (const Row& row : rows_named(rows, "time alive at ")) {
    bands.published.push_back(published_of(row));
    bands.model.push_back(model_of(row));
  }
  curve.conditions = {bands};
  return {curve};
}

}  // namespace bide::validation::immersion_guidance
