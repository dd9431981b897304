// Day and night against published almanacs, where mistakes are likely: poles, date line, leap days, seasons.
#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "bide/core/time_utc.hpp"
#include "bide/weather/sun.hpp"

using namespace bide;
using namespace bide::weather;

namespace {

double unix_s(const char* text) {
  return parse_time_utc(text).value();
}

double degrees(double whole, double minutes, double seconds) {
  return std::copysign(std::abs(whole) + minutes / 60 + seconds / 3600, whole);
}

}  // namespace

TEST_CASE("the sun is overhead where the almanac says, on both sides of the date line, whatever leap days") {
  // Sun and Polaris Ephemeris for land surveyors (J. Wahl, cadastral.com; spot-checked by its author with the
  // Astronomical Almanac), 0 h UT: declination, Greenwich hour angle, equation of time. 1 January falls by
  // 3 minutes of arc between 1999 and 2013 because of where the leap days lie.
  struct Row {
    const char* day;
    double declination_deg, hour_angle_deg, equation_min;
  };
  const Row rows[] = {
      {"1999-01-01T00:00:00Z", degrees(-23, 3, 9.3), degrees(179, 12, 41.8), -(3 + 9.21 / 60)},
      {"1999-08-15T00:00:00Z", degrees(14, 15, 22.8), degrees(178, 50, 23.6), -(4 + 38.43 / 60)},
      {"1999-09-21T00:00:00Z", degrees(0, 57, 52.8), degrees(181, 39, 14.4), 6 + 36.96 / 60},
      {"2009-11-15T00:00:00Z", degrees(-18, 27, 35.8), degrees(183, 51, 54.5), 15 + 27.63 / 60},
      {"2013-01-01T00:00:00Z", degrees(-23, 0, 8.9), degrees(179, 8, 29.6), -(3 + 26.02 / 60)},
      {"2013-01-20T00:00:00Z", degrees(-20, 7, 41.5), degrees(177, 15, 47.9), -(10 + 56.81 / 60)}};
  for (const Row& row : rows) {
    CAPTURE(std::string(row.day));
    // West of Greenwich by the hour angle; beyond 180 that is east.
    const double longitude_deg = -std::remainder(row.hour_angle_deg, 360);
    const SunPosition sun = sun_position(unix_s(row.day), row.declination_deg, longitude_deg);
    CHECK(std::abs(sun.declination_deg - row.declination_deg) < 0.005);
    CHECK(std::abs(sun.equation_of_time_min - row.equation_min) < 0.03);
    CHECK(sun.elevation_deg > 89.99);
    CHECK(sun_position(unix_s(row.day), -row.declination_deg, longitude_deg + 180).elevation_deg < -89.99);
    // A quarter of the way round the earth it is on the horizon.
    CHECK(std::abs(sun_position(unix_s(row.day), 0, longitude_deg + 90).elevation_deg) < 0.01);
  }
  CHECK(-std::remainder(rows[3].hour_angle_deg, 360) > 176);
  CHECK(-std::remainder(rows[0].hour_angle_deg, 360) < -179);
}

TEST_CASE("at a pole the sun rises once a year and sets once, everywhere at the same time") {
  // U.S. Naval Observatory, Rise and Set for the Sun for 2022: North Pole rise 18 March 13:02, set
  // 25 September 04:13; South Pole set 22 March 18:07, rise 20 September 21:52. The sun takes half an hour
  // for a hundredth of a degree there.
  struct Row {
    const char* time;
    double latitude_deg;
    bool rises;
  };
  for (const Row& row : {Row{"2022-03-18T13:02:00Z", 90, true}, Row{"2022-09-25T04:13:00Z", 90, false},
                         Row{"2022-03-22T18:07:00Z", -90, false}, Row{"2022-09-20T21:52:00Z", -90, true}}) {
    CAPTURE(std::string(row.time));
    const double at = unix_s(row.time);
    for (const double longitude_deg : {0.0, 90.0, 179.0, -120.0}) {
      const SunPosition sun = sun_position(at, row.latitude_deg, longitude_deg);
      CHECK(std::abs(sun.elevation_deg - horizon_elevation_deg()) < 0.01);
      CHECK(std::isfinite(sun.azimuth_deg));
    }
    for (const double days : {-30.0, -1.0, 1.0, 30.0}) {
      const DayArc arc = day_arc(at + days * 86400, row.latitude_deg, 0);
      CHECK(arc.kind == ((days > 0) == row.rises ? DayKind::sun_stays_up : DayKind::sun_stays_down));
    }
  }
}

TEST_CASE("seasons at 60 degrees south, 150 west, where sunset has the next date in UTC") {
  // U.S. Naval Observatory, Rise and Set for the Sun for 2019, W150 S60, universal time to the minute.
  struct Row {
    const char *rise, *set;
  };
  for (const Row& row : {Row{"2019-01-01T12:43:00Z", "2019-01-02T07:23:00Z"},
                         Row{"2019-03-31T16:27:00Z", "2019-04-01T03:40:00Z"},
                         Row{"2019-06-21T19:06:00Z", "2019-06-22T00:58:00Z"},
                         Row{"2019-09-30T15:24:00Z", "2019-10-01T04:18:00Z"},
                         Row{"2019-12-20T12:32:00Z", "2019-12-21T07:24:00Z"}}) {
    CAPTURE(std::string(row.rise));
    const DayArc arc = day_arc(unix_s(row.rise) + 3600, -60, -150);
    CHECK(arc.kind == DayKind::rises_and_sets);
    CHECK(std::abs(arc.rise_unix_s - unix_s(row.rise)) < 60);
    CHECK(std::abs(arc.set_unix_s - unix_s(row.set)) < 60);
    // The same meridian by its other name.
    CHECK(day_arc(unix_s(row.rise) + 3600, -60, 210).rise_unix_s ==
          doctest::Approx(arc.rise_unix_s).epsilon(1e-12));
  }
  // 180 east is 180 west.
  const double noon = unix_s("2024-02-29T00:00:00Z");
  CHECK(sun_position(noon, 10, 180).elevation_deg ==
        doctest::Approx(sun_position(noon, 10, -180).elevation_deg).epsilon(1e-9));
  CHECK(solar_hour(noon, 180, 0) == doctest::Approx(12));
  CHECK(solar_hour(noon, -180, 0) == doctest::Approx(12));
}

TEST_CASE("equinoxes and solstices keep their hour through a leap day") {
  // Earth's seasons by the U.S. Naval Observatory, universal time (from memory): March equinox 2023-03-20
  // 21:24, 2024-03-20 03:06 (18 h earlier, because of 29 February), 2025-03-20 09:01; June solstice
  // 2024-06-20 20:51, December solstice 2024-12-21 09:20. The sun moves by 0.4 degrees of declination a day.
  for (const char* equinox : {"2023-03-20T21:24:00Z", "2024-03-20T03:06:00Z", "2025-03-20T09:01:00Z"})
    CHECK(std::abs(sun_position(unix_s(equinox), 0, 0).declination_deg) < 0.005);
  CHECK(sun_position(unix_s("2024-06-20T20:51:00Z"), 0, 0).declination_deg ==
        doctest::Approx(23.44).epsilon(2e-4));
  CHECK(sun_position(unix_s("2024-12-21T09:20:00Z"), 0, 0).declination_deg ==
        doctest::Approx(-23.44).epsilon(2e-4));
  // 29 February is a day of 24 h between the 28th and 1 March; 1900 and 2100 have none.
  CHECK(unix_s("2024-03-01T00:00:00Z") - unix_s("2024-02-28T00:00:00Z") == 2 * 86400);
  CHECK(unix_s("2023-03-01T00:00:00Z") - unix_s("2023-02-28T00:00:00Z") == 86400);
  CHECK(unix_s("2000-03-01T00:00:00Z") - unix_s("2000-02-28T00:00:00Z") == 2 * 86400);
  CHECK_FALSE(parse_time_utc("2023-02-29T00:00:00Z"));
  CHECK_FALSE(parse_time_utc("2100-02-29T00:00:00Z"));
}
