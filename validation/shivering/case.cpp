#include "bide/body/anthropometry.hpp"
#include "bide/body/fuel.hpp"
#include "bide/body/shivering.hpp"
#include "bide/core/units.hpp"

#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation::shivering {

namespace {

constexpr const char* topic = "shivering";

void ceiling(std::vector<Row>& out) {
  // (21.2 - 4.51) mL/(kg min) x 75 kg x 20.4 kJ/L, a man of 1.806 m: BMI 23.
  constexpr double above_rest_W = 426, mass_kg = 75, height_m = 1.806, years = 25, vo2max = 50, rq = 0.85;
  out.push_back(make_row(topic, "Eyolfson 2001", "greatest shivering above rest", "W", above_rest_W,
                         0.95 * above_rest_W, 1.05 * above_rest_W,
                         body::shivering_ceiling_W(mass_kg, height_m, years, vo2max, rq),
                         "5 %: heat per litre of oxygen"));
  out.back().calibrated = true;
}

// Shares of 234 W at 2.6 times rest, 0.41 of the way from rest to the peak, a tenth of it protein.
void fuels(std::vector<Row>& out) {
  constexpr double heat_W = 234, intensity = 0.41, stores_kJ = 7650, recently_s = 4 * 3600;
  const auto mix = [&](double share_of_stores) {
    return body::fuel_mix(heat_W, intensity, 0.1 * heat_W, share_of_stores * stores_kJ, stores_kJ,
                          recently_s);
  };
  const auto add = [&](const char* study, const char* quantity, double published, double model) {
    constexpr double points = 5;
    out.push_back(make_row(topic, study, quantity, "%", published, published - points, published + points,
                           pct * model, "5 points"));
    out.back().calibrated = true;
  };
  add("Haman 2002", "carbohydrate at 2.6 times rest", 40, mix(1).carbohydrate);
  add("Haman 2002", "fat at 2.6 times rest", 50, mix(1).fat);
  add("Haman 2004", "carbohydrate with low stores", 28, mix(0.7).carbohydrate);
  add("Haman 2004", "carbohydrate with high stores", 65, mix(1.7).carbohydrate);
}

void low_glucose(std::vector<Row>& out) {
  const auto add = [&](const char* quantity, double published, double low, double high, double mmol_L) {
    out.push_back(make_row(topic, "Haight & Keatinge 1973", quantity, "-", published, low, high,
                           body::glucose_factor(mmol_L), "none seen, and back in full"));
  };
  add("shivering left at glucose 2.17 mmol/L", 0, 0, 0.05, 2.17);
  add("shivering left at glucose 1.77 mmol/L", 0, 0, 0.05, 1.77);
  add("shivering left once glucose is back at 4 mmol/L", 1, 0.95, 1, 4);
}

}  // namespace

std::vector<Row> rows() {
  struct Point {
    const char* name;
    double core_degC, skin_degC, fat_pct, W_m2;
  };
  // Worked by hand from the published quadratic.
  constexpr Point points[] = {
      {"drive at core 37, skin 25 degC, 15 % fat", 37, 25, 15, 71.1},
      {"drive at core 36, skin 25 degC, 15 % fat", 36, 25, 15, 111.3},
      {"drive at core 36, skin 18 degC, 15 % fat", 36, 18, 15, 131.0},
      {"drive at core 35, skin 25 degC, 15 % fat", 35, 25, 15, 151.4},
      {"drive at core 35, skin 22 degC, 20 % fat", 35, 22, 20, 142.7},
      {"drive at core 35, skin 15 degC, 15 % fat", 35, 15, 15, 167.4},
      {"drive at core 35, skin 10 degC, 15 % fat", 35, 10, 15, 145.0},
  };
  std::vector<Row> out;
  for (const Point& p : points) {
    out.push_back(make_row(topic, "Tikuisis & Giesbrecht 1999", p.name, "W/m2", p.W_m2, 0.99 * p.W_m2,
                           1.01 * p.W_m2, body::shivering_drive_W_m2(p.core_degC, p.skin_degC, p.fat_pct),
                           "printed to a tenth: 1 %"));
    out.back().kind = Kind::rule;
    out.back().at = p.skin_degC;
    out.back().calibrated = true;
    blame(out.back(), "below 18 degC the published quadratic turns down; the model holds it at its peak");
  }
  // Kept up: twice rest, of people who peak at 4.9 times rest.
  constexpr double intensity = 0.56, kept_up = 0.26, held_s = 6.5 * 3600, step_s = 60;
  double fatigue = 0;
  for (double t = 0; t < held_s; t += step_s)
    fatigue += step_s * body::fatigue_rate_per_s(intensity, fatigue, kept_up,
                                                 1 / (constants::shiver_peak_endurance_h * hour_s));
  out.push_back(make_row(topic, "Tikuisis 2002", "shivering left after 6.5 h at 65 % of the peak", "-", 1,
                         0.95, 1, body::fatigue_factor(fatigue), "no fall in oxygen uptake: 5 %"));
  out.back().calibrated = true;
  ceiling(out);
  fuels(out);
  low_glucose(out);
  return out;
}

std::vector<Curve> curves(const std::vector<Row>& rows) {
  Curve curve;
  curve.title = "Drive to shiver, by skin and core temperature";
  curve.says =
      "The published quadratic worked by hand for 15 % fat, and the model, which holds it at its peak below "
      "a skin of "
      "18 degC where the quadratic turns down. Used to set the model: no validation.";
  curve.x_label = "mean skin temperature", curve.x_unit = "degC";
  curve.y_label = "heat of shivering", curve.y_unit = "W/m2";
  curve.y_from_zero = true;
  constexpr double fat_pct = 15, coldest_degC = 5, warmest_degC = 35, step_degC = 1;
  for (const int core_degC : {37, 36, 35}) {
    Condition condition{"core " + std::to_string(core_degC) + " degC", {}, {}};
    for (const Row& row : rows_named(rows, "drive at core " + std::to_string(core_degC)))
      if (row.quantity.find("15 % fat") != std::string::npos)
        condition.published.push_back(published_of(row));
    for (double skin = coldest_degC; skin <= warmest_degC; skin += step_degC)
      condition.model.push_back(
          {skin, body::shivering_drive_W_m2(static_cast<double>(core_degC), skin, fat_pct), {}, {}});
    curve.conditions.push_back(condition);
  }
  return {curve};
}

}  // namespace bide::validation::shivering
