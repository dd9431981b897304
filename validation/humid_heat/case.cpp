#include <cmath>
#include <sstream>

#include "system/readings.hpp"
#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation {

namespace {

// Means and standard deviations of 15 men after 8 h: see README.md.
struct Line {
  double air_degC, core_degC, core_sd, mass_pct, mass_sd;
};
constexpr Line lines[] = {
    {32.1, 37.2, 0.2, -1.4, 0.3}, {33.1, 37.5, 0.2, -1.6, 0.6}, {35.0, 38.2, 0.4, -1.9, 0.5}};
constexpr double people = 15;

}  // namespace

std::vector<Row> humid_heat_rows() {
  const char* study = "eight hours of humid heat 2020";
  const char* why = "1 SD of the group of 15 men";
  std::vector<Row> out;
  for (const Line& line : lines) {
    Rest rest;
    rest.duration_h = 8;
    rest.air_degC = rest.sea_degC = line.air_degC;
    rest.humidity_pct = 95;
    rest.crew = R"([{"sex": "male", "age_years": 23, "height_m": 1.78, "mass_kg": 78, "clothing": "shorts",
                     "lifejacket": false}])";
    rest.raft = R"({"kind": "offshore_foam_4", "canopy": "none"})";
    rest.routine = R"({"sleep_h_per_night": 0})";
    const Run run = run_case(scenario_of(rest, 60), 3600);
    const double *first = person(run.samples.front()), *last = person(run.samples.back());
    const double mass_kg = run.compiled.persons[0].mass_kg;
    std::ostringstream at;
    at << " after 8 h at " << line.air_degC << " degC, 95 %";
    Row core =
        make_row("humid_heat", study, "core" + at.str(), "degC", line.core_degC,
                 line.core_degC - line.core_sd, line.core_degC + line.core_sd, system::core_degC(last), why);
    core.standard_error = line.core_sd / std::sqrt(people);
    core.trivial = 37.0;
    blame(core,
          "too little heat kept: at a skin-to-air difference of 0.7 kPa everything hangs on clothing and air "
          "movement, which the abstract does not state; the mass loss holds");
    out.push_back(core);
    Row mass =
        make_row("humid_heat", study, "mass" + at.str(), "%", line.mass_pct, line.mass_pct - line.mass_sd,
                 line.mass_pct + line.mass_sd, 100 * (weighed_kg(last) - weighed_kg(first)) / mass_kg, why);
    mass.standard_error = line.mass_sd / std::sqrt(people);
    mass.trivial = 0.0;
    mass.calibrated = true;  // the share of sweat that wet skin withholds was chosen knowing these losses
    out.push_back(mass);
  }
  return out;
}

}  // namespace bide::validation
