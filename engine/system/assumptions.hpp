// What a result rests on that nobody has measured, and which published ranges it left: sentences for reports.
#pragma once

#include <string>
#include <vector>

#include "bide/scenario/validate.hpp"
#include "bide/system/system.hpp"
#include "bide/weather/weather.hpp"

namespace bide::system {

std::vector<std::string> assumptions(const scenario::ValidScenario& scenario, const weather::Record& weather);

// Sticky: set when a correlation is used outside its published range.
class RangeFlags {
 public:
  void look(const System<double>& system, const std::vector<double>& x);
  std::vector<std::string> sentences() const;

 private:
  bool core_below_shivering_data_ = false, core_above_control_data_ = false, deficit_above_data_ = false,
       shivering_beyond_data_ = false, peak_beyond_data_ = false;
};

}  // namespace bide::system
