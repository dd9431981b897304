// Coordinated universal time as text and as seconds since 1970-01-01T00:00:00Z (no leap seconds, as POSIX).
//
// States: none. Inputs: ISO 8601 text, or civil fields of the proleptic Gregorian calendar. Validity: years 1
// to 9999. Source: ISO 8601-1:2019, the complete extended forms named at parse_time_utc.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace bide {

// Date and time of day, UTC.
struct CivilTime {
  int year = 1970, month = 1, day = 1, hour = 0, minute = 0;
  double second = 0;
};

// Seconds since 1970 of a date and time.
// @param time year in [1, 9999]
// @return s; empty when there is no such instant (30 February, hour 24, second 60)
std::optional<double> unix_s_from_civil(const CivilTime& time);
// Date and time of an instant.
// @param unix_s s since 1970-01-01T00:00:00Z
CivilTime civil_from_unix_s(double unix_s);

// Reads YYYY-MM-DDThh:mm, with optional :ss or :ss.fff, a blank in place of T, then Z, +hh:mm, -hh:mm or
// no zone (UTC).
// @return s since 1970-01-01T00:00:00Z; empty for any other text
std::optional<double> parse_time_utc(std::string_view text);

// Writes an instant as "2031-02-03T18:00:00Z", rounded to the second.
// @param unix_s s since 1970-01-01T00:00:00Z
std::string format_time_utc(double unix_s);

}  // namespace bide
