#include "columns.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <optional>

#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/resolved_weather.hpp"
#include "refused.hpp"

namespace bide::tool::cf {
namespace {

using weather::Quantity;

// Series of one field put together.
struct Joined {
  Series all;
  std::vector<std::string> origin;
};

std::string degrees_words(const Place& place) {
  const double east = std::remainder(place.longitude_deg, 360.0);
  return fmt::format("{:.2f} {} {:.2f} {}", std::abs(place.latitude_deg), place.latitude_deg < 0 ? "S" : "N",
                     std::abs(east), east < 0 ? "W" : "E");
}

std::string origin_of(const Series& series) {
  std::string out = fmt::format("{} of {} ({})", series.variable, series.file, series.units);
  if (series.cell)
    out += fmt::format(", cell {}, {:.1f} km from the place", degrees_words(series.cell->centre),
                       series.cell->distance_km);
  const auto missing =
      std::count_if(series.value.begin(), series.value.end(), [](double v) { return std::isnan(v); });
  if (missing > 0) out += fmt::format(", {} of {} values missing", missing, series.value.size());
  if (series.preliminary > 0)
    out += fmt::format(", {} of {} values preliminary (expver)", series.preliminary, series.value.size());
  return out;
}

Joined join(const std::vector<const Series*>& parts, const Span& span) {
  struct Value {
    double value;
    const Series* from;
  };
  std::map<double, Value> by_time;
  Joined out;
  out.all = *parts.front();
  std::string held;
  for (const Series* part : parts) {
    out.origin.push_back(origin_of(*part));
    out.all.rounding = std::max(out.all.rounding, part->rounding);
    held += fmt::format("{}{}: {} holds {} to {}", held.empty() ? "" : ", ", part->file, part->variable,
                        format_time_utc(part->held.begin_unix_s), format_time_utc(part->held.end_unix_s));
    for (std::size_t i = 0; i < part->unix_s.size(); ++i) {
      const double value = part->value[i];
      const auto [at, fresh] = by_time.try_emplace(part->unix_s[i], Value{value, part});
      if (fresh || std::isnan(value)) continue;
      if (std::isnan(at->second.value)) at->second = {value, part};
      if (at->second.value != value)
        refuse("{}: {} and {} of {} contradict each other at {}: {} and {} {}", part->file, part->variable,
               at->second.from->variable, at->second.from->file, format_time_utc(part->unix_s[i]), value,
               at->second.value, facts(part->field).unit);
    }
  }
  if (by_time.empty() || by_time.begin()->first > span.begin_unix_s ||
      by_time.rbegin()->first < span.end_unix_s)
    refuse("{}; asked for {} to {}", held, format_time_utc(span.begin_unix_s),
           format_time_utc(span.end_unix_s));
  out.all.unix_s.clear();
  out.all.value.clear();
  for (const auto& [time, value] : by_time) {
    out.all.unix_s.push_back(time);
    out.all.value.push_back(value.value);
  }
  return out;
}

// The value within the plausible range, where rounding alone puts it outside.
double settled(Quantity q, double value, double rounding) {
  constexpr double hair = 1e-3;
  const weather::QuantityFacts& f = weather::facts(q);
  const double nearest = std::clamp(value, f.lowest, f.highest);
  return std::abs(value - nearest) <= hair + rounding ? nearest : value;
}

Column column(Quantity q, const Joined& joined, double factor = 1) {
  Column out{q, {}, joined.origin};
  for (std::size_t i = 0; i < joined.all.value.size(); ++i) {
    if (std::isnan(joined.all.value[i])) continue;
    const double value = settled(q, factor * joined.all.value[i], joined.all.rounding);
    if (const auto wrong = weather::implausible(q, value))
      refuse("{}: {} at {}: {}", joined.all.file, joined.all.variable, format_time_utc(joined.all.unix_s[i]),
             *wrong);
    out.samples.unix_s.push_back(joined.all.unix_s[i]);
    out.samples.value.push_back(value);
  }
  return out;
}

Joined wind_of(const Joined& east, const Joined& north) {
  Joined out{east.all, east.origin};
  out.origin.insert(out.origin.end(), north.origin.begin(), north.origin.end());
  out.all.unix_s.clear();
  out.all.value.clear();
  std::size_t n = 0;
  for (std::size_t e = 0; e < east.all.unix_s.size(); ++e) {
    while (n < north.all.unix_s.size() && north.all.unix_s[n] < east.all.unix_s[e]) ++n;
    if (n == north.all.unix_s.size() || north.all.unix_s[n] != east.all.unix_s[e]) continue;
    out.all.unix_s.push_back(east.all.unix_s[e]);
    out.all.value.push_back(std::hypot(east.all.value[e], north.all.value[n]));
  }
  if (out.all.unix_s.empty())
    refuse("{}: {} and {} of {} have no time in common", east.all.file, east.all.variable, north.all.variable,
           north.all.file);
  return out;
}

// Mean zero-crossing over energy period of the spectrum that the sea of a run has (Bretschneider's shape):
// moments of A w^-5 exp(-B w^-4) give T_z = 2 pi (pi B)^(-1/4) and T_-10 = 2 pi B^(-1/4) Gamma(5/4).
double zero_crossing_share() {
  constexpr double quarter = 0.25;
  return 1 / (std::pow(std::numbers::pi, quarter) * std::tgamma(1 + quarter));
}

void put(Columns& to, Column column) {
  if (!column.samples.unix_s.empty())
    to.columns.push_back(std::move(column));
  else
    for (const std::string& origin : column.origin) to.notes.push_back(origin + ": no values");
}

double median_step_h(const weather::Samples& samples) {
  std::vector<double> steps;
  for (std::size_t i = 1; i < samples.unix_s.size(); ++i)
    steps.push_back(samples.unix_s[i] - samples.unix_s[i - 1]);
  if (steps.empty()) return 0;
  std::nth_element(steps.begin(), steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2), steps.end());
  return steps[steps.size() / 2] / hour_s;
}

}  // namespace

Columns columns_of(const std::vector<Series>& series, const Span& span, const RainRule& rain) {
  std::map<Field, std::vector<const Series*>> parts;
  std::vector<Series> rates;
  rates.reserve(series.size());
  const bool has_rate =
      std::any_of(series.begin(), series.end(), [](const Series& s) { return s.field == Field::rain_rate; });
  Columns out;
  for (const Series& each : series) {
    if (each.field != Field::rain_amount) {
      parts[each.field].push_back(&each);
    } else if (has_rate) {
      out.notes.push_back(
          fmt::format("{} of {} is not used: there is a rate of rain", each.variable, each.file));
    } else {
      rates.push_back(rain_rates(each, rain));
      parts[Field::rain_rate].push_back(&rates.back());
    }
  }
  const auto has = [&](Field field) { return parts.count(field) > 0; };
  const auto joined = [&](Field field) { return join(parts[field], span); };
  const auto unused = [&](Field field, const char* why) {
    for (const Series* part : parts[field])
      out.notes.push_back(fmt::format("{} of {} is not used: {}", part->variable, part->file, why));
  };
  const auto plain = [&](Field field, Quantity q) {
    if (has(field)) put(out, column(q, joined(field)));
  };
  plain(Field::air_temperature, Quantity::air_temperature);
  plain(Field::sea_temperature, Quantity::water_temperature);
  plain(Field::dew_point, Quantity::dew_point);
  if (!has(Field::dew_point))
    plain(Field::relative_humidity, Quantity::relative_humidity);
  else if (has(Field::relative_humidity))
    unused(Field::relative_humidity, "there is a dew point");
  if (has(Field::wind_speed)) {
    plain(Field::wind_speed, Quantity::wind_speed);
  } else if (has(Field::wind_east) && has(Field::wind_north)) {
    put(out, column(Quantity::wind_speed, wind_of(joined(Field::wind_east), joined(Field::wind_north))));
  } else {
    for (const Field field : {Field::wind_east, Field::wind_north})
      if (has(field)) unused(field, "the other component is missing");
  }
  plain(Field::pressure, Quantity::pressure);
  plain(Field::cloud, Quantity::cloud_cover);
  plain(Field::rain_rate, Quantity::rain);
  plain(Field::wave_height, Quantity::wave_height);
  if (has(Field::wave_period)) {
    plain(Field::wave_period, Quantity::wave_period);
    if (has(Field::wave_period_energy)) unused(Field::wave_period_energy, "there is a zero-crossing period");
  } else if (has(Field::wave_period_energy)) {
    put(out, column(Quantity::wave_period, joined(Field::wave_period_energy), zero_crossing_share()));
    out.notes.push_back(fmt::format(
        "wave period: {:.3f} of the energy period, as in Bretschneider's spectrum", zero_crossing_share()));
  }
  if (out.columns.empty())
    refuse(
        "{}: found no variable of use; allowed air or sea temperature, humidity, wind, pressure, cloud, rain "
        "or waves",
        series.front().file);
  for (const Column& each : out.columns)
    if (const double step_h = median_step_h(each.samples); step_h > scenario::usual_longest_gap_h)
      out.notes.push_back(fmt::format(
          "{}: values {:.3g} h apart; a scenario bridges {} h unless it states /weather/longest_gap_h{}",
          weather::facts(each.quantity).words, step_h, scenario::usual_longest_gap_h,
          each.quantity == Quantity::wind_speed && !has(Field::wind_speed)
              ? "; the speed of a mean wind is lower than the mean speed"
              : ""));
  return out;
}

}  // namespace bide::tool::cf
