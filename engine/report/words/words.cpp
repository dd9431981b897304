#include "bide/report/words/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>

#include "bide/core/digits.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"

namespace bide::report {
namespace {

// To two significant figures.
double rounded_to_two(double value) {
  if (value == 0 || !std::isfinite(value)) return value;
  const double unit = std::pow(10.0, std::floor(std::log10(std::abs(value))) - 1);
  return std::round(value / unit) * unit;
}

constexpr double days_from_s = 2 * day_s;  // from here a time is told in days

constexpr const char* months[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                  "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

CivilTime clock_of(double start_unix_s, double since_start_s, int zone_h) {
  return civil_from_unix_s(std::round((start_unix_s + since_start_s) / minute_s) * minute_s +
                           zone_h * hour_s);
}

}  // namespace

std::string two_figures(double value) {
  if (!std::isfinite(value)) return "unknown";
  if (value == 0) return "0";
  // Rounded first, so that 9.96 becomes 10 and not 10.0.
  const double magnitude = std::floor(std::log10(std::abs(value)));
  const double unit = std::pow(10.0, magnitude - 1);
  const double whole = std::round(value / unit);
  const double steps = std::abs(whole) >= 100 ? magnitude + 1 : magnitude;
  if (steps >= 1) return with_thousands(fmt::format("{:.0f}", whole * unit));
  const int decimals = static_cast<int>(1 - steps);
  return fmt::format("{:.{}f}", value, std::min(decimals, 12));
}

std::string temperature(double degC) {
  if (!std::isfinite(degC)) return "unknown";
  return fmt::format("{:.0f} °C", std::round(degC) + 0.0);
}

std::string margin_left(double fraction) {
  struct Named {
    double fraction;
    const char* words;
  };
  constexpr Named named[] = {{0.25, "a quarter"},
                             {1.0 / 3, "a third"},
                             {0.5, "half"},
                             {2.0 / 3, "two thirds"},
                             {0.75, "three quarters"}};
  constexpr double near = 0.02;
  for (const Named& each : named)
    if (std::abs(fraction - each.fraction) <= near) return fmt::format("{} of the margin left", each.words);
  return margin_left_pct(fraction);
}

std::string margin_left_pct(double fraction) {
  return percent(100 * std::clamp(fraction, 0.0, 1.0)) + " of the margin left";
}

std::string person_names(const std::vector<int>& persons) {
  if (persons.size() == 1) return person_label(persons.front());
  std::string out = "Persons ";
  for (std::size_t i = 0; i < persons.size(); ++i) {
    if (i > 0) out += i + 1 == persons.size() ? " and " : ", ";
    out += crew_letters(persons[i], 'A');
  }
  return out;
}

std::string people(std::size_t persons) {
  return fmt::format("{} {}", persons, persons == 1 ? "person" : "people");
}

std::string capitalised(std::string words) {
  if (!words.empty())
    words.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(words.front())));
  return words;
}

std::string percent(double value) {
  return two_figures(value) + " %";
}

double as_shown_s(double seconds) {
  constexpr double day_part_s = day_s / 10;
  if (seconds >= days_from_s) return std::round(seconds / day_part_s) * day_part_s;
  if (seconds >= 2 * hour_s) return rounded_to_two(seconds / hour_s) * hour_s;
  const double minutes = std::round(seconds / minute_s);
  return (minutes < 10 ? minutes : rounded_to_two(minutes)) * minute_s;
}

std::string duration(double seconds) {
  if (!std::isfinite(seconds)) return "unknown";
  const double shown_s = as_shown_s(seconds);
  if (seconds >= days_from_s) return fmt::format("{:.1f} d", shown_s / day_s);
  if (seconds >= 2 * hour_s) return two_figures(shown_s / hour_s) + " h";
  return fmt::format("{:.0f} min", shown_s / minute_s);
}

std::string horizon(double seconds) {
  if (!std::isfinite(seconds)) return "unknown";
  if (seconds >= days_from_s) return fmt::format("{:.3g} d", seconds / day_s);
  if (seconds >= 2 * hour_s) return fmt::format("{:.3g} h", seconds / hour_s);
  return fmt::format("{:.3g} min", seconds / minute_s);
}

std::string not_reached(double horizon_s) {
  return "not reached within " + horizon(horizon_s);
}

std::string person_column_prefix(int index) {
  return "person_" + crew_letters(index, 'a') + "_";
}

int zone_hours(double longitude_deg) {
  constexpr double degrees_per_hour = 15;
  return std::clamp(static_cast<int>(std::lround(longitude_deg / degrees_per_hour)), -12, 12);
}

std::string zone_name(int zone_h) {
  return zone_h == 0 ? "UTC" : fmt::format("UTC{:+d}", zone_h);
}

std::string clock(double start_unix_s, double since_start_s, int zone_h) {
  const CivilTime time = clock_of(start_unix_s, since_start_s, zone_h);
  return fmt::format("{} {} {:02d}:{:02d}", time.day, months[time.month - 1], time.hour, time.minute);
}

std::string both_clocks(double start_unix_s, double since_start_s, int zone_h) {
  const std::string utc = clock(start_unix_s, since_start_s, 0) + " UTC";
  if (zone_h == 0) return utc;
  const CivilTime there = clock_of(start_unix_s, since_start_s, zone_h);
  const CivilTime here = clock_of(start_unix_s, since_start_s, 0);
  const std::string date =
      there.day == here.day ? "" : fmt::format("{} {} ", there.day, months[there.month - 1]);
  return fmt::format("{} ({}{:02d}:{:02d} local)", utc, date, there.hour, there.minute);
}

std::string iso_minute(double unix_s) {
  const CivilTime time = civil_from_unix_s(std::round(unix_s / minute_s) * minute_s);
  return fmt::format("{:04d}-{:02d}-{:02d}T{:02d}:{:02d}Z", time.year, time.month, time.day, time.hour,
                     time.minute);
}

}  // namespace bide::report
