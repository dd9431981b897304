// The free parameters of the judge: multipliers of a person's numbers, with the spread of what is known of
// each. They are for judging alone; nothing here changes the model.
#pragma once

#include <array>

#include "bide/core/sourced.hpp"
#include "bide/system/compiled.hpp"

namespace bide::validation {

inline constexpr std::size_t parameter_count = 8;

// Logarithms of the multipliers; 0 is the model in force.
using Point = std::array<double, parameter_count>;

struct Parameter {
  const char* name;
  Sourced sd;       // of the logarithm: the prior is lognormal about 1
  double farthest;  // of the logarithm, either way: the model is run within this
};

enum : std::size_t {
  of_heat_made,
  of_tissue,
  of_clothing,
  of_water_loss,
  of_ceiling,
  of_resting_heat,
  of_muscle_flow,
  of_countercurrent
};
inline constexpr std::size_t error_count = 4;  // the first four: body/model_error.hpp

extern const std::array<Parameter, parameter_count> parameters;

// Changes everybody's numbers.
void scale(const Point& point, system::Compiled<double>& compiled);

}  // namespace bide::validation
