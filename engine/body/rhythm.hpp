// The core's set point by the clock: resting core and the thresholds of sweating, skin flow and shivering
// rise and fall together over a day (Stephenson 1984).
//
// States: none. Inputs: local solar time. Validity: people used to the local day; the phase of somebody who
// has just crossed time zones is another. Source: Stephenson 1984 (size), Baehr 2000 (hour of the least
// core).
#pragma once

#include <cmath>

#include "bide/constants/control.hpp"
#include "bide/core/units.hpp"

namespace bide::body {

// The day of one place as two numbers: rise = cosine_K cos(w t) + sine_K sin(w t), t since the start.
template <class T>
struct Rhythm {
  T cosine_K, sine_K;
};

inline constexpr double day_rad_s = 2 * 3.14159265358979323846 / day_s;

// @param start_solar_h local solar time at the start, h, [0, 24)
inline Rhythm<double> rhythm_from(double start_solar_h) {
  using namespace constants;
  // Least at the stated hour: minus a cosine of the time since then.
  const double since = (start_solar_h - least_core_solar_h) * hour_s * day_rad_s;
  const double half_K = 0.5 * core_rhythm_range_K;
  return {-half_K * std::cos(since), half_K * std::sin(since)};
}

// Rise of set point and thresholds above their mean over the day.
// @param t_s since the start, s
// @return K
template <class T>
inline T core_rhythm_K(const Rhythm<T>& r, double t_s) {
  return r.cosine_K * T(std::cos(day_rad_s * t_s)) + r.sine_K * T(std::sin(day_rad_s * t_s));
}

}  // namespace bide::body
