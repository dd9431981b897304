// Eight hours of humid heat: conditions in README.md beside this file.
#pragma once

#include "bide/system/fitted.hpp"

namespace bide::validation::humid_heat {

// Means and standard deviations of 15 men after 8 h.
struct HumidLine {
  double air_degC, core_degC, core_sd, mass_pct, mass_sd;
};
inline constexpr HumidLine humid_lines[] = {
    {32.1, 37.2, 0.2, -1.4, 0.3}, {33.1, 37.5, 0.2, -1.6, 0.6}, {35.0, 38.2, 0.4, -1.9, 0.5}};

// Change of mass over the eight hours, % of the body.
double humid_mass_pct(double air_degC, const system::Fitted<double>& fitted);

}  // namespace bide::validation::humid_heat
