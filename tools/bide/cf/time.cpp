#include "time.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>

#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"
#include "refused.hpp"

namespace bide::tool::cf {
namespace {

constexpr std::string_view allowed_time_units =
    "days, hours, minutes, seconds or milliseconds since a date such as 1900-01-01 00:00:00";
constexpr std::string_view allowed_calendars = "standard, gregorian or proleptic_gregorian";
constexpr std::string_view blanks = " \t\n";

struct UnitName {
  double unit_s;
  std::array<std::string_view, 5> names;
};
constexpr double milli = 1e-3;
constexpr UnitName unit_names[] = {
    {day_s, {"days", "day", "d", "", ""}},
    {hour_s, {"hours", "hour", "hr", "hrs", "h"}},
    {minute_s, {"minutes", "minute", "min", "mins", ""}},
    {1, {"seconds", "second", "sec", "secs", "s"}},
    {milli, {"milliseconds", "millisecond", "msec", "msecs", "ms"}},
};

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& letter : out)
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
  return out;
}

// Takes the date and time apart from the front.
struct Reader {
  std::string_view rest;

  bool take(char letter) {
    if (rest.empty() || rest.front() != letter) return false;
    rest.remove_prefix(1);
    return true;
  }
  void skip_blanks() { rest.remove_prefix(std::min(rest.find_first_not_of(blanks), rest.size())); }
  std::optional<int> whole(std::size_t most_digits) {
    std::size_t digits = 0;
    while (digits < std::min(most_digits, rest.size()) && rest[digits] >= '0' && rest[digits] <= '9')
      ++digits;
    int value = 0;
    if (digits == 0) return std::nullopt;
    std::from_chars(rest.data(), rest.data() + digits, value);
    rest.remove_prefix(digits);
    return value;
  }
  // Whole seconds and a fraction of any length.
  std::optional<double> seconds() {
    const std::optional<int> whole_part = whole(2);
    if (!whole_part) return std::nullopt;
    double value = *whole_part, place = 1;
    constexpr double ten = 10;
    if (take('.'))
      while (const std::optional<int> digit = whole(1)) value += (place /= ten) * *digit;
    return value;
  }
};

// "Z", "UTC", "+1:00", "-0530", "+00" or nothing.
std::optional<double> read_zone_s(Reader& in) {
  in.skip_blanks();
  for (const std::string_view name : {"UTC", "GMT", "Z", "utc", "z"})
    if (in.rest == name) in.rest = {};
  if (in.rest.empty()) return 0;
  const double sign = in.rest.front() == '-' ? -1 : 1;
  if (!in.take('+') && !in.take('-')) return std::nullopt;
  const std::optional<int> hours = in.whole(2);
  in.take(':');
  const int minutes = in.whole(2).value_or(0);
  constexpr int longest_h = 14;
  if (!hours || *hours > longest_h || minutes >= hour_min || !in.rest.empty()) return std::nullopt;
  return sign * (*hours * hour_s + minutes * minute_s);
}

// How many days later the Julian calendar comes to a date than the Gregorian one: its leap days at the ends
// of centuries, less the two by which it begins earlier. 10 in 1582.
int julian_days_later(const CivilTime& date) {
  constexpr int century = 100, four_centuries = 400;
  const int year = date.month > 2 ? date.year : date.year - 1;
  return year / century - year / four_centuries - 2;
}

bool before_reform(const CivilTime& date) {
  constexpr int year = 1582, month = 10, first_gregorian_day = 15;
  if (date.year != year) return date.year < year;
  if (date.month != month) return date.month < month;
  return date.day < first_gregorian_day;
}

// In the mixed calendar the ten days after 4 October 1582 do not exist.
bool left_out_by_reform(const CivilTime& date) {
  constexpr int last_julian_day = 4, year = 1582, month = 10;
  return date.year == year && date.month == month && date.day > last_julian_day && before_reform(date);
}

std::optional<double> read_instant(std::string_view text, bool mixed_calendar) {
  Reader in{text};
  constexpr std::size_t year_digits = 4;
  CivilTime time;
  const auto year = in.whole(year_digits);
  const bool year_end = in.take('-');
  const auto month = in.whole(2);
  const bool month_end = in.take('-');
  const auto day = in.whole(2);
  if (!year || !year_end || !month || !month_end || !day) return std::nullopt;
  time.year = *year;
  time.month = *month;
  time.day = *day;
  if (!in.take('T')) in.skip_blanks();
  if (const auto hour = in.whole(2)) {
    time.hour = *hour;
    if (in.take(':')) {
      const auto minute = in.whole(2);
      if (!minute) return std::nullopt;
      time.minute = *minute;
      if (in.take(':')) {
        const auto second = in.seconds();
        if (!second) return std::nullopt;
        time.second = *second;
      }
    }
  }
  const auto zone_s = read_zone_s(in);
  if (!zone_s) return std::nullopt;
  const bool julian = mixed_calendar && before_reform(time);
  if (mixed_calendar && left_out_by_reform(time)) return std::nullopt;
  const std::optional<double> gregorian = unix_s_from_civil(time);
  if (!gregorian) return std::nullopt;
  return *gregorian - *zone_s + (julian ? day_s * julian_days_later(time) : 0);
}

}  // namespace

TimeUnits read_time_units(std::string_view units, std::string_view calendar) {
  const std::string name = lower(calendar);
  const bool mixed = name.empty() || name == "standard" || name == "gregorian";
  if (!mixed && name != "proleptic_gregorian")
    refuse("calendar: found \"{}\"; allowed {}", calendar, allowed_calendars);
  const std::string_view since = " since ";
  const std::size_t at = units.find(since);
  const auto wrong = [&] { refuse("units: found \"{}\"; allowed {}", units, allowed_time_units); };
  if (at == std::string_view::npos) wrong();
  const std::string unit = lower(units.substr(0, at));
  TimeUnits out;
  for (const UnitName& each : unit_names)
    if (!unit.empty() && std::find(each.names.begin(), each.names.end(), unit) != each.names.end())
      out.unit_s = each.unit_s;
  std::string_view instant = units.substr(at + since.size());
  instant.remove_prefix(std::min(instant.find_first_not_of(blanks), instant.size()));
  instant.remove_suffix(instant.size() - std::min(instant.find_last_not_of(blanks) + 1, instant.size()));
  const std::optional<double> epoch = read_instant(instant, mixed);
  if (out.unit_s == 0 || !epoch) wrong();
  out.epoch_unix_s = *epoch;
  return out;
}

double unix_s(const TimeUnits& units, double value) {
  return std::round(units.epoch_unix_s + units.unit_s * value);
}

}  // namespace bide::tool::cf
