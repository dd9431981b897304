#include "bide/study/questions/help.hpp"
#include "bide/core/units.hpp"

#include <algorithm>
#include <optional>
#include <vector>

namespace bide::study {

namespace {

// Part of a straight line, 0 to 1 from its beginning to its end; empty when `end` lies before `begin`.
struct Part {
  double begin = 0, end = 1;
};

// Part of a linear change from `first` to `last` that is at or below a limit.
Part below(double first, double last, const std::optional<double>& limit) {
  if (!limit || (first <= *limit && last <= *limit)) return {};
  if (first > *limit && last > *limit) return {1, 0};
  const double crossing = (*limit - first) / (last - first);
  return first > *limit ? Part{crossing, 1} : Part{0, crossing};
}

}  // namespace

Help help_in_weather(const weather::Record& weather, const scenario::HeldBackAbove& limits, double needed_h,
                     double horizon_h) {
  const std::vector<double> ends_s = weather.line_ends_s();
  const double needed_s = needed_h * hour_s, horizon_s = horizon_h * hour_s;
  double worked_s = 0, held_back_s = 0;
  weather::Forcing<double> first = weather.at(0);
  for (std::size_t i = 1; i < ends_s.size() && ends_s[i - 1] < horizon_s; ++i) {
    const double from_s = ends_s[i - 1], length_s = std::min(ends_s[i], horizon_s) - from_s;
    const weather::Forcing<double> last = weather.at(from_s + length_s);
    const Part wind = below(first.wind_10m_m_s, last.wind_10m_m_s, limits.wind_speed_m_s);
    const Part waves = below(first.wave_height_m, last.wave_height_m, limits.wave_height_m);
    // Each is one interval, so their intersection is one as well.
    const Part work{std::max(wind.begin, waves.begin), std::min(wind.end, waves.end)};
    first = last;
    if (work.end < work.begin) {
      held_back_s += length_s;
      continue;
    }
    const double part_s = (work.end - work.begin) * length_s;
    if (needed_s <= worked_s + part_s) {
      const double at_s = from_s + work.begin * length_s + (needed_s - worked_s);
      return {at_s / hour_s, (held_back_s + work.begin * length_s) / hour_s, false};
    }
    worked_s += part_s;
    held_back_s += length_s - part_s;
  }
  Help none;
  none.held_back_h = held_back_s / hour_s;
  none.no_weather = !(worked_s > 0);
  return none;
}

Help help_of(const scenario::Rescue& rescue, double needed_h, const weather::Record& weather,
             double horizon_h) {
  if (rescue.held_back_above) return help_in_weather(weather, *rescue.held_back_above, needed_h, horizon_h);
  Help help;
  help.at_h = needed_h;
  return help;
}

}  // namespace bide::study
