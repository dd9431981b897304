// Runs a scenario for a case: the whole engine, with a chance to change the compiled person before it starts.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "bide/scenario/validate.hpp"
#include "bide/system/system.hpp"

namespace bide::validation {

struct Sample {
  double t_s;
  std::vector<double> x;  // state vector, see system/coefficients.hpp and body/layout.hpp
};

// Carries the scenario (JSON text) to its end on the production stepper and keeps the state every `every_s`
// seconds, the start included. Throws std::runtime_error with the diagnostics if the scenario is refused.
// `prepare` may change the compiled numbers (manikin: fixed skin, no heat made) before the start.
struct Run {
  system::Compiled<double> compiled;
  std::vector<Sample> samples;
  std::vector<double> rates(std::size_t from,
                            std::size_t to) const;  // mean slope of every entry between two samples
};
// While it lives, every run_case of its thread has its compiled numbers changed before it starts, and before
// the case's own `prepare`: the whole comparison under another set of numbers.
class Altered {
 public:
  explicit Altered(std::function<void(system::Compiled<double>&)> change);
  ~Altered();
  Altered(const Altered&) = delete;
  Altered& operator=(const Altered&) = delete;
};

// What person 0 swallows beside what the scenario hands out, at the start and then every `every_s` seconds (a
// multiple of the output interval).
struct Drink {
  double every_s = 0, water_kg = 0, salt_mOsm = 0;
};
Run run_case(const std::string& scenario_json, double every_s,
             const std::function<void(system::Compiled<double>&)>& prepare = {}, const Drink& drink = {});

// The skin of person p held at `skin_degC`: a manikin. Sets huge skin capacities, the starting temperatures
// and no heat made, and a skin that passes no vapour; the heat that leaves is read from the running totals.
void make_manikin(system::Compiled<double>& compiled, int person, double skin_degC);

}  // namespace bide::validation
