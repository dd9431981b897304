// Buoys beside the columns, and the columns as text.
#include <algorithm>
#include <map>
#include <set>

#include "bide/constants/weather.hpp"
#include "bide/core/csv.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/resolved_weather.hpp"
#include "bide/weather/gaps.hpp"
#include "bide/weather/sea.hpp"
#include "columns.hpp"
#include "refused.hpp"

namespace bide::tool::cf {
namespace {

using weather::Quantity;

constexpr Quantity quantity(std::size_t index) {
  return static_cast<Quantity>(index);
}

// What all buoys give of a quantity.
weather::Samples join(const std::vector<Buoy>& buoys, Quantity q) {
  struct Value {
    double value;
    const Buoy* from;
  };
  std::map<double, Value> by_time;
  for (const Buoy& buoy : buoys) {
    const weather::Samples& samples = buoy.observations[q];
    for (std::size_t i = 0; i < samples.unix_s.size(); ++i) {
      const auto [at, fresh] = by_time.try_emplace(samples.unix_s[i], Value{samples.value[i], &buoy});
      if (!fresh && at->second.value != samples.value[i])
        refuse("{}: contradicts {} on {} at {}: {} and {} {}", buoy.file, at->second.from->file,
               weather::facts(q).words, format_time_utc(samples.unix_s[i]), samples.value[i],
               at->second.value, weather::facts(q).unit);
    }
  }
  weather::Samples out;
  for (const auto& [time, value] : by_time) {
    out.unix_s.push_back(time);
    out.value.push_back(value.value);
  }
  return out;
}

weather::Samples cut(const weather::Samples& samples, const Span& span) {
  const Times times = times_for(samples.unix_s, span);
  const auto first = static_cast<std::ptrdiff_t>(times.first),
             end = static_cast<std::ptrdiff_t>(times.first + times.count);
  return {{samples.unix_s.begin() + first, samples.unix_s.begin() + end},
          {samples.value.begin() + first, samples.value.begin() + end}};
}

void replace(std::vector<Column>& columns, Column column) {
  const Quantity q = column.quantity;
  columns.erase(std::remove_if(columns.begin(), columns.end(),
                               [q](const Column& each) {
                                 // One of the two: the table holds a single measure of humidity.
                                 return each.quantity == q || (q == Quantity::dew_point &&
                                                               each.quantity == Quantity::relative_humidity);
                               }),
                columns.end());
  const auto after =
      std::find_if(columns.begin(), columns.end(), [q](const Column& each) { return each.quantity > q; });
  columns.insert(after, std::move(column));
}

bool has(const Columns& columns, Quantity q) {
  return std::any_of(columns.columns.begin(), columns.columns.end(),
                     [q](const Column& each) { return each.quantity == q; });
}

}  // namespace

void take_buoys(Columns& columns, const std::vector<Buoy>& buoys, double wind_height_m, const Span& span) {
  if (buoys.empty()) return;
  std::string files;
  for (const Buoy& buoy : buoys) files += (files.empty() ? "" : ", ") + buoy.file;
  for (std::size_t i = 0; i < weather::quantity_count; ++i) {
    const Quantity q = quantity(i);
    weather::Samples samples = join(buoys, q);
    if (samples.unix_s.empty()) continue;
    const weather::GapRule rule{
        scenario::usual_longest_gap_h * hour_s, scenario::usual_longest_gap_h * hour_s, {}};
    const auto filled = weather::fill_gaps(q, samples, {span.begin_unix_s, span.end_unix_s}, rule);
    if (!filled.problems.empty()) {
      columns.notes.push_back(
          fmt::format("{}: {} is not used: {}", files, weather::facts(q).words, filled.problems.front()));
      continue;
    }
    std::string origin = fmt::format("{} ({})", files, weather::facts(q).unit);
    if (q == Quantity::wind_speed) {
      for (double& speed : samples.value)
        speed = weather::wind_at_height_m_s(speed, wind_height_m, constants::wind_reference_height_m);
      origin += fmt::format(", from {} m to 10 m", wind_height_m);
    }
    if (has(columns, q)) origin += ", in the place of the grid's";
    replace(columns.columns, {q, cut(samples, span), {origin}});
  }
}

std::string to_csv(const Columns& columns, const std::vector<std::string>& comments) {
  std::string out, header = "time_utc";
  for (const std::string& each : comments) out += csv_comment(each);
  std::set<double> times;
  for (const Column& each : columns.columns) {
    header += std::string(",") + weather::facts(each.quantity).column;
    times.insert(each.samples.unix_s.begin(), each.samples.unix_s.end());
    for (const std::string& origin : each.origin)
      out += csv_comment(fmt::format("{}: {}", weather::facts(each.quantity).column, origin));
  }
  for (const std::string& each : columns.notes) out += csv_comment(each);
  out += header + "\n";
  std::vector<std::size_t> next(columns.columns.size(), 0);
  for (const double time : times) {
    out += format_time_utc(time);
    for (std::size_t c = 0; c < next.size(); ++c) {
      const weather::Samples& samples = columns.columns[c].samples;
      out += ',';
      if (next[c] < samples.unix_s.size() && samples.unix_s[next[c]] == time)
        out += fmt::format("{:.3f}", samples.value[next[c]++]);
    }
    out += '\n';
  }
  return out;
}

std::vector<std::string> left_to_the_scenario(const Columns& columns) {
  std::vector<std::string> out;
  const auto without = [&](Quantity q, const std::string& then) {
    if (!has(columns, q)) out.push_back(fmt::format("no {}: {}", weather::facts(q).words, then));
  };
  const std::string state = "the scenario must state ", fallback = state + "/weather/fallback/";
  without(Quantity::air_temperature, fallback + "air_temperature_degC");
  without(Quantity::water_temperature, fallback + "water_temperature_degC");
  if (!has(columns, Quantity::relative_humidity)) without(Quantity::dew_point, fallback + "dew_point_degC");
  without(Quantity::wind_speed, fallback + "wind_speed_m_s");
  without(Quantity::cloud_cover, state + "/weather/cloud_cover_fraction");
  without(Quantity::rain, state + "/weather/rain_mm_h");
  without(Quantity::pressure, "a run takes 1013.25 hPa");
  without(Quantity::wave_height, "a run takes the sea that the wind raises in time");
  without(Quantity::wave_period, "a run takes that of a fully developed sea of the wave height");
  return out;
}

}  // namespace bide::tool::cf
