// Conversion factors between the units people write and the SI units inside.
#pragma once

namespace bide {

inline constexpr double minute_s = 60;  // seconds in a minute
inline constexpr double hour_min = 60;  // minutes in an hour
inline constexpr double hour_s = 3600;  // seconds in an hour
inline constexpr double day_h = 24;     // hours in a day
inline constexpr double day_s = 86400;  // seconds in a day
inline constexpr double km_m = 1000;    // metres in a kilometre
inline constexpr double m3_L = 1000;    // litres in a cubic metre
inline constexpr double pct = 100;      // percent in the whole
inline constexpr double ppm = 1e6;      // parts per million in the whole

}  // namespace bide
