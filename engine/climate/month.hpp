// What one month at one place is like: means, and how they spread from hour to hour.
//
// States: none. Inputs: place and month. Validity: of climate.hpp; the spread of wind assumes that both
// components of the wind spread equally and normally about their mean, so that the speed follows a Rice law
// (isotropic Gaussian winds; Monahan 2006 shows where real winds differ); rain and the spread of air
// temperature are laws of latitude alone (constants/climate.hpp), which miss dry eastern and wet western
// sides of an ocean: rain may be out by a factor of three. Source: climate.hpp, constants/climate.hpp.
#pragma once

#include <string>
#include <variant>

#include "bide/climate/climate.hpp"
#include "bide/constants/climate.hpp"

namespace bide::climate {

struct Month {
  double sea_temperature_degC, air_temperature_degC, relative_humidity_pct, wind_speed_m_s,
      cloud_cover_fraction, pressure_hPa;
  double wind_spread_m_s;           // standard deviation of each component of the wind
  double air_temperature_spread_K;  // standard deviation from hour to hour without the daily cycle
  double rain_mm_h;                 // mean over all hours
  double rain_share;                // of hours with rain
  double farthest_km;               // the cell farthest off that a mean was taken from
  std::string_view farthest;        // that mean, in words
};

// @param month 1 to 12
// @return the month; or why there is none, as words after the place's name: land, with the nearest sea, or
//         what nobody reported within 1,000 km (cloud: 3,000)
std::variant<Month, std::string> month_at(const Point& place, int month);

// A number of the zones of latitude.
// @param latitude_deg [-90, 90]; beyond the last middles the last value is returned
double by_latitude(Sourced constants::Zone::*number, double latitude_deg);

// Standard deviation of each of two equally spread normal components whose speed has this mean: the root of
// mean = s sqrt(pi/2) exp(-x/2) ((1 + x) I0(x/2) + x I1(x/2)), x = v^2 / (2 s^2) (Rice 1945).
// @param mean_speed_m_s   at least 0
// @param vector_speed_m_s speed of the mean vector, at least 0; at or above the mean speed the result is 0
// @return m/s
double component_spread_m_s(double mean_speed_m_s, double vector_speed_m_s);
// The mean speed of such a wind: the other way round.
double mean_speed_m_s(double component_spread_m_s, double vector_speed_m_s);
// The speed of the mean vector of such a wind.
// @param component_spread_m_s at least 0
// @return m/s; 0 where the spread alone gives the mean speed or more
double vector_speed_m_s(double mean_speed_m_s, double component_spread_m_s);

}  // namespace bide::climate
