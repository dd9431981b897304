// How results are put into words, so that no number looks better than it is.
//
// Rules: two significant figures; temperatures in whole degrees; minutes only under two hours, days and their
// tenths from two days on (two figures of hours would soon be hours wrong); a limit not reached
// says "not reached within 5 d"; people are Person A, B...; a clock time is exact to the minute, but
// beside a duration it is the start plus the time as that duration shows it, so that the two agree.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bide/core/people.hpp"

namespace bide::report {

inline constexpr const char* one_case =
    "One case, not a forecast: the scenario as it is. A range, where one is given, is over what nobody has "
    "measured.";

// Numbers as text. A value that is not finite reads "unknown".
std::string two_figures(double value);         // "14", "0.35", "15,000"
std::string temperature(double degC);          // "-3 °C"
std::string percent(double value);             // value in %: "6.2 %"
std::string margin_left(double fraction);      // "a third of the margin left"; 0..1 of the way to a limit
std::string margin_left_pct(double fraction);  // "34 % of the margin left", where two are set side by side
std::string duration(double seconds);          // "95 min", "14 h", "4.8 d"
double as_shown_s(double seconds);             // as duration() shows it, for a clock beside it
std::string horizon(double seconds);           // "5 d", "36 h"
std::string not_reached(double horizon_s);     // "not reached within 5 d"
std::string people(std::size_t persons);       // "1 person", "4 people"
std::string capitalised(std::string words);    // begins with a capital letter
std::string person_column_prefix(int index);   // index from 0: "person_a_"

// "Person A", "Persons A and C", "Persons A, B and C".
// @param persons places in the crew, from 0; at least one
std::string person_names(const std::vector<int>& persons);

// Nautical time zone of a longitude.
// @param longitude_deg deg east, [-180, 180]
// @return whole hours ahead of UTC, [-12, 12]
int zone_hours(double longitude_deg);
std::string zone_name(int zone_h);  // "UTC+3"

// The instant `since_start_s` after the start, to the minute: "3 Feb 18:05".
std::string clock(double start_unix_s, double since_start_s, int zone_h);
// "3 Feb 18:05 UTC (21:05 local)"; the local date only where it differs.
std::string both_clocks(double start_unix_s, double since_start_s, int zone_h);
// The clocks of one stay, beside a duration.
struct Clocks {
  double start_unix_s;
  int zone_h;  // whole hours ahead of UTC
  std::string both(double since_start_s) const {
    return both_clocks(start_unix_s, as_shown_s(since_start_s), zone_h);
  }
  std::string utc(double since_start_s) const {
    return clock(start_unix_s, as_shown_s(since_start_s), 0) + " UTC";
  }
};
// An instant rounded to the minute: "2031-02-03T18:05Z".
// @param unix_s s since 1970-01-01 UTC
std::string iso_minute(double unix_s);

}  // namespace bide::report
