// Weather that varies from hour to hour about the means of a month.
//
// States: none. Inputs: means and spreads, place and time, a seed. Outputs: one state of air and sea an hour;
// the same seed gives the same hours, and no hour depends on how long the run is. Validity: statistics of the
// open sea. Both components of the wind are normal about a constant mean with equal spread and exponential
// memory, so the speed follows a Rice law with the month's mean; direction itself is not used. A front is a
// normal quantity with a shorter memory: cloud, humidity and rain rise with it, and air is warm before it and
// cold behind. Waves grow with the time the wind has blown, as far as a fully developed sea, and outlast it
// as swell; swell from elsewhere is not in them. Sea temperature and pressure stay at their means. Nothing
// here is a tropical storm. Source: constants/climate.hpp; Rice 1945; first-order autoregression.
#pragma once

#include <cstdint>
#include <vector>

#include "bide/weather/record.hpp"

namespace bide::weather {

// What the weather varies about.
struct Climate {
  double air_temperature_degC, water_temperature_degC, relative_humidity_pct;
  double wind_speed_m_s;   // mean, at 10 m
  double wind_spread_m_s;  // standard deviation of each component
  double cloud_cover_fraction, pressure_hPa;
  double rain_mm_h;                 // mean over all hours
  double rain_share;                // of hours with rain, (0, 1); without rain it is not used
  double air_temperature_spread_K;  // standard deviation without the daily cycle
  double air_temperature_swing_K;   // half the difference of day and night
  double warmest_hour_local_h;      // local solar time
  std::uint32_t seed;
};

struct Hour {
  double air_temperature_degC, relative_humidity_pct, wind_10m_m_s, cloud_cover_fraction, rain_mm_h;
  SeaState sea;
};

// One state an hour, from the start to the first whole hour at or past the end.
std::vector<Hour> variable_hours(const Climate& climate, const Site& site);

// Waves of a wind, and what is left of older ones.
struct Waves {
  double wind_sea_m = 0;  // significant height
  double swell_m = 0, swell_period_s = 0;

  SeaState together(double wind_10m_m_s) const;
};
// Waves after a time of steady wind.
// @param wind_10m_m_s at least 0
// @param hours        above 0
Waves blown(Waves waves, double wind_10m_m_s, double hours);

}  // namespace bide::weather
