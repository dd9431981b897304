// Carbon dioxide in the cabin: one well-mixed box, V dc/dt = g + Q (c_out - c).
//
// States: none here (the volume fraction is the caller's). Inputs: volume fractions, m3/s at cabin
// temperature, m3. Validity: well mixed; a corner away from the entrance may be fouler. Source: mass balance.
#pragma once

#include "bide/constants/cabin.hpp"
#include "bide/core/moist_air.hpp"
#include "bide/core/scalar.hpp"
#include "bide/core/units.hpp"

namespace bide::cabin {

// Parts per million from a volume fraction.
template <class T>
inline T ppm_of_fraction(T fraction) {
  return fraction * T(ppm);
}

inline constexpr double outdoor_co2_fraction = constants::outdoor_co2_ppm.value / ppm;

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

// Slope of the volume fraction, 1/s.
// @param fraction         volume fraction inside
// @param made_m3_s        CO2 breathed out, m3/s at cabin temperature
// @param ventilation_m3_s air exchange, m3/s
// @param volume_m3        volume of air, m3
// @param outside_fraction volume fraction outdoors
template <class T>
inline T co2_rate_per_s(T fraction, T made_m3_s, T ventilation_m3_s, T volume_m3, T outside_fraction) {
  return (made_m3_s + ventilation_m3_s * (outside_fraction - fraction)) / volume_m3;
}

// Exact solution after t seconds of constant g and Q, also without ventilation: the mean of exp(-x) over the
// span, (1 - exp(-x)) / x, goes over to its series 1 - x/2 where the quotient loses digits.
// @param start_fraction volume fraction at the start; the rest as in co2_rate_per_s
// @param t_s            time, s, at least 0
// @return volume fraction, never outside what it was and what it tends to
template <class T>
inline T co2_after_fraction(T start_fraction, T made_m3_s, T ventilation_m3_s, T volume_m3,
                            T outside_fraction, T t_s) {
  const T x = ventilation_m3_s * t_s / volume_m3;
  const T left = exp(-x);
  constexpr double series_below = 1e-6;
  const T mean =
      select(x < T(series_below), T(T(1) - T(0.5) * x), T((T(1) - left) / larger(x, T(series_below))));
  return outside_fraction + (start_fraction - outside_fraction) * left + made_m3_s * t_s / volume_m3 * mean;
}

}  // namespace bide::cabin
