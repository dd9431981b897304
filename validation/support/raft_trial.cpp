#include "validation/support/raft_trial.hpp"

#include <sstream>

namespace bide::validation {

std::string scenario_of(const RaftTrial& trial, double output_interval_min) {
  const auto yes = [](bool it_is) { return it_is ? "true" : "false"; };
  std::ostringstream person;
  person << R"({"sex": "male", "age_years": 30, "height_m": )" << trial.height_m << R"(, "mass_kg": )"
         << trial.mass_kg << R"(, "clothing": "temperate_sailing", "thermal_protective_aid": )"
         << yes(trial.aid) << R"(, "seat": ")" << (trial.on_lifejacket ? "lifejacket" : "floor") << R"("})";
  Rest rest;
  rest.duration_h = trial.duration_h;
  rest.air_degC = trial.air_degC;
  rest.sea_degC = trial.sea_degC;
  rest.humidity_pct = 80;
  rest.raft =
      std::string(R"({"kind": "solas_16", "floor": ")") + (trial.foam ? "foam" : "inflated") + R"("})";
  rest.crew = "[";
  for (int p = 0; p < trial.persons; ++p) rest.crew += (p > 0 ? ", " : "") + person.str();
  rest.crew += "]";
  rest.boarding = R"({"kind": "dry", "water_shipped_L": 0, "wet_fraction": )";
  rest.boarding += trial.wet ? "1}" : "0}";
  if (trial.aid)
    rest.stores = R"({"extra": [{"kind": "thermal_protective_aid", "quantity": )" +
                  std::to_string(trial.persons) + "}]}";
  rest.routine = R"({"opening_fraction_day": 0, "opening_fraction_night": 0, "bail_every_h": 0, )"
                 R"("wring_clothes": false, "sleep_h_per_night": 0, "inflate_floor": )";
  rest.routine += yes(trial.inflated || trial.foam);
  rest.routine += "}";
  return scenario_of(rest, output_interval_min);
}

void dress_for_trial(system::Compiled<double>& compiled, double clothing) {
  for (body::Build<double>& b : compiled.persons) {
    for (double& insulation_m2K_W : b.insulation_m2K_W) insulation_m2K_W *= clothing;
    b.immersed_insulation_m2K_W *= clothing;
  }
}

}  // namespace bide::validation
