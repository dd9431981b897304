#include "cf/time.hpp"

#include <doctest/doctest.h>

#include <string>

#include "bide/core/time_utc.hpp"
#include "cf/refused.hpp"

using namespace bide::tool::cf;

namespace {

std::string decoded(double value, const std::string& units, const std::string& calendar) {
  return bide::format_time_utc(unix_s(read_time_units(units, calendar), value));
}

std::string refusal(const std::string& units, const std::string& calendar) {
  try {
    read_time_units(units, calendar);
  } catch (const Refused& wrong) {
    return wrong.what();
  }
  return "";
}

}  // namespace

// Expected: cftime 1.6.2.
TEST_CASE("times as cftime decodes them") {
  CHECK(decoded(1051896, "hours since 1900-01-01 00:00:00.0", "gregorian") == "2020-01-01T00:00:00Z");
  CHECK(decoded(1700000000, "seconds since 1970-01-01", "proleptic_gregorian") == "2023-11-14T22:13:20Z");
  CHECK(decoded(43289, "days since 1949-12-01 00:00:00", "standard") == "2068-06-08T00:00:00Z");
  CHECK(decoded(45000.25, "days since 1900-01-01 12:00", "") == "2023-03-17T18:00:00Z");
  CHECK(decoded(0.5, "days since 2024-02-28 12:00:00", "standard") == "2024-02-29T00:00:00Z");
  // The day before the reform, 4 October in the mixed calendar, is the 14th counted back by the Gregorian
  // one.
  CHECK(decoded(-1, "days since 1582-10-15", "standard") == "1582-10-14T00:00:00Z");
  CHECK(decoded(1, "days since 1582-10-04", "standard") == "1582-10-15T00:00:00Z");
}

// Expected: cftime 1.6.2, num2date.
TEST_CASE("an epoch before the reform depends on the calendar") {
  CHECK(decoded(737425, "days since 1-1-1 00:00:00", "standard") == "2019-12-31T00:00:00Z");
  CHECK(decoded(737424, "days since 0001-01-01 00:00:00", "proleptic_gregorian") == "2020-01-01T00:00:00Z");
  // Seven days apart in 1250: the leap days of 100, 200, 300, 500, 600, 700, 900, 1000 and 1100, less two.
  CHECK(decoded(262816, "days since 1250-06-01", "standard") == "1970-01-01T00:00:00Z");
  CHECK(decoded(262823, "days since 1250-06-01", "proleptic_gregorian") == "1970-01-01T00:00:00Z");
}

TEST_CASE("ways to write one epoch") {
  for (const char* epoch :
       {"1970-01-01", "1970-1-1", "1970-01-01 00:00", "1970-01-01T00:00:00Z", "1970-01-01 00:00:0.0",
        "1970-01-01 00:00:00 UTC", "1970-01-01 01:00:00 +1:00", "1969-12-31 19:00:00 -0500"})
    for (const char* unit : {"hours", "hour", "hr", "h", "Hours"})
      CHECK(decoded(1, std::string(unit) + " since " + epoch, "") == "1970-01-01T01:00:00Z");
  CHECK(decoded(1500, "milliseconds since 1970-01-01 00:00:00.5", "") == "1970-01-01T00:00:02Z");
}

TEST_CASE("what is no time of the real calendar is refused") {
  for (const char* calendar : {"360_day", "noleap", "365_day", "all_leap", "julian", "tai", "none"})
    CHECK(refusal("days since 2000-01-01", calendar) ==
          std::string("calendar: found \"") + calendar +
              "\"; allowed standard, gregorian or proleptic_gregorian");
  for (const char* units :
       {"", "Month", "months since 2000-01-01", "days since", "days since yesterday", "days since 2000-13-01",
        "days since 2001-02-29", "hours since 2000-01-01 25:00", "hours since 2000-01-01 00:00 +99:00",
        "days since 1582-10-10", "day as %Y%m%d.%f"})
    CHECK_MESSAGE(
        refusal(units, "standard").find("units: found \"" + std::string(units) + "\"; allowed days") == 0,
        units);
}
