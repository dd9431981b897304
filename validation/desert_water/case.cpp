#include <algorithm>
#include <sstream>

#include "bide/core/units.hpp"
#include "bide/system/readings.hpp"
#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation::desert_water {

namespace {

// Days by the highest daily shade temperature, with nothing, 1.9 L and 18.9 L: see README.md.
struct Line {
  double highest_degC;
  double days[3];
  const char* clothing;
};
constexpr double stocks_L[3] = {0, 1.9, 18.9};
constexpr Line lines[] = {{37.8, {5, 6, 13.5}, "tropical"},
                          {32.2, {7, 9, 23}, "tropical"},
                          {26.7, {9, 11, 29}, "tropical"},
                          {21.1, {10, 12, 32}, "temperate_sailing"},
                          {10.0, {10, 12, 32}, "offshore_cold"}};
constexpr double swing_K = 7;

double model_days(const Line& line, double stock_L, double longest_days) {
  Rest r;
  r.duration_h = longest_days * 24;
  r.swing_K = swing_K;
  r.air_degC = r.sea_degC = line.highest_degC - swing_K;
  r.humidity_pct = 25;
  r.wind_m_s = 1;
  const bool cold = line.highest_degC < 15;
  r.crew =
      std::string(R"([{"sex": "male", "age_years": 25, "height_m": 1.75, "mass_kg": 70, "clothing": ")") +
      line.clothing + R"(", "thermal_protective_aid": )" + (cold ? "true" : "false") + "}]";
  r.stores = R"({"extra": [{"kind": "water_L", "quantity": )" + std::to_string(stock_L) +
             R"(}, {"kind": "thermal_protective_aid"}]})";
  const Run run = run_case(scenario_of(r, 60), hour_s);
  const body::Build<double>& b = run.compiled.persons[0];
  const system::Levels<double>& limits = run.compiled.limits;
  const auto deficit = [&b](const double* x) { return system::water_deficit_pct(b, x); };
  const auto osmolality = [&b](const double* x) { return system::osmolality_mOsm_kg(b, x); };
  const auto core = [](const double* x) { return system::core_degC(x); };
  return std::min({time_reached_s(run, deficit, limits[system::Limit::lethal_water_deficit], true),
                   time_reached_s(run, osmolality, limits[system::Limit::lethal_osmolality], true),
                   time_reached_s(run, core, limits[system::Limit::lethal_core_high], true),
                   time_reached_s(run, core, limits[system::Limit::lethal_core_low], false)}) /
         day_s;
}

}  // namespace

std::vector<Row> rows() {
  constexpr double spread = 0.25;
  std::vector<Row> out;
  for (const Line& line : lines) {
    for (int i = 0; i < 3; ++i) {
      const double days = line.days[i];
      std::ostringstream name;
      name << "days at " << line.highest_degC << " degC with " << stocks_L[i] << " L";
      Row r = make_row("desert_water", "Adolph 1947, table of days", name.str(), "d", days,
                       days * (1 - spread), days * (1 + spread), model_days(line, stocks_L[i], 45),
                       "25 %: the spread between the table's own versions");
      r.kind = Kind::predicted_by_others;
      r.at = line.highest_degC;
      blame(r, r.model < r.low
                   ? "dies too soon: the man in light clothes shivers through nights 14 K below the day, "
                     "and drinks by thirst three times a day"
                   : "lives too long: seated in mild warmth he sweats little by day and not at all by "
                     "night, and all water that used tissue sets free counts as his to lose; the table does "
                     "not say how its men spent the day");
      out.push_back(r);
    }
  }
  return out;
}

std::vector<Curve> curves(const std::vector<Row>& rows) {
  Curve curve;
  curve.title = "Days alive in the shade, by heat and water";
  curve.says =
      "Adolph's table of days (itself a prediction) with the 25 % that its versions differ by, and the "
      "model. It "
      "dies sooner than the table says wherever nights are cool.";
  curve.x_label = "highest daily shade temperature", curve.x_unit = "degC";
  curve.y_label = "days alive", curve.y_unit = "d";
  curve.y_from_zero = true;
  for (int stock = 0; stock < 3; ++stock) {
    std::ostringstream name;
    name << stocks_L[stock] << " L of water";
    Condition condition{name.str(), {}, {}};
    for (std::size_t i = std::size(lines); i-- > 0;) {
      const Row& row = rows.at(3 * i + static_cast<std::size_t>(stock));
      condition.published.push_back(published_of(row));
      condition.model.push_back(model_of(row));
    }
    curve.conditions.push_back(condition);
  }
  return {curve};
}

}  // namespace bide::validation::desert_water
