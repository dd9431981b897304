#include "bide/weather/sun.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "bide/core/time_utc.hpp"

using namespace bide;
using namespace bide::weather;

namespace {

double unix_s(const char* text) {
  return parse_time_utc(text).value();
}

// Hours of the UTC day that holds the instant.
double utc_hour(double at_s) {
  return (at_s - 86400 * std::floor(at_s / 86400)) / 3600;
}

// Difference of two angles, or of two hours of the day, round the circle.
double apart(double a, double b, double turn) {
  return std::abs(std::remainder(a - b, turn));
}

struct Row {
  const char* time;
  double latitude_deg, longitude_deg, zenith_deg, azimuth_deg, elevation_deg, declination_deg, equation_min,
      distance_AU;
};

// Computed with nrel-spa 2.0.2 (refraction 0.5667 deg at the horizon, elevation 0).
constexpr Row rows[] = {{"2024-01-15T13:00:00Z", 50, -20, 71.40295157100, 172.8089706308, 18.5471282693,
                         -21.15808468676, -9.23971493342, 0.9836533081435},
                        {"2024-07-15T16:30:00Z", 50, -20, 45.95275803548, 248.6635740399, 44.0300367883,
                         21.36317168618, -6.07827488804, 1.016409302302},
                        {"2024-03-20T08:15:00Z", 56, 3, 71.21365678072, 120.0097216780, 18.7365908945,
                         0.08276491547498, -7.35176865148, 0.9959219235974},
                        {"2024-10-01T17:45:30Z", 45, -5, 88.02434953918, 263.2399241481, 1.67758003794,
                         -3.583245448084, 10.5944347453, 1.001017967153},
                        {"2024-06-21T16:00:00Z", 15, -70, 12.99694186107, 47.94817926124, 76.9993938937,
                         23.43636522243, -1.95441035957, 1.016245848154},
                        {"2024-12-21T03:30:00Z", -50, 90, 39.13564014386, 61.06724508528, 50.8505017878,
                         -23.43691060989, 1.88805434391, 0.9837452938483},
                        {"2024-01-31T21:45:00Z", 57, -145, 74.29436705159, 177.9206463382, 15.6457049801,
                         -17.33356607540, -13.3867011664, 0.9852137531768},
                        {"2024-09-22T21:20:00Z", 0, -140, 1.907481099388, 265.8087107720, 88.0920151380,
                         -0.1394224407106, 7.61460465418, 1.003486142426},
                        {"2024-06-21T22:00:00Z", 74, 30, 82.44764946978, 359.5346484377, 7.43262014141,
                         23.43205720352, -2.00830509508, 1.016261396175},
                        {"2024-07-01T16:20:00Z", -58, -65, 80.94226683742, 0.9360510499275, 8.95528396425,
                         23.04036662025, -4.01571798112, 1.016688328885}};

}  // namespace

TEST_CASE("sun position: the published example of the NREL algorithm") {
  // Reda & Andreas 2004 table A5.1: zenith 50.11162, azimuth 194.340241, elevation without
  // refraction 39.872046, R 0.9965422974 AU (820 hPa, 1830 m: refraction there is 0.003 deg less than at the
  // sea).
  const double at = unix_s("2003-10-17T12:30:30-07:00");
  const SunPosition sun = sun_position(at, 39.742476, -105.1786);
  CHECK(std::abs(90 - sun.apparent_elevation_deg - 50.11162) < 0.01);
  CHECK(std::abs(sun.elevation_deg - 39.872046) < 0.01);
  CHECK(std::abs(sun.azimuth_deg - 194.340241) < 0.01);
  CHECK(std::abs(sun.declination_deg - -9.31434) < 0.01);
  CHECK(std::abs(sun.equation_of_time_min - 14.6415107696) < 0.03);
  CHECK(std::abs(sun.distance_AU - 0.9965422974) < 1e-4);
  // The next day at the same hour: 50.478260, 194.311132.
  const SunPosition next = sun_position(at + 86400, 39.742476, -105.1786);
  CHECK(std::abs(90 - next.apparent_elevation_deg - 50.478260) < 0.01);
  CHECK(std::abs(next.azimuth_deg - 194.311132) < 0.01);
}

TEST_CASE("sun position at sea in ten places, within 0.02 deg") {
  double worst_zenith = 0, worst_azimuth = 0;
  for (const Row& row : rows) {
    CAPTURE(std::string(row.time));
    const SunPosition sun = sun_position(unix_s(row.time), row.latitude_deg, row.longitude_deg);
    const double zenith_error = std::abs(90 - sun.apparent_elevation_deg - row.zenith_deg);
    // An azimuth error counts by the arc it spans on the sky.
    const double azimuth_error =
        apart(sun.azimuth_deg, row.azimuth_deg, 360) * std::sin(row.zenith_deg * 3.14159265358979 / 180);
    worst_zenith = std::max(worst_zenith, zenith_error);
    worst_azimuth = std::max(worst_azimuth, azimuth_error);
    CHECK(zenith_error < 0.02);
    CHECK(azimuth_error < 0.02);
    CHECK(std::abs(sun.elevation_deg - row.elevation_deg) < 0.01);
    CHECK(std::abs(sun.declination_deg - row.declination_deg) < 0.01);
    CHECK(std::abs(sun.equation_of_time_min - row.equation_min) < 0.03);
    CHECK(std::abs(sun.distance_AU - row.distance_AU) < 1e-4);
  }
  MESSAGE("worst error: zenith ", worst_zenith, " deg, azimuth (on the sky) ", worst_azimuth, " deg");
  // Deep night: no refraction, azimuth still right (nrel-spa 2.0.2).
  const SunPosition night = sun_position(unix_s("2024-04-10T18:00:00Z"), -10, 80);
  CHECK(std::abs(night.elevation_deg - -79.7198715241) < 0.01);
  CHECK(night.apparent_elevation_deg == night.elevation_deg);
  CHECK(apart(night.azimuth_deg, 261.4796363534, 360) < 0.05);
}

TEST_CASE("earth-sun distance at midnight, mountain standard time") {
  // NREL web calculator: 2015-01-02 0.983289204601 AU, 2015-08-02 1.01486146446 AU.
  CHECK(std::abs(sun_position(unix_s("2015-01-02T00:00:00-07:00"), 0, 0).distance_AU - 0.983289204601) <
        1e-4);
  CHECK(std::abs(sun_position(unix_s("2015-08-02T00:00:00-07:00"), 0, 0).distance_AU - 1.01486146446) < 1e-4);
}

TEST_CASE("rise, noon and set; also past midnight UTC") {
  struct Day {
    const char* time;
    double latitude_deg, longitude_deg, rise_h, transit_h, set_h;
  };
  // Computed with nrel-spa 2.0.2, hours of one UTC day; a rise or a set that falls on the other side of
  // midnight UTC belongs to a neighbouring solar day.
  constexpr Day days[] = {{"2024-01-15T13:00:00Z", 50, -20, 9.21654907380, 13.4875039623, 17.7650238153},
                          {"2024-07-15T16:30:00Z", 50, -20, 5.46788281308, 13.4344941116, 21.3896222770},
                          {"2024-03-20T08:15:00Z", 56, 3, 5.81927939420, 11.9218280616, 18.0442134170},
                          {"2024-10-01T17:45:30Z", 45, -5, 6.30738666520, 12.1580518003, 17.9960697385},
                          {"2024-06-21T16:00:00Z", 15, -70, 10.1905518696, 16.6994027120, 23.2081854320},
                          {"2024-12-21T03:30:00Z", -50, 90, 21.7800779258, 5.96943902505, 14.1571831781},
                          {"2024-01-31T21:45:00Z", 57, -145, 17.6891675841, 21.8898474795, 2.06513399457},
                          {"2024-09-22T21:20:00Z", 0, -140, 15.1524320904, 21.2065103873, 3.26646092736},
                          {"2024-04-10T07:00:00Z", -10, 80, 0.726609000252, 6.68709187511, 12.6454074041},
                          {"2024-07-01T16:20:00Z", -58, -65, 13.1079518512, 16.4003271097, 19.6960460852}};
  constexpr double half_a_minute_h = 0.5 / 60;
  for (const Day& day : days) {
    CAPTURE(std::string(day.time));
    const double midnight = 86400 * std::floor(unix_s(day.time) / 86400);
    // The rise is that of the same noon; the set is that of the UTC date (after or before that noon).
    const DayArc at_noon = day_arc(midnight + 3600 * day.transit_h, day.latitude_deg, day.longitude_deg);
    const DayArc at_set = day_arc(midnight + 3600 * day.set_h - 3600, day.latitude_deg, day.longitude_deg);
    CHECK(at_noon.kind == DayKind::rises_and_sets);
    CHECK(apart(utc_hour(at_noon.rise_unix_s), day.rise_h, 24) < half_a_minute_h);
    CHECK(apart(utc_hour(at_noon.transit_unix_s), day.transit_h, 24) < half_a_minute_h);
    CHECK(apart(utc_hour(at_set.set_unix_s), day.set_h, 24) < half_a_minute_h);
    CHECK(at_noon.rise_unix_s < at_noon.transit_unix_s);
    CHECK(at_noon.transit_unix_s < at_noon.set_unix_s);
    CHECK(at_noon.set_unix_s - at_noon.rise_unix_s < 86400);
    // Geometry at rise and set: the disc's centre stands 0.8333 deg below the horizon.
    CHECK(std::abs(sun_position(at_noon.rise_unix_s, day.latitude_deg, day.longitude_deg).elevation_deg -
                   horizon_elevation_deg()) < 1e-3);
    CHECK(std::abs(sun_position(at_noon.set_unix_s, day.latitude_deg, day.longitude_deg).elevation_deg -
                   horizon_elevation_deg()) < 1e-3);
  }
  // West of Greenwich the set falls on the next UTC date: 2024-02-01 at about 02:07.
  const DayArc gulf = day_arc(unix_s("2024-01-31T21:45:00Z"), 57, -145);
  CHECK(format_time_utc(gulf.set_unix_s).substr(0, 13) == "2024-02-01T02");
  // NREL web calculator, Golden, mountain standard time, 2015-01-02: 07:21:55, 12:04:45, 16:47:43.
  const DayArc golden = day_arc(unix_s("2015-01-02T12:00:00-07:00"), 39.742476, -105.1786);
  CHECK(std::abs(golden.rise_unix_s - unix_s("2015-01-02T07:21:55-07:00")) < 30);
  CHECK(std::abs(golden.transit_unix_s - unix_s("2015-01-02T12:04:45-07:00")) < 30);
  CHECK(std::abs(golden.set_unix_s - unix_s("2015-01-02T16:47:43-07:00")) < 30);
}

TEST_CASE("midnight sun and polar night") {
  CHECK(day_arc(unix_s("2024-06-21T22:00:00Z"), 74, 30).kind == DayKind::sun_stays_up);
  CHECK(day_arc(unix_s("2024-12-21T10:00:00Z"), 74, 30).kind == DayKind::sun_stays_down);
  CHECK(day_arc(unix_s("2024-06-21T10:00:00Z"), -74, 30).kind == DayKind::sun_stays_down);
  CHECK(day_arc(unix_s("2024-06-21T10:00:00Z"), 90, 0).kind == DayKind::sun_stays_up);
}

TEST_CASE("local apparent solar time") {
  // At transit the sundial shows noon; 2024-07-15 at 20 W transit is 13.4344941116 h UTC (nrel-spa 2.0.2).
  const double transit = unix_s("2024-07-15T00:00:00Z") + 3600 * 13.4344941116;
  CHECK(std::abs(solar_hour(transit, -20, -6.078) - 12) < 0.01);
  CHECK(solar_hour(unix_s("2024-07-15T23:00:00Z"), 30, 0) == doctest::Approx(1));
  CHECK(solar_hour(unix_s("2024-07-15T01:00:00Z"), -45, 0) == doctest::Approx(22));
}

TEST_CASE("refraction") {
  // The published example: 0.016332 deg at 39.872046 deg, 820 mbar, 11 degC. The standard air here (1010
  // mbar, 10 degC) gives 0.016332 x (1010/820) x (284/283) = 0.020187.
  CHECK(refraction_deg(39.872046) == doctest::Approx(0.020187).epsilon(1e-3));
  // About half a degree at the horizon (0.48 by this formula's author, from memory), nothing overhead or by
  // night.
  CHECK(std::abs(refraction_deg(0) - 0.48) < 0.01);
  CHECK(std::abs(refraction_deg(90)) < 1e-4);
  CHECK(refraction_deg(-1) == 0);
}
