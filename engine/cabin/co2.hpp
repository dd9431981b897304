// Carbon dioxide in the cabin: one well-mixed box, V dc/dt = g + Q (c_out - c).
//
// States: none here (the volume fraction is the caller's). Inputs: volume fractions, m3/s at cabin
// temperature, m3. Validity: well mixed; a corner away from the entrance may be fouler. Source: mass balance.
#pragma once

#include "bide/constants/cabin.hpp"
#include "bide/core/moist_air.hpp"
#include "bide/core/scalar.hpp"

namespace bide::cabin {

inline constexpr double ppm_per_fraction = 1e6;
// Volume fraction from parts per million, and back.
template <class T>
inline T fraction_of_ppm(T ppm) {
  return ppm / T(ppm_per_fraction);
}
template <class T>
inline T ppm_of_fraction(T fraction) {
  return fraction * T(ppm_per_fraction);
}

inline constexpr double outdoor_co2_fraction = constants::outdoor_co2_ppm.value / ppm_per_fraction;

// Volume fraction in the steady state.
// @param made_m3_s        CO2 breathed out, m3/s at cabin temperature, at least 0
// @param ventilation_m3_s air exchange, m3/s, above 0
// @param outside_fraction volume fraction outdoors
// @return volume fraction
template <class T>
inline T steady_co2_fraction(T made_m3_s, T ventilation_m3_s, T outside_fraction) {
  return outside_fraction + made_m3_s / ventilation_m3_s;
}

// Time in which the volume fraction rises without any air exchange.
// @param from_fraction, to_fraction volume fractions
// @param made_m3_s                  CO2 breathed out, m3/s at cabin temperature, above 0
// @param volume_m3                  volume of air, m3
// @return s
template <class T>
inline T shut_time_s(T from_fraction, T to_fraction, T made_m3_s, T volume_m3) {
  return (to_fraction - from_fraction) * volume_m3 / made_m3_s;
}

}  // namespace bide::cabin
