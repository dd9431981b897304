#include "bide/weather/observations.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/core/time_utc.hpp"
#include "bide/scenario/weather_ranges.hpp"

namespace bide::weather {
namespace {

constexpr QuantityFacts facts_of(const char* words, const char* column, const char* unit,
                                 scenario::Range range) {
  return {words, column, unit, range.low, range.high};
}

constexpr std::array<QuantityFacts, quantity_count> all_facts{{
    facts_of("air temperature", "air_temperature_degC", "degC", scenario::air_range_degC),
    facts_of("water temperature", "water_temperature_degC", "degC", scenario::sea_range_degC),
    facts_of("dew point", "dew_point_degC", "degC", scenario::dew_point_range_degC),
    {"relative humidity", "relative_humidity_pct", "%", 0, 110},  // sensors in fog read a little above 100
    facts_of("wind speed", "wind_speed_m_s", "m/s", scenario::wind_range_m_s),
    facts_of("pressure", "pressure_hPa", "hPa", scenario::pressure_range_hPa),
    {"cloud cover", "cloud_cover_fraction", "of the sky", 0, 1},
    facts_of("rain", "rain_mm_h", "mm/h", scenario::rain_range_mm_h),
    facts_of("wave height", "wave_height_m", "m", scenario::wave_height_range_m),
    facts_of("wave period", "wave_period_s", "s", scenario::wave_period_range_s),
}};

constexpr std::size_t most_problems_listed = 20;

// Takes what `from` adds to `into`; the quantity on which they disagree, if any.
std::optional<Quantity> merge(Row& into, const Row& from) {
  for (std::size_t q = 0; q < quantity_count; ++q) {
    if (!from.value[q]) continue;
    if (into.value[q] && *into.value[q] != *from.value[q]) return static_cast<Quantity>(q);
    into.value[q] = from.value[q];
  }
  return std::nullopt;
}

// Buoys write a period of 0 beside a height of 0: there are no waves, so there is no period. Beside waves it
// is a fault of the file.
void drop_periods_of_flat_water(Rows& rows) {
  for (Row& row : rows.rows) {
    auto &period = row.value[index(Quantity::wave_period)], &height = row.value[index(Quantity::wave_height)];
    if (!period || *period != 0) continue;
    if (!height || *height != 0)
      rows.problems.push_back(
          fmt::format("line {}: wave period 0 s is allowed beside a wave height of 0 only", row.line));
    period.reset();
  }
}

// Leaves one row per time.
void merge_rows_of_one_time(Rows& rows) {
  std::stable_sort(rows.rows.begin(), rows.rows.end(),
                   [](const Row& a, const Row& b) { return a.unix_s < b.unix_s; });
  std::vector<Row> single;
  int merged = 0;
  for (const Row& row : rows.rows) {
    if (single.empty() || single.back().unix_s < row.unix_s) {
      single.push_back(row);
      continue;
    }
    Row& kept = single.back();
    if (const std::optional<Quantity> q = merge(kept, row)) {
      rows.problems.push_back(fmt::format("lines {} and {} contradict each other on {} at {}: {} and {} {}",
                                          kept.line, row.line, facts(*q).words, format_time_utc(row.unix_s),
                                          *kept.value[index(*q)], *row.value[index(*q)], facts(*q).unit));
    } else {
      ++merged;
    }
  }
  if (merged > 0) rows.notes.push_back(fmt::format("{} repeated rows were merged", merged));
  rows.rows = std::move(single);
}

double median_step_s(const std::vector<double>& times) {
  if (times.size() < 2) return 0;
  std::vector<double> steps;
  for (std::size_t i = 1; i < times.size(); ++i) steps.push_back(times[i] - times[i - 1]);
  const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
  std::nth_element(steps.begin(), middle, steps.end());
  return *middle;
}

}  // namespace

const QuantityFacts& facts(Quantity q) {
  return all_facts[index(q)];
}

std::optional<std::string> implausible(Quantity q, double value) {
  const QuantityFacts& f = facts(q);
  if (q == Quantity::wave_period && value == 0)
    return std::nullopt;  // flat water: drop_periods_of_flat_water
  if (value >= f.lowest && value <= f.highest) return std::nullopt;
  return fmt::format("{} {} {} is outside {} to {}", f.words, value, f.unit, f.lowest, f.highest);
}

std::variant<Observations, Problems> observations(Rows rows) {
  drop_periods_of_flat_water(rows);
  merge_rows_of_one_time(rows);
  if (rows.rows.empty() && rows.problems.empty()) rows.problems.push_back("holds no data rows");
  if (!rows.problems.empty()) {
    const std::size_t found = rows.problems.size();
    if (found > most_problems_listed) {
      rows.problems.resize(most_problems_listed);
      rows.problems.push_back(fmt::format("and {} more", found - most_problems_listed));
    }
    return rows.problems;
  }
  Observations out;
  for (const Row& row : rows.rows) {
    out.row_unix_s.push_back(row.unix_s);
    for (std::size_t q = 0; q < quantity_count; ++q) {
      if (!row.value[q]) continue;
      out.of[q].unix_s.push_back(row.unix_s);
      out.of[q].value.push_back(*row.value[q]);
    }
  }
  out.usual_step_s = median_step_s(out.row_unix_s);
  out.notes = std::move(rows.notes);
  return out;
}

}  // namespace bide::weather
