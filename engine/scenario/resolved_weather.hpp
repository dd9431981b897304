// Weather as it is in force: what each kind needs, and nothing else.
//
// States: none. Inputs: the keys of `weather` in a file (scenario.hpp), of which each kind has its own.
// Validity: made once, by validation (resolve.hpp), with every default filled in. Units are in the names.
#pragma once

#include <optional>
#include <string>
#include <variant>

#include "bide/scenario/scenario.hpp"

namespace bide::scenario {

// The same at all times.
struct SteadyWeather {
  double air_temperature_degC = 0;
  double water_temperature_degC = 0;
  double relative_humidity_pct = 0;
  double wind_speed_m_s = 0;  // at 10 m
  double cloud_cover_fraction = 0;
  double rain_mm_h = 0;
  double pressure_hPa = 0;
  std::optional<double> wave_height_m;  // significant; empty: that of the wind
  std::optional<double> wave_period_s;  // mean zero-crossing; empty: that of the height, or of the wind

  bool operator==(const SteadyWeather&) const = default;
};

// Steady but for the air temperature, of which the daily mean is given.
struct DailyWeather : SteadyWeather {
  double air_temperature_swing_K = 0;  // half the difference of day and night
  double warmest_hour_local_h = 0;     // local solar time

  bool operator==(const DailyWeather&) const = default;
};

// The same quantities as means of hours that vary (weather/variable.hpp). Waves follow from the wind.
struct VariableWeather : DailyWeather {
  double wind_spread_fraction = 0;      // standard deviation of each component over the mean speed
  double air_temperature_spread_K = 0;  // standard deviation without the daily cycle
  double rain_hours_fraction = 0;       // (0, 1]; without rain it is not used
  int seed = 0;                         // which of many weathers

  bool operator==(const VariableWeather&) const = default;
};

// What stands in a scenario with a weather file that does not say, h.
inline constexpr double usual_longest_gap_h = 3;

struct FileWeather {
  WeatherKind kind = WeatherKind::csv;  // or ndbc
  std::string file;                     // relative to the scenario file
  double longest_gap_h = 0;             // interpolated up to here
  double anemometer_height_m = 0;
  double cloud_cover_fraction = 0, rain_mm_h = 0;  // if the file has no such column
  WeatherFallback fallback;

  bool operator==(const FileWeather&) const = default;
};

using ResolvedWeather = std::variant<SteadyWeather, DailyWeather, VariableWeather, FileWeather>;

}  // namespace bide::scenario
