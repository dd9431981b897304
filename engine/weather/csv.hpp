// Weather as comma-separated text under a header row of our own names.
//
// States: none. Inputs: the file's text. Columns, in any order: time_utc (ISO 8601, required),
// air_temperature_degC, water_temperature_degC, dew_point_degC or relative_humidity_pct, wind_speed_m_s,
// pressure_hPa, cloud_cover_fraction, rain_mm_h, wave_height_m, wave_period_s. An empty field is a missing
// value. Rows may be in any order. A line that begins with # is a comment. Validity: none of the problems
// that `Rows::problems` lists, each with its line; an unknown column is one. Source: our own format.
#pragma once

#include <string_view>

#include "bide/weather/observations.hpp"

namespace bide::weather {

// Reads the text of a weather file in our own CSV format.
Rows parse_weather_csv(std::string_view text);

}  // namespace bide::weather
