// Unmeasured assumptions behind a result, and published ranges that it left: sentences for reports.
#pragma once

#include <string>
#include <vector>

#include "bide/scenario/validate.hpp"
#include "bide/system/system.hpp"
#include "bide/weather/weather.hpp"

namespace bide::system {

// Assumptions that apply to a scenario.
// @param scenario a validated scenario
// @param weather  of this scenario
std::vector<std::string> assumptions(const scenario::ValidScenario& scenario, const weather::Record& weather);

// Correlations used outside their published range; once set, a flag stays set.
class RangeFlags {
 public:
  // Checks a state; call at output times.
  // @param system the model, with its discrete states
  // @param x      the state
  void look(const System<double>& system, const std::vector<double>& x);
  // A sentence for each flag that is set.
  std::vector<std::string> sentences() const;

 private:
  bool core_above_control_data_ = false, deficit_above_data_ = false, shivering_beyond_data_ = false,
       peak_beyond_data_ = false;
};

}  // namespace bide::system
