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
template <class T>
inline T fraction_of_ppm(T ppm) {
  return ppm / T(ppm_per_fraction);
}
template <class T>
inline T ppm_of_fraction(T fraction) {
  return fraction * T(ppm_per_fraction);
}

inline constexpr double outdoor_co2_fraction = constants::outdoor_co2_ppm.value / ppm_per_fraction;

// A volume stated at 0 degC, as tables of people's output are, at the cabin's temperature.
template <class T>
inline T at_cabin_m3_s(T at_zero_degC_m3_s, T cabin_degC) {
  return at_zero_degC_m3_s * (cabin_degC + T(constants::zero_celsius_K)) / T(constants::zero_celsius_K);
}

// dc/dt, 1/s.
template <class T>
inline T co2_rate_per_s(T fraction, T made_m3_s, T ventilation_m3_s, T volume_m3, T outside_fraction) {
  return (made_m3_s + ventilation_m3_s * (outside_fraction - fraction)) / volume_m3;
}

// Where the fraction settles; needs some ventilation.
template <class T>
inline T steady_co2_fraction(T made_m3_s, T ventilation_m3_s, T outside_fraction) {
  return outside_fraction + made_m3_s / ventilation_m3_s;
}

// Exact solution after t seconds of constant g and Q, also without ventilation: the mean of exp(-x) over the
// span, (1 - exp(-x)) / x, goes over to its series 1 - x/2 where the quotient loses digits.
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

// Time to rise from one fraction to another with everything perfectly shut, s.
template <class T>
inline T shut_time_s(T from_fraction, T to_fraction, T made_m3_s, T volume_m3) {
  return (to_fraction - from_fraction) * volume_m3 / made_m3_s;
}

}  // namespace bide::cabin
