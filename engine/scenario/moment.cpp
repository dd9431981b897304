#include "bide/scenario/moment.hpp"

#include "bide/core/csv.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"

namespace bide::scenario {

std::optional<double> parse_hours(std::string_view text) {
  const std::size_t number_ends = text.find_last_of("0123456789.") + 1;
  const std::optional<double> value = parse_number(text.substr(0, number_ends));
  if (!value || !(*value >= 0)) return std::nullopt;
  const std::string_view unit = text.substr(number_ends);
  if (unit == "h") return value;
  if (unit == "min") return *value * minute_s / hour_s;
  if (unit == "d") return *value * day_s / hour_s;
  return std::nullopt;
}

std::optional<double> parse_moment(std::string_view text, double now_unix_s) {
  if (const auto hours = parse_hours(text)) return now_unix_s - *hours * hour_s;
  return parse_time_utc(text);
}

}  // namespace bide::scenario
