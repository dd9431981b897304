#include "bide/core/time_utc.hpp"

#include <doctest/doctest.h>

using namespace bide;

TEST_CASE("text to seconds since 1970") {
  // 1700000000 s since 1970 is 2023-11-14T22:13:20 (computed with cftime 1.6.2).
  CHECK(parse_time_utc("2023-11-14T22:13:20Z") == 1700000000.0);
  CHECK(parse_time_utc("2023-11-14 22:13:20") == 1700000000.0);
  CHECK(parse_time_utc("2023-11-14T22:13:20.25Z") == 1700000000.25);
  CHECK(parse_time_utc("1970-01-01T00:00Z") == 0.0);
  CHECK(parse_time_utc("1969-12-31T23:59:59Z") == -1.0);
  // 1051896 h since 1900-01-01 is 2020-01-01 (cftime 1.6.2), and 1900 lies 25567 days before 1970:
  // (1051896 - 25567 x 24) x 3600 = 1577836800.
  CHECK(parse_time_utc("2020-01-01T00:00:00Z") == 1577836800.0);
  // An offset east of Greenwich is ahead: 02:00 at +02:00 is midnight UTC.
  CHECK(parse_time_utc("2020-01-01T02:00+02:00") == 1577836800.0);
  CHECK(parse_time_utc("2019-12-31T19:30-04:30") == 1577836800.0);
}

TEST_CASE("text that names no instant is refused") {
  for (const char* text :
       {"", "2023", "2023-11-14", "2023-02-30T00:00Z", "2023-13-01T00:00Z", "2023-00-01T00:00Z",
        "2023-01-01T24:00Z", "2023-01-01T00:60Z", "2023-01-01T00:00:60Z", "2023-01-01T00:00:1Z",
        "2023-01-01T00:00:00.Z", "2023-01-01T00:00Zx", "2023-01-01T00:00+2:00", "2023-01-01T00:00+24:00",
        "2023-1-01T00:00Z", "-023-01-01T00:00Z", "0000-01-01T00:00Z", "2023/01/01T00:00Z",
        " 2023-01-01T00:00Z"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_time_utc(text).has_value());
  }
  CHECK(parse_time_utc("2024-02-29T00:00Z").has_value());
  CHECK_FALSE(parse_time_utc("2100-02-29T00:00Z").has_value());
}

TEST_CASE("fields that name no instant are refused, however large") {
  CHECK(unix_s_from_civil({2020, 1, 1, 0, 0, 0}) == 1577836800.0);
  for (const CivilTime& time :
       {CivilTime{2020, 257, 1, 0, 0, 0}, CivilTime{2020, 1, 257, 0, 0, 0}, CivilTime{2020, 13, 1, 0, 0, 0},
        CivilTime{2020, 0, 1, 0, 0, 0}, CivilTime{2020, 1, 32, 0, 0, 0}, CivilTime{2020, -255, 1, 0, 0, 0},
        CivilTime{2020, 1, 1, 24, 0, 0}, CivilTime{2020, 1, 1, 0, 60, 0}}) {
    CAPTURE(time.month);
    CAPTURE(time.day);
    CHECK_FALSE(unix_s_from_civil(time).has_value());
  }
}

TEST_CASE("seconds to text and fields") {
  CHECK(format_time_utc(1700000000.0) == "2023-11-14T22:13:20Z");
  CHECK(format_time_utc(-1.0) == "1969-12-31T23:59:59Z");
  CHECK(format_time_utc(1577836799.7) == "2020-01-01T00:00:00Z");
  for (double unix_s : {0.0, -86400.0 * 40000 + 5, 1577836800.0, 4102444799.0})
    CHECK(parse_time_utc(format_time_utc(unix_s)) == unix_s);
  const CivilTime leap = civil_from_unix_s(*parse_time_utc("2024-02-29T23:59:58Z"));
  CHECK(leap.month == 2);
  CHECK(leap.day == 29);
  CHECK(leap.second == 58.0);
  CHECK_FALSE(unix_s_from_civil({2023, 2, 29, 0, 0, 0}).has_value());
  CHECK_FALSE(unix_s_from_civil({2023, -2, 1, 0, 0, 0}).has_value());
}
