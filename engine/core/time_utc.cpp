#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"

#include <fmt/format.h>

#include <charconv>
#include <chrono>
#include <cmath>

namespace bide {
namespace {

constexpr int last_year = 9999, months_per_year = 12, longest_month = 31;

// Takes exactly `digits` decimal digits off the front.
bool take_number(std::string_view& text, std::size_t digits, int& value) {
  if (text.size() < digits) return false;
  for (char c : text.substr(0, digits))
    if (c < '0' || c > '9') return false;
  std::from_chars(text.data(), text.data() + digits, value);
  text.remove_prefix(digits);
  return true;
}

bool take(std::string_view& text, std::string_view one_of) {
  if (text.empty() || one_of.find(text.front()) == std::string_view::npos) return false;
  text.remove_prefix(1);
  return true;
}

// ":ss" or ":ss.fff" if there is one; false when what follows the colon is no second.
bool take_second(std::string_view& text, double& second) {
  if (text.empty() || text.front() != ':') return true;
  text.remove_prefix(1);
  int whole = 0;
  if (!take_number(text, 2, whole)) return false;
  second = whole;
  if (!take(text, ".")) return true;
  double scale = 1;
  const std::size_t before = text.size();
  while (!text.empty() && text.front() >= '0' && text.front() <= '9') {
    constexpr double ten = 10;
    scale /= ten;
    second += scale * (text.front() - '0');
    text.remove_prefix(1);
  }
  return text.size() < before;
}

// "Z", "+hh:mm", "-hh:mm" or nothing.
bool take_offset(std::string_view& text, double& offset_s) {
  offset_s = 0;
  if (text.empty() || take(text, "Z")) return true;
  const double sign = text.front() == '-' ? -1 : 1;
  int hours = 0, minutes = 0;
  if (!take(text, "+-") || !take_number(text, 2, hours) || !take(text, ":") ||
      !take_number(text, 2, minutes) || hours >= day_h || minutes >= hour_min)
    return false;
  offset_s = sign * (hours * hour_s + minutes * minute_s);
  return true;
}

}  // namespace

std::optional<double> unix_s_from_civil(const CivilTime& time) {
  using namespace std::chrono;
  // std::chrono keeps months and days in a byte, which would wrap.
  if (time.year < 1 || time.year > last_year || time.month < 1 || time.month > months_per_year ||
      time.day < 1 || time.day > longest_month)
    return std::nullopt;
  const year_month_day date{year(time.year), month(static_cast<unsigned>(time.month)),
                            day(static_cast<unsigned>(time.day))};
  if (!date.ok() || time.hour < 0 || time.hour >= day_h || time.minute < 0 || time.minute >= hour_min ||
      !(time.second >= 0 && time.second < minute_s))
    return std::nullopt;
  const double days = static_cast<double>(sys_days(date).time_since_epoch().count());
  return days * day_s + time.hour * hour_s + time.minute * minute_s + time.second;
}

CivilTime civil_from_unix_s(double unix_s) {
  using namespace std::chrono;
  const double whole_days = std::floor(unix_s / day_s);
  const year_month_day date{sys_days(days(static_cast<int>(whole_days)))};
  double rest_s = unix_s - whole_days * day_s;
  CivilTime time;
  time.year = static_cast<int>(date.year());
  time.month = static_cast<int>(static_cast<unsigned>(date.month()));
  time.day = static_cast<int>(static_cast<unsigned>(date.day()));
  time.hour = static_cast<int>(rest_s / hour_s);
  rest_s -= time.hour * hour_s;
  time.minute = static_cast<int>(rest_s / minute_s);
  time.second = rest_s - time.minute * minute_s;
  return time;
}

std::optional<double> parse_time_utc(std::string_view text) {
  CivilTime time;
  double offset_s = 0;
  constexpr std::size_t year_digits = 4;
  const bool read = take_number(text, year_digits, time.year) && take(text, "-") &&
                    take_number(text, 2, time.month) && take(text, "-") && take_number(text, 2, time.day) &&
                    take(text, "T ") && take_number(text, 2, time.hour) && take(text, ":") &&
                    take_number(text, 2, time.minute) && take_second(text, time.second) &&
                    take_offset(text, offset_s) && text.empty();
  if (!read) return std::nullopt;
  const std::optional<double> local = unix_s_from_civil(time);
  if (!local) return std::nullopt;
  return *local - offset_s;
}

std::string format_time_utc(double unix_s) {
  const CivilTime t = civil_from_unix_s(std::round(unix_s));
  return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}Z", t.year, t.month, t.day, t.hour, t.minute,
                     static_cast<int>(t.second));
}

}  // namespace bide
