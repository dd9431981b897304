// The scenario that the benches share: four people, five days, every feature in use.
#pragma once

namespace bide {

// Cold, wet and long: swim, seasickness and medicine, rain, night and day, every store in use.
inline constexpr const char* built_in_scenario = R"({
  "format": "bide scenario 1", "name": "bench", "start_time_utc": "2031-02-03T18:00:00Z", "duration_h": 120,
  "position": {"latitude_deg": 49, "longitude_deg": -21},
  "weather": {"kind": "daily_cycle", "air_temperature_degC": 12, "water_temperature_degC": 13,
    "relative_humidity_pct": 81, "wind_speed_m_s": 9, "cloud_cover_fraction": 0.5, "rain_mm_h": 0.5,
    "air_temperature_swing_K": 3, "warmest_hour_local_h": 15},
  "raft": {"kind": "offshore_4"},
  "crew": [
    {"sex": "female", "age_years": 42, "height_m": 1.68, "mass_kg": 64, "clothing": "offshore_cold",
     "thermal_protective_aid": true, "injured": true},
    {"sex": "male", "age_years": 30, "height_m": 1.8, "mass_kg": 82, "clothing": "offshore_cold",
     "seat": "lifejacket", "already_seasick": true},
    {"sex": "male", "age_years": 55, "height_m": 1.75, "mass_kg": 90, "clothing": "temperate_sailing",
     "seat": "foam_pad"},
    {"sex": "female", "age_years": 24, "height_m": 1.62, "mass_kg": 58, "clothing": "temperate_sailing"}],
  "boarding": {"kind": "swim", "minutes_in_water": 10},
  "stores": {"pack": "solas_a", "extra": [{"kind": "hand_desalinator_small", "quantity": 1},
    {"kind": "foam_pad", "quantity": 1}, {"kind": "thermal_protective_aid", "quantity": 4}]},
  "rationing": {"rule": "by_thirst"},
  "routine": {"damp_clothes_in_heat": true, "desalinator_h_per_day": 2, "catch_rain": true,
    "flares_per_night": 1},
  "failures": [{"kind": "floor_not_inflated", "at_h": 48}]
})";

}  // namespace bide
