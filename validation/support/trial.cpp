#include "validation/support/trial.hpp"

#include <cmath>
#include <sstream>
#include <stdexcept>

#include "bide/core/units.hpp"
#include "bide/system/readings.hpp"

namespace bide::validation {

namespace {

std::string crew_of(const Who& who) {
  std::ostringstream out;
  out << R"([{"sex": ")" << who.sex << R"(", "age_years": )" << who.age_years << R"(, "height_m": )"
      << who.height_m << R"(, "mass_kg": )" << who.mass_kg << R"(, "body_fat_pct": )" << who.fat_pct
      << R"(, "clothing": ")" << who.clothing << R"(", "lifejacket": true)" << who.more << "}]";
  return out.str();
}

}  // namespace

Rest in_room(const Who& who, double air_degC, double hours) {
  Rest r;
  r.duration_h = hours;
  r.air_degC = r.sea_degC = air_degC;
  r.crew = crew_of(who);
  return r;
}

Rest in_water(const Who& who, double water_degC, double hours, const char* in_water) {
  Rest r = in_room(who, water_degC, hours);
  r.raft.clear();
  r.boarding = std::string(R"({"kind": "none", "in_water": ")") + in_water + "\"}";
  return r;
}

const double* Trial::at(double min) const {
  const double index = min / every_min, near = std::round(index);
  constexpr double same = 1e-9;
  if (std::abs(index - near) > same) throw std::runtime_error("a time between two samples was asked for");
  return person(run.samples.at(static_cast<std::size_t>(near)));
}

double Trial::core_degC(double min) const {
  return system::core_degC(at(min));
}

double Trial::skin_degC(double min) const {
  return system::mean_skin_degC(build(), at(min));
}

double Trial::change(int entry, double from_min, double to_min) const {
  return at(to_min)[entry] - at(from_min)[entry];
}

double Trial::mean_W(int total, double from_min, double to_min) const {
  return change(total, from_min, to_min) / ((to_min - from_min) * minute_s);
}

double Trial::heat_W(double from_min, double to_min) const {
  return mean_W(body::at::total_metabolic, from_min, to_min);
}

double Trial::heat_W_m2(double from_min, double to_min) const {
  return heat_W(from_min, to_min) / build().area_total_m2;
}

double Trial::shivering_W(double from_min, double to_min) const {
  return mean_W(body::at::total_shivering, from_min, to_min);
}

Trial trial_of(const Rest& rest, double every_min,
               const std::function<void(system::Compiled<double>&)>& prepare) {
  return {run_case(scenario_of(rest, every_min), every_min * minute_s, prepare), every_min};
}

double oxygen_mL_kg_min(double heat_W, double mass_kg) {
  constexpr double J_mL = 20.3;
  return heat_W * minute_s / J_mL / mass_kg;
}

Row sign_row(const char* topic, const char* study, const std::string& quantity, const char* unit,
             double least, double most, double model, const char* why) {
  const double nearer_none = std::abs(least) < std::abs(most) ? least : most;
  return make_row(topic, study, quantity, unit, nearer_none, least, most, model, why);
}

}  // namespace bide::validation
