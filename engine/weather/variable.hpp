// Weather that varies from hour to hour about the means of a month.
//
// States: none. Inputs: means and spreads, place and time, a seed. Outputs: one state of air and sea an hour;
// the same seed gives the same hours, and no hour depends on how long the run is. Validity: statistics of the
// open sea. Both components of the wind are normal about a constant mean with equal spread and exponential
// memory, so the speed follows a Rice law with the month's mean; direction itself is not used. A front is a
// normal quantity with a shorter memory: cloud, humidity and rain rise with it, and air is warm before it and
// cold behind. Waves grow with the time the wind has blown, as far as a fully developed sea, and outlast it
// as swell; swell from elsewhere is not in them. Sea temperature and pressure stay at their means; the daily
// cycle of air temperature is added where the record is built (load.cpp). Nothing
// here is a tropical storm. Source: constants/climate.hpp; Rice 1945; first-order autoregression.
#pragma once

#include <vector>

#include "bide/scenario/resolved_weather.hpp"
#include "bide/weather/sea.hpp"

namespace bide::weather {

struct Hour {
  double air_temperature_degC /* without its daily cycle */, relative_humidity_pct, wind_10m_m_s,
      cloud_cover_fraction, rain_mm_h;
  SeaState sea;
};

// One state an hour, from the start to the first whole hour at or past the end.
// @param weather    the means, and how they spread
// @param duration_s of the run, s, above 0
std::vector<Hour> variable_hours(const scenario::VariableWeather& weather, double duration_s);

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
