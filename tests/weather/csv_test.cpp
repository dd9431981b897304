#include "bide/weather/csv.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace bide::weather;

namespace {

std::string only_problem(const std::string& text) {
  const Rows rows = parse_weather_csv(text);
  REQUIRE(rows.problems.size() == 1);
  return rows.problems[0];
}

}  // namespace

TEST_CASE("columns in any order, empty fields missing") {
  const Rows rows = parse_weather_csv(
      "wind_speed_m_s,time_utc,air_temperature_degC,relative_humidity_pct,rain_mm_h,cloud_cover_fraction\n"
      "8.5,2031-02-03T18:00:00Z,12.25,80,,0.5\n"
      ",2031-02-03 19:00,12,,2.5,1\n");
  CHECK(rows.problems.empty());
  REQUIRE(rows.rows.size() == 2);
  CHECK(rows.rows[1].unix_s - rows.rows[0].unix_s == 3600);
  CHECK(rows.rows[0].value[index(Quantity::wind_speed)] == 8.5);
  CHECK(rows.rows[0].value[index(Quantity::air_temperature)] == 12.25);
  CHECK(rows.rows[0].value[index(Quantity::relative_humidity)] == 80.0);
  CHECK_FALSE(rows.rows[0].value[index(Quantity::rain)].has_value());
  CHECK_FALSE(rows.rows[1].value[index(Quantity::wind_speed)].has_value());
  CHECK(rows.rows[1].value[index(Quantity::rain)] == 2.5);
  CHECK(rows.rows[1].line == 3);
}

TEST_CASE("lines that begin with # are comments, whatever they hold, and keep their number") {
  for (const std::string end : {"\n", "\r\n", "\r"}) {
    const Rows rows =
        parse_weather_csv("\xEF\xBB\xBF# from \"a, b.nc\"" + end + "#" + end + "time_utc,rain_mm_h" + end +
                          "# one \" alone" + end + "2031-02-03T18:00Z,1" + end);
    CHECK(rows.problems.empty());
    REQUIRE(rows.rows.size() == 1);
    CHECK(rows.rows[0].line == 5);
  }
  CHECK(only_problem("# a\ntime_utc,rain_mm_h\n2031-02-03T18:00Z,#\n") ==
        "line 3: rain_mm_h \"#\" is no number");
}

TEST_CASE("problems name their line and the nearest column") {
  const std::string unknown = only_problem("time_utc,wind_speed_ms\n");
  CHECK(unknown.find("line 1: unknown column \"wind_speed_ms\"") == 0);
  CHECK(unknown.find("wind_speed_m_s") != std::string::npos);
  CHECK(only_problem("wind_speed_m_s\n5\n") == "line 1: no column \"time_utc\"");
  CHECK(only_problem("time_utc,rain_mm_h,rain_mm_h\n") == "line 1: column \"rain_mm_h\" twice");
  CHECK(only_problem("time_utc,dew_point_degC,relative_humidity_pct\n").find("keep one") !=
        std::string::npos);
  CHECK(only_problem("time_utc,rain_mm_h\n2031-02-03T18:00Z\n") == "line 2: 1 fields, the header has 2");
  CHECK(only_problem("time_utc,rain_mm_h\nyesterday,1\n").find("line 2: time_utc \"yesterday\"") == 0);
  CHECK(only_problem("time_utc,rain_mm_h\n2031-02-03T18:00Z,wet\n") ==
        "line 2: rain_mm_h \"wet\" is no number");
  CHECK(only_problem("time_utc,cloud_cover_fraction\n2031-02-03T18:00Z,7\n") ==
        "line 2: cloud cover 7 of the sky is outside 0 to 1");
  CHECK(only_problem("time_utc,\"rain\n") == "line 1: a quote is never closed");
  CHECK(parse_weather_csv("").rows.empty());
}
