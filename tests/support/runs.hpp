// Scenarios for tests that march: their text, validated, with the weather, ready for a system.
#pragma once

#include <stdexcept>
#include <string>
#include <utility>
#include <variant>

#include "bide/scenario/validate.hpp"
#include "bide/system/compiled.hpp"
#include "bide/weather/weather.hpp"

namespace bide::test {

struct Run {
  scenario::ValidScenario scenario;
  weather::Record weather;
  system::Compiled<double> compiled;
};

// One dry man in an offshore raft for four, constant weather: tests/scenario/minimal.json.
inline const std::string minimal_text = R"({
  "format": "bide scenario 1", "start_time_utc": "2031-02-03T18:00:00Z", "duration_h": 24,
  "position": {"latitude_deg": 49, "longitude_deg": -21},
  "weather": {"kind": "constant", "air_temperature_degC": 10.4, "water_temperature_degC": 11.6,
    "wind_speed_m_s": 10.9},
  "raft": {"kind": "offshore_4"},
  "crew": [{"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 75}],
  "boarding": {"kind": "dry"}
})";

// Two people swim in cold water, board, and stay wet for a day.
inline const std::string cold_swim_text = R"({
  "format": "bide scenario 1", "start_time_utc": "2031-02-03T18:00:00Z", "duration_h": 24,
  "position": {"latitude_deg": 55, "longitude_deg": -21},
  "weather": {"kind": "daily_cycle", "air_temperature_degC": 5, "water_temperature_degC": 7,
    "relative_humidity_pct": 85, "wind_speed_m_s": 11, "cloud_cover_fraction": 0.6, "rain_mm_h": 1,
    "air_temperature_swing_K": 3, "warmest_hour_local_h": 15},
  "raft": {"kind": "offshore_4"},
  "crew": [
    {"sex": "female", "age_years": 42, "height_m": 1.68, "mass_kg": 64, "clothing": "offshore_cold"},
    {"sex": "male", "age_years": 30, "height_m": 1.8, "mass_kg": 82, "clothing": "temperate_sailing",
     "already_seasick": true}],
  "boarding": {"kind": "swim", "minutes_in_water": 15},
  "stores": {"pack": "solas_b"}
})";

inline Run load_run(const std::string& text) {
  auto validated = scenario::validate_text(text, "test.json", ".");
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&validated))
    throw std::invalid_argument(to_string(wrong->front()));
  auto& scenario = std::get<scenario::ValidScenario>(validated);
  auto loaded = weather::load(scenario);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&loaded))
    throw std::invalid_argument(to_string(wrong->front()));
  auto& record = std::get<weather::Record>(loaded);
  auto compiled = system::compile(scenario, record);
  return {std::move(scenario), std::move(record), std::move(compiled)};
}

}  // namespace bide::test
