// Position of the sun, its rise and set, and its distance.
//
// States: none. Inputs: seconds since 1970-01-01 UTC, geographic degrees (north and east positive).
// Validity: 1950 to 2100; within 0.02 deg of the NREL solar position algorithm on its published example and
// eleven computed places (refracted elevation, pressure 980 to 1013 hPa), distance within 1e-4 AU, rise and
// set within half a minute (a minute at 74 deg latitude). The pole itself is accepted; its azimuth has no
// meaning. Source: Meeus 1998, chapters 16, 22, 25, 28 (low-precision theory).
#pragma once

namespace bide::weather {

struct SunPosition {
  double elevation_deg;           // geometric, of the disc's centre
  double apparent_elevation_deg;  // with refraction of standard air
  double azimuth_deg;             // from north, clockwise, [0, 360)
  double declination_deg;
  double equation_of_time_min;  // apparent minus mean solar time
  double distance_AU;
};
// Position of the sun at an instant and place.
// @param unix_s        s since 1970-01-01 UTC, years 1950 to 2100
// @param latitude_deg  deg north, [-90, 90]
// @param longitude_deg deg east, [-180, 180]
SunPosition sun_position(double unix_s, double latitude_deg, double longitude_deg);

// What refraction adds to a geometric elevation.
// @param elevation_deg geometric elevation, deg, [-90, 90]
// @return deg; 0 well below the horizon
double refraction_deg(double elevation_deg);

// Geometric elevation of the sun's centre when its upper limb is on the horizon.
// @return deg, about -0.83
double horizon_elevation_deg();

// Local apparent solar time: 12 when the sun crosses the meridian.
// @param unix_s               s since 1970-01-01 UTC
// @param longitude_deg        deg east
// @param equation_of_time_min apparent minus mean solar time, min
// @return h, [0, 24)
double solar_hour(double unix_s, double longitude_deg, double equation_of_time_min);

enum class DayKind { rises_and_sets, sun_stays_up, sun_stays_down };

// A solar day: rise precedes transit (noon), set follows it, whatever the date line or midnight UTC. Rise and
// set equal transit when the sun does not cross the horizon.
struct DayArc {
  DayKind kind;
  double rise_unix_s, transit_unix_s, set_unix_s;
};
// The solar day whose noon is nearest to an instant.
// @param unix_s        s since 1970-01-01 UTC, years 1950 to 2100
// @param latitude_deg  deg north, [-90, 90]
// @param longitude_deg deg east, [-180, 180]
DayArc day_arc(double unix_s, double latitude_deg, double longitude_deg);

}  // namespace bide::weather
