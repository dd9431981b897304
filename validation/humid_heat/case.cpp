#include <cmath>
#include <sstream>

#include "bide/core/moist_air.hpp"
#include "bide/core/units.hpp"
#include "bide/system/readings.hpp"
#include "validation/humid_heat/humid.hpp"
#include "validation/support/rest.hpp"
#include "validation/support/two_node.hpp"
#include "validation/topics.hpp"

namespace bide::validation::humid_heat {

namespace {

constexpr double people = 15, humidity = 0.95, wind_m_s = 0.2, percent = 100;

Run eight_hours(double air_degC, double every_s, const system::Fitted<double>& fitted = {}) {
  Rest rest;
  rest.duration_h = 8;
  rest.air_degC = rest.sea_degC = air_degC;
  rest.humidity_pct = percent * humidity;
  rest.wind_m_s = wind_m_s;
  rest.crew = R"([{"sex": "male", "age_years": 23, "height_m": 1.78, "mass_kg": 78, "clothing": "shorts",
                   "lifejacket": false}])";
  rest.raft = R"({"kind": "offshore_foam_4", "canopy": "none"})";
  rest.routine = R"({"sleep_h_per_night": 0})";
  return run_case(scenario_of(rest, every_s / 60), every_s, [&](system::Compiled<double>& compiled) {
    compiled.fitted = fitted;
    compiled.raft.behind_tubes = 0;  // a chair
  });
}

double mass_change_pct(const Run& run) {
  return percent * (weighed_kg(person(run.samples.back())) - weighed_kg(person(run.samples.front()))) /
         run.compiled.persons[0].mass_kg;
}

TwoNodeEnd by_two_node(double air_degC, const body::Build<double>& b) {
  TwoNodePlace place;
  place.around_degC = air_degC;
  place.vapour_pressure_Pa = humidity * saturation_pressure_Pa(air_degC);
  constexpr double shorts_m2K_W = 0.08 * 0.155;  // clo of the catalogue's shorts
  place.clothing_m2K_W = shorts_m2K_W;
  return two_node(place, {b.mass_kg, b.area_total_m2}, 8 * hour_s);
}

}  // namespace

double humid_mass_pct(double air_degC, const system::Fitted<double>& fitted) {
  return mass_change_pct(eight_hours(air_degC, hour_s, fitted));
}

std::vector<Row> rows() {
  const char* study = "eight hours of humid heat 2020";
  const char* why = "1 SD of the group of 15 men";
  std::vector<Row> out;
  for (const HumidLine& line : humid_lines) {
    const Run run = eight_hours(line.air_degC, hour_s);
    std::ostringstream at;
    at << " after 8 h at " << line.air_degC << " degC, 95 %";
    Row core = make_row("humid_heat", study, "core" + at.str(), "degC", line.core_degC,
                        line.core_degC - line.core_sd, line.core_degC + line.core_sd,
                        system::core_degC(person(run.samples.back())), why);
    core.standard_error = line.core_sd / std::sqrt(people);
    core.trivial = 37.0;
    core.two_node = by_two_node(line.air_degC, run.compiled.persons[0]).core_degC;
    blame(core,
          "too little heat kept: at a skin-to-air difference of 0.7 kPa everything hangs on clothing and air "
          "movement, which the abstract does not state; the mass loss holds");
    out.push_back(core);
    Row mass =
        make_row("humid_heat", study, "mass" + at.str(), "%", line.mass_pct, line.mass_pct - line.mass_sd,
                 line.mass_pct + line.mass_sd, mass_change_pct(run), why);
    mass.standard_error = line.mass_sd / std::sqrt(people);
    mass.trivial = 0.0;
    mass.calibrated = true;  // wet_skin_withholds is fitted on these
    out.push_back(mass);
  }
  return out;
}

std::vector<Curve> curves(const std::vector<Row>& rows) {
  Curve curve;
  curve.title = "Core temperature over eight hours of warm, nearly saturated air";
  curve.says =
      "Fifteen men seated in air of 95 % humidity: their mean at the end with one standard deviation, and "
      "the model's man.";
  curve.x_label = "time", curve.x_unit = "h";
  curve.y_label = "core temperature", curve.y_unit = "degC";
  constexpr double every_s = 1800;
  const std::vector<Row> cores = rows_named(rows, "core after 8 h");
  for (std::size_t i = 0; i < std::size(humid_lines); ++i) {
    std::ostringstream name;
    name << "air of " << humid_lines[i].air_degC << " degC";
    Condition condition{name.str(), {published_of(cores.at(i))}, {}};
    condition.published[0].x = 8;
    for (const Sample& sample : eight_hours(humid_lines[i].air_degC, every_s).samples)
      condition.model.push_back({sample.t_s / hour_s, system::core_degC(person(sample)), {}, {}});
    curve.conditions.push_back(condition);
  }
  return {curve};
}

}  // namespace bide::validation::humid_heat
