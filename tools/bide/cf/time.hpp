// Times of the CF conventions: numbers in a unit since an instant.
//
// States: none. Inputs: the attributes `units` and `calendar`. Validity: the unit is one of fixed length (a
// day and shorter); the calendar is the one in use (standard, gregorian, proleptic_gregorian). An instant
// before 15 October 1582 is read in the Julian calendar under `standard` and `gregorian`. Calendars of a
// model (360_day, noleap, all_leap), julian, tai and utc are refused. Source: CF conventions 1.10,
// section 4.4.
#pragma once

#include <string_view>

namespace bide::tool::cf {

struct TimeUnits {
  double unit_s = 0;        // length of the unit
  double epoch_unix_s = 0;  // the instant that 0 stands for
};

// Reads "hours since 1900-01-01 00:00:00.0" and its like. Throws Refused.
// @param units    the attribute
// @param calendar the attribute; empty is `standard`
TimeUnits read_time_units(std::string_view units, std::string_view calendar);

// @param value finite, in the unit
// @return s since 1970-01-01T00:00:00Z, rounded to the second
double unix_s(const TimeUnits& units, double value);

}  // namespace bide::tool::cf
