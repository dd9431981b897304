#include "bide/report/words/words.hpp"

#include <doctest/doctest.h>

#include <limits>

#include "bide/report/words/input.hpp"

using namespace bide::report;
using bide::person_label;

TEST_CASE("two significant figures") {
  CHECK(two_figures(0) == "0");
  CHECK(two_figures(14.4) == "14");
  CHECK(two_figures(9.96) == "10");
  CHECK(two_figures(9.94) == "9.9");
  CHECK(two_figures(0.0996) == "0.10");
  CHECK(two_figures(0.0344) == "0.034");
  CHECK(two_figures(104) == "100");
  CHECK(two_figures(15499) == "15,000");
  CHECK(two_figures(1234567) == "1,200,000");
  CHECK(two_figures(-3.14159) == "-3.1");
  CHECK(two_figures(-123456) == "-120,000");
  CHECK(two_figures(std::numeric_limits<double>::quiet_NaN()) == "unknown");
}

TEST_CASE("temperatures are whole degrees, without minus nought") {
  CHECK(temperature(-0.4) == "0 °C");
  CHECK(temperature(-0.6) == "-1 °C");
  CHECK(temperature(33.5) == "34 °C");
}

// Nearest named part within two points, else per cent.
TEST_CASE("what is left of a margin is told as a part of it") {
  CHECK(margin_left(0.33) == "a third of the margin left");
  CHECK(margin_left(0.24) == "a quarter of the margin left");
  CHECK(margin_left(0.68) == "two thirds of the margin left");
  CHECK(margin_left(0.41) == "41 % of the margin left");
  CHECK(margin_left(-0.2) == "0 % of the margin left");
  CHECK(margin_left_pct(0.33) == "33 % of the margin left");
}

TEST_CASE("inputs are told in words, people as letters") {
  CHECK(input_words("/crew/1/body_fat_pct") == "Person B: body fat");
  CHECK(input_words("/raft/floor_area_m2") == "raft: floor area");
  CHECK(input_words("/raft/canopy_heat_loss_position") == "raft: canopy heat loss");
  CHECK(input_words("/weather/wind_speed_m_s") == "weather: wind speed");
  CHECK(input_words("event 0: canopy_torn") == "canopy torn");
  CHECK(person_names({0, 2, 3}) == "Persons A, C and D");
}

TEST_CASE("what was put in is told with its unit, never as never, yes as yes") {
  CHECK(setting_words("/routine/bail_every_h", "2") == "routine: bail every 2 h");
  CHECK(setting_words("/routine/bail_every_h", "0") == "routine: bail never");
  CHECK(setting_words("/routine/inflate_floor", "false") == "routine: inflate floor: no");
  CHECK(setting_words("/raft/kind", "solas_20") == "raft: kind solas 20");
  CHECK(setting_words("/raft/floor_area_m2", "2") == "raft: floor area 2 m²");
  CHECK(setting_words("/raft/capacity_persons", "12") == "raft: capacity 12 persons");
}

TEST_CASE("minutes under two hours, days from two days on") {
  CHECK(duration(0) == "0 min");
  CHECK(duration(7 * 60) == "7 min");
  CHECK(duration(95 * 60) == "95 min");
  CHECK(duration(104 * 60) == "100 min");
  CHECK(duration(7200) == "2.0 h");
  CHECK(duration(14.4 * 3600) == "14 h");
  CHECK(duration(47 * 3600) == "47 h");
  CHECK(duration(102 * 3600) == "4.3 d");  // 4.25 d
  CHECK(duration(120 * 3600) == "5.0 d");
  CHECK(duration(295.2 * 3600) == "12.3 d");
}

TEST_CASE("a limit not reached says within what") {
  CHECK(not_reached(5 * 86400) == "not reached within 5 d");
  CHECK(not_reached(2.5 * 86400) == "not reached within 2.5 d");
  CHECK(not_reached(36 * 3600) == "not reached within 36 h");
  CHECK(not_reached(90 * 60) == "not reached within 90 min");
}

TEST_CASE("people are letters") {
  CHECK(person_label(0) == "Person A");
  CHECK(person_label(25) == "Person Z");
  CHECK(person_label(26) == "Person AA");
  CHECK(person_label(99) == "Person CV");
  CHECK(person_column_prefix(1) == "person_b_");
}

TEST_CASE("a clock is exact to the minute; beside a duration it is the time as that shows it") {
  const double start = 1927908000;                         // 2031-02-03T18:00:00Z
  CHECK(clock(start, 214.5 * 3600, 0) == "12 Feb 16:30");  // 8 d 22.5 h
  CHECK(clock(start, 3 * 3600 + 7 * 60 + 29, 0) == "3 Feb 21:07");
  const auto beside = [start](double since_start_s) { return clock(start, as_shown_s(since_start_s), 0); };
  CHECK(clock(start, 0, 0) == "3 Feb 18:00");
  CHECK(beside(62 * 60) == "3 Feb 19:02");            // "62 min"
  CHECK(beside(3 * 3600 + 7 * 60) == "3 Feb 21:06");  // "3.1 h"
  CHECK(beside(14.4 * 3600) == "4 Feb 08:00");        // "14 h"
  CHECK(beside(176.2 * 3600) == "11 Feb 01:12");      // "7.3 d": 175.2 h
}

TEST_CASE("UTC and ship's time side by side") {
  const double start = 1927908000;
  CHECK(zone_hours(-30) == -2);
  CHECK(zone_hours(0) == 0);
  CHECK(zone_hours(180) == 12);
  CHECK(zone_hours(7.4) == 0);
  CHECK(zone_hours(7.6) == 1);
  CHECK(zone_name(-2) == "UTC-2");
  CHECK(both_clocks(start, 0, -2) == "3 Feb 18:00 UTC (16:00 local)");
  CHECK(both_clocks(start, 7 * 3600, -2) == "4 Feb 01:00 UTC (3 Feb 23:00 local)");
  CHECK(both_clocks(start, 0, 0) == "3 Feb 18:00 UTC");
  CHECK(iso_minute(start + 29) == "2031-02-03T18:00Z");
}
