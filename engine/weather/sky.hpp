// Radiation from above: the sun through clear and cloudy air, and the long-wave of the sky.
//
// States: none. Inputs: refracted sun elevation, cloud cover as a fraction of the sky (0 to 1), air
// temperature, vapour pressure. Validity: sea level; hour-by-hour cloud (a monthly mean overestimates the sun
// by up to 40 %); the cloud law is a fit to Hamburg, carry 20 % on the sun and 5 % on the long-wave. Source:
// Haurwitz 1945, Kasten & Czeplak 1980, Erbs 1982, Arens 2015, Brutsaert 1975, Bras 1990.
#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>

#include "bide/constants/weather.hpp"
#include "bide/core/moist_air.hpp"

namespace bide::weather {

// Global irradiance on the horizontal under a clear sky (Haurwitz 1945).
// @param apparent_elevation_deg of the sun, with refraction, deg, [-90, 90]
// @return W/m2; 0 with the sun at or below the horizon
inline double clear_sky_irradiance_W_m2(double apparent_elevation_deg) {
  using namespace constants;
  const double sine = std::sin(apparent_elevation_deg * (std::numbers::pi / 180));
  if (sine <= 0) return 0;
  return haurwitz_scale_W_m2 * sine * std::exp(-haurwitz_extinction / sine);
}

// Share of the clear-sky irradiance that clouds let through (Kasten & Czeplak 1980).
// @param cloud_cover_fraction [0, 1]
// @return 1 for a clear sky, 0.25 when overcast
inline double cloud_transmission(double cloud_cover_fraction) {
  return 1 - constants::cloud_dimming * std::pow(cloud_cover_fraction, constants::cloud_dimming_power);
}

// Share of the global irradiance that is diffuse (Erbs, Klein & Duffie 1982).
// @param clearness global irradiance over what the sun would give on the horizontal without air, at least 0
// @return 1 under thick cloud, 0.165 from a clearness of 0.8 on
double diffuse_share(double clearness);

// Irradiance by sun and sky, mean over the radiating surface of a seated person in the open: the beam on the
// area that the person shows to the sun, whichever way they face (Fanger's projected areas), and the diffuse
// sky on the upper half of all directions (Arens 2015). What comes from below is the caller's. Times the
// radiating area, 0.7 of the skin, it is what falls on the person.
// @param apparent_elevation_deg of the sun, with refraction, deg, [-90, 90]
// @param distance_AU            to the sun, AU
// @param global_W_m2            on the horizontal, below the clouds, W/m2, at least 0
// @return W/m2; 0 with the sun at or below the horizon
double seated_irradiance_W_m2(double apparent_elevation_deg, double distance_AU, double global_W_m2);

// Emissivity of the sky: its long-wave radiation over that of a black body at air temperature. Brutsaert 1975
// for the clear sky, enhanced by cloud as in Bras 1990 eq. 2.43, limited to 1. Data from seven shores scatter
// by 13 to 32 W/m2 about such formulas.
// @param air_temperature_degC near the surface, degC
// @param vapour_pressure_Pa   near the surface, Pa, at least 0
// @param cloud_cover_fraction [0, 1]
// @return [0, 1]
inline double sky_emissivity(double air_temperature_degC, double vapour_pressure_Pa,
                             double cloud_cover_fraction) {
  using namespace constants;
  constexpr double pascals_per_hPa = 100;
  const double clear = brutsaert_scale * std::pow(vapour_pressure_Pa / pascals_per_hPa /
                                                      (air_temperature_degC + zero_celsius_K),
                                                  brutsaert_power);
  return std::min(1.0, std::max(clear, sky_emissivity_least.value) *
                           (1 + cloud_longwave_gain * cloud_cover_fraction * cloud_cover_fraction));
}

// Temperature of the black body that radiates as much as the sky.
// @param air_temperature_degC near the surface, degC
// @param emissivity           of the sky, [0, 1]
// @return degC
inline double sky_temperature_degC(double air_temperature_degC, double emissivity) {
  return (air_temperature_degC + constants::zero_celsius_K) * std::sqrt(std::sqrt(emissivity)) -
         constants::zero_celsius_K;
}

}  // namespace bide::weather
