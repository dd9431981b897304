#include "validation/support/march.hpp"

#include <cmath>
#include <stdexcept>
#include <variant>

#include "bide/march/sdirk2.hpp"
#include "bide/timeline/drive.hpp"
#include "bide/weather/weather.hpp"

namespace bide::validation {

namespace {

thread_local std::function<void(system::Compiled<double>&)> altered;

bool multiple_of(double t_s, double every_s) {
  constexpr double same_s = 1e-3;
  return every_s > 0 && std::abs(t_s - every_s * std::round(t_s / every_s)) < same_s;
}

struct Advance {
  march::Sdirk2<double> stepper;
  Drink drink;
  void step(system::System<double>& system, std::vector<double>& x, double t, double h) {
    if (multiple_of(t, drink.every_s)) {
      double* y = x.data() + system::person_offset(0);
      y[body::at::gut_water] += drink.water_kg;
      y[body::at::extracellular_osmoles] += drink.salt_mOsm;
    }
    stepper.do_step(system, x, t, h);
  }
  void restart() { stepper.restart(); }
};

struct Keep {
  std::vector<Sample>* samples;
  double every_s;
  system::Notes notes() { return nullptr; }
  void after_step(double, double, const std::vector<double>&, const Advance&) {}
  void at_stop(double t, const std::vector<double>& x) {
    const double k = t / every_s;
    if (std::abs(k - std::round(k)) < 1e-9) samples->push_back({t, x});
  }
};

}  // namespace

Altered::Altered(std::function<void(system::Compiled<double>&)> change) {
  altered = std::move(change);
}

Altered::~Altered() {
  altered = nullptr;
}

std::vector<double> Run::rates(std::size_t from, std::size_t to) const {
  const Sample &a = samples.at(from), &b = samples.at(to);
  std::vector<double> out(a.x.size());
  for (std::size_t i = 0; i < out.size(); ++i) out[i] = (b.x[i] - a.x[i]) / (b.t_s - a.t_s);
  return out;
}

Run run_case(const std::string& scenario_json, double every_s,
             const std::function<void(system::Compiled<double>&)>& prepare, const Drink& drink) {
  auto validated = scenario::validate_text(scenario_json, "validation case", ".");
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&validated)) {
    std::string text;
    for (const scenario::Diagnostic& d : *wrong) text += scenario::to_string(d) + "\n";
    throw std::runtime_error(text);
  }
  const auto& valid = std::get<scenario::ValidScenario>(validated);
  auto loaded = weather::load(valid);
  if (std::holds_alternative<scenario::Diagnostics>(loaded)) throw std::runtime_error("weather refused");
  const auto& weather = std::get<weather::Record>(loaded);
  Run run{system::compile(valid, weather), {}};
  if (altered) altered(run.compiled);
  if (prepare) prepare(run.compiled);
  const system::Forcings<double> forcings(weather);
  system::System<double> system(run.compiled, forcings);
  std::vector<double> x = system.start();
  Advance advance{march::Sdirk2<double>(x.size()), drink};
  Keep keep{&run.samples, every_s};
  timeline::drive(system, x, {}, advance, keep);
  return run;
}

void make_manikin(system::Compiled<double>& compiled, int person, double skin_degC) {
  constexpr double held_J_K = 1e12;
  body::Build<double>& b = compiled.persons.at(static_cast<std::size_t>(person));
  for (int s = 0; s < body::segment_count; ++s) {
    for (int l = 0; l < body::tissue_count; ++l) {
      b.basal_W[s][l] = 0;
      b.setpoint_degC[s][l] = skin_degC;
    }
    b.capacity_J_K[s][body::skin] = held_J_K;
  }
  b.basal_total_W = 0;
  b.finger_basal_W = 0;
  b.finger_setpoint_degC = skin_degC;
  b.finger_capacity_J_K = held_J_K;
  b.blood_setpoint_degC = skin_degC;
  b.shivering_ceiling_W = 1e-9;
  b.sweat_factor = 0;
  b.skin_vapour_conductance_m_s = 0;
}

}  // namespace bide::validation
