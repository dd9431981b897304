// What the climatology of ships does not hold: rain and the spread of air temperature by latitude, and how
// weather varies from hour to hour.
#pragma once

#include <array>

#include "bide/core/sourced.hpp"

namespace bide::constants {

// A belt of latitude at sea, by the middle of it; between two middles values lie on a straight line.
// The published maps of monthly rain come as files that no package holds, and no table of belts was found in
// an open paper; only the mean over all seas was (tests/climate/climate_test.cpp).
struct Zone {
  double middle_deg;
  Sourced rain_mm_d;                 // mean of the year
  Sourced rain_share;                // of reports with rain, drizzle or snow falling
  Sourced air_temperature_spread_K;  // standard deviation without the daily cycle
};

constexpr Sourced zone_rain(double mm_d) {
  return {mm_d,
          "mm/d",
          "adler2003",
          "zonal means over the sea, merged gauge and satellite analysis, from memory",
          Trust::from_memory,
          mm_d / 3,
          mm_d * 3};
}
constexpr Sourced zone_share(double share) {
  return {share,
          "-",
          "petty1995",
          "frequency of precipitation in present-weather reports, from memory",
          Trust::from_memory,
          share / 2,
          share * 2};
}
constexpr Sourced zone_spread(double spread_K) {
  return {spread_K,         "K",          "",          "open sea; off a cold coast in winter a buoy had 5 K",
          Trust::judgement, spread_K / 2, spread_K * 2};
}
constexpr Zone zone(double middle_deg, double rain_mm_d, double share, double spread_K) {
  return {middle_deg, zone_rain(rain_mm_d), zone_share(share), zone_spread(spread_K)};
}

inline constexpr Sourced steadiest_wind{
    0.25,
    "-",
    "",
    "least spread over mean speed: the trades have 0.28; less comes from too few reports",
    Trust::judgement,
    0.2,
    0.3};

inline constexpr Sourced no_prevailing_direction{
    0.798, "-", "", "spread of a component over the mean speed of a Rayleigh law, sqrt(2/pi), rounded up",
    Trust::derived};

inline constexpr std::array zones{
    zone(-75, 0.9, 0.25, 3.0), zone(-65, 1.8, 0.25, 2.5), zone(-55, 2.7, 0.20, 2.3),
    zone(-45, 2.9, 0.15, 2.1), zone(-35, 2.5, 0.09, 1.7), zone(-25, 2.0, 0.05, 1.2),
    zone(-15, 2.6, 0.05, 0.8), zone(-5, 3.6, 0.07, 0.7),  zone(5, 5.6, 0.11, 0.7),
    zone(15, 2.7, 0.06, 0.8),  zone(25, 1.9, 0.045, 1.2), zone(35, 2.8, 0.09, 1.7),
    zone(45, 3.2, 0.14, 2.1),  zone(55, 2.9, 0.19, 2.3),  zone(65, 2.1, 0.20, 2.5),
    zone(75, 1.0, 0.20, 3.0)};

// ---- how weather varies from hour to hour (weather/variable.hpp)
inline constexpr Sourced wind_memory_h{24,
                                       "h",
                                       "bel2013",
                                       "correlation time of the wind stress, about one day over much of the "
                                       "sea (caption of its map); a buoy in the "
                                       "Gulf of Maine had 10 h in January and 34 h in autumn",
                                       Trust::judgement,
                                       10,
                                       48};
inline constexpr Sourced air_memory_h{
    24, "h", "", "as the wind's; the same buoy had 26 h in January", Trust::judgement, 12, 72};
inline constexpr Sourced front_memory_h{
    12, "h", "", "half a day from a warm to a cold front", Trust::judgement, 6, 24};
inline constexpr Sourced humidity_spread_pct{
    10, "%", "", "relative humidity at sea; the Gulf of Maine buoy had 15 near land", Trust::judgement,
    5,  15};
inline constexpr Sourced front_share_of_humidity{
    0.7, "-", "", "correlation of humidity with fronts", Trust::judgement, 0, 1};
inline constexpr Sourced cloud_sharpness{
    1.5,
    "-",
    "",
    "spread before the normal integral: skies at sea are mostly clear or mostly overcast",
    Trust::judgement,
    0.5,
    3};
inline constexpr Sourced swell_memory_h{
    24,
    "h",
    "",
    "energy of waves that outlast their wind; the Gulf of Maine buoy's heights had 12 to 36 h",
    Trust::judgement,
    12,
    72};

// ---- growth of waves with the time the wind has blown (Shore Protection Manual)
inline constexpr Sourced wave_growth_height{0.0016, "-", "spm1984",
                                            "g H/U^2 = 0.0016 (g F/U^2)^(1/2); by a public transcription",
                                            Trust::second_hand};
inline constexpr Sourced wave_growth_time{
    68.8, "-", "spm1984", "g t/U = 68.8 (g F/U^2)^(2/3); by a public transcription", Trust::second_hand};
inline constexpr Sourced wave_growth_period{
    0.286, "-", "spm1984", "g T_p/U = 0.286 (g F/U^2)^(1/3); by a public transcription", Trust::second_hand};
inline constexpr Sourced zero_crossing_over_peak{0.710370, "-", "",
                                                 "T_z/T_p of the Pierson-Moskowitz spectrum", Trust::derived};

}  // namespace bide::constants
