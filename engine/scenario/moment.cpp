#include "bide/scenario/moment.hpp"

#include <charconv>
#include <cmath>

#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"

namespace bide::scenario {

std::optional<double> parse_hours(std::string_view text) {
  double value{};
  const char* const end = text.data() + text.size();
  const auto [stop, error] = std::from_chars(text.data(), end, value);
  if (error != std::errc() || !std::isfinite(value) || !(value >= 0)) return std::nullopt;
  const std::string_view unit(stop, static_cast<std::size_t>(end - stop));
  if (unit == "h") return value;
  if (unit == "min") return value * minute_s / hour_s;
  if (unit == "d") return value * day_s / hour_s;
  return std::nullopt;
}

std::optional<double> parse_moment(std::string_view text, double now_unix_s) {
  if (const auto hours = parse_hours(text)) return now_unix_s - *hours * hour_s;
  return parse_time_utc(text);
}

}  // namespace bide::scenario
