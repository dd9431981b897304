#include "bide/weather/sun.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "bide/constants/sun.hpp"
#include "bide/core/units.hpp"

namespace bide::weather {
namespace {

using namespace constants;

constexpr double degrees_in_turn = 360, degrees_per_hour = 15, minutes_per_degree = 4;
constexpr double arcmin_per_deg = 60;

double radians(double degrees) {
  return degrees * (std::numbers::pi / 180);
}
double degrees(double radians) {
  return radians * (180 / std::numbers::pi);
}

double within_turn(double value, double turn) {
  return value - turn * std::floor(value / turn);
}
// To [-turn / 2, turn / 2).
double around_zero(double value, double turn) {
  return within_turn(value + turn / 2, turn) - turn / 2;
}

struct Place {  // of the sun on the sky, for all observers
  double declination_deg, equation_of_time_min, distance_AU;
};

Place sun_place(double unix_s) {
  const double c = (unix_s - j2000_unix_s) / julian_century_s;
  const double mean_longitude_deg =
      sun_mean_longitude_deg + c * (sun_mean_longitude_deg_century + c * sun_mean_longitude_deg_century2);
  const double anomaly =
      radians(sun_mean_anomaly_deg + c * (sun_mean_anomaly_deg_century + c * sun_mean_anomaly_deg_century2));
  const double eccentricity =
      earth_eccentricity + c * (earth_eccentricity_century + c * earth_eccentricity_century2);
  const double centre_deg =
      std::sin(anomaly) *
          (sun_centre_1_deg + c * (sun_centre_1_deg_century + c * sun_centre_1_deg_century2)) +
      std::sin(2 * anomaly) * (sun_centre_2_deg + c * sun_centre_2_deg_century) +
      std::sin(3 * anomaly) * sun_centre_3_deg;
  const double node = radians(moon_node_deg + c * moon_node_deg_century);
  const double nutation_deg = sun_nutation_deg * std::sin(node);
  const double longitude = radians(mean_longitude_deg + centre_deg + sun_aberration_deg + nutation_deg);
  const double obliquity =
      radians(obliquity_deg + c * obliquity_deg_century + obliquity_nutation_deg * std::cos(node));
  const double right_ascension_deg =
      degrees(std::atan2(std::cos(obliquity) * std::sin(longitude), std::cos(longitude)));
  const double equation_deg =
      mean_longitude_deg + sun_time_constant_deg - right_ascension_deg + nutation_deg * std::cos(obliquity);

  Place place;
  place.declination_deg = degrees(std::asin(std::sin(obliquity) * std::sin(longitude)));
  place.equation_of_time_min = minutes_per_degree * around_zero(equation_deg, degrees_in_turn);
  place.distance_AU = earth_orbit_axis_AU * (1 - eccentricity * eccentricity) /
                      (1 + eccentricity * std::cos(anomaly + radians(centre_deg)));
  return place;
}

}  // namespace

double refraction_deg(double elevation_deg) {
  // Below the horizon the formula is not valid; with the whole disc below it there is none.
  const double lowest_deg = -(sun_radius_deg + horizon_refraction_deg);
  if (elevation_deg < lowest_deg) return 0;
  const double argument_deg = elevation_deg + refraction_offset_deg2 / (elevation_deg + refraction_shift_deg);
  return std::max(0.0, refraction_scale_arcmin / std::tan(radians(argument_deg)) / arcmin_per_deg);
}

double horizon_elevation_deg() {
  return -(sun_radius_deg + horizon_refraction_deg);
}

double solar_hour(double unix_s, double longitude_deg, double equation_of_time_min) {
  const double utc_h = within_turn(unix_s, day_s) / hour_s;
  return within_turn(utc_h + longitude_deg / degrees_per_hour + equation_of_time_min / hour_min, day_h);
}

SunPosition sun_position(double unix_s, double latitude_deg, double longitude_deg) {
  const Place place = sun_place(unix_s);
  const double hour_angle =
      radians(degrees_per_hour * (solar_hour(unix_s, longitude_deg, place.equation_of_time_min) - day_h / 2));
  const double latitude = radians(latitude_deg), declination = radians(place.declination_deg);
  const double sine = std::sin(latitude) * std::sin(declination) +
                      std::cos(latitude) * std::cos(declination) * std::cos(hour_angle);
  SunPosition sun;
  sun.elevation_deg = degrees(std::asin(std::clamp(sine, -1.0, 1.0)));
  sun.apparent_elevation_deg = sun.elevation_deg + refraction_deg(sun.elevation_deg);
  const double from_south = std::atan2(std::sin(hour_angle), std::cos(hour_angle) * std::sin(latitude) -
                                                                 std::tan(declination) * std::cos(latitude));
  sun.azimuth_deg = within_turn(degrees(from_south) + degrees_in_turn / 2, degrees_in_turn);
  sun.declination_deg = place.declination_deg;
  sun.equation_of_time_min = place.equation_of_time_min;
  sun.distance_AU = place.distance_AU;
  return sun;
}

DayArc day_arc(double unix_s, double latitude_deg, double longitude_deg) {
  // Noon: hour angle zero, the equation of time taken at noon itself.
  double transit_s = unix_s;
  constexpr int rounds = 3;  // each shrinks the error by the day's share of the sun's motion, 1/365
  for (int round = 0; round < rounds; ++round) {
    const double hour = solar_hour(transit_s, longitude_deg, sun_place(transit_s).equation_of_time_min);
    transit_s -= hour_s * around_zero(hour - day_h / 2, day_h);
  }

  const double latitude = radians(latitude_deg), horizon = radians(horizon_elevation_deg());
  DayArc arc{DayKind::rises_and_sets, transit_s, transit_s, transit_s};
  for (const double sign : {-1.0, 1.0}) {
    double& crossing_s = sign < 0 ? arc.rise_unix_s : arc.set_unix_s;
    double at_s = transit_s;
    for (int round = 0; round < rounds; ++round) {
      const Place place = sun_place(at_s);
      const double declination = radians(place.declination_deg);
      const double cosine = (std::sin(horizon) - std::sin(latitude) * std::sin(declination)) /
                            (std::cos(latitude) * std::cos(declination));
      if (!(std::abs(cosine) < 1)) {
        const bool up = std::sin(latitude) * std::sin(declination) > std::sin(horizon);
        return {up ? DayKind::sun_stays_up : DayKind::sun_stays_down, transit_s, transit_s, transit_s};
      }
      const double from_noon_h = sign * degrees(std::acos(cosine)) / degrees_per_hour;
      const double now_h = around_zero(
          solar_hour(at_s, longitude_deg, place.equation_of_time_min) - day_h / 2 - from_noon_h, day_h);
      at_s -= hour_s * now_h;
    }
    crossing_s = at_s;
  }
  return arc;
}

}  // namespace bide::weather
