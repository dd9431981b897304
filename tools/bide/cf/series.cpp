#include "series.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace bide::tool::cf {
namespace {

constexpr std::size_t times_at_once = 16;

// A block of stored values: counts along the roles, one along all others.
struct Block {
  std::size_t first_time, times, version, row, rows, column, columns;
};

std::vector<double> read_block(const File& file, const Variable& variable, const Block& block) {
  std::vector<std::size_t> start, count;
  for (const Role role : variable.roles) {
    std::size_t from = 0, many = 1;
    if (role == Role::time) from = block.first_time, many = block.times;
    if (role == Role::version) from = block.version;
    if (role == Role::latitude) from = block.row, many = block.rows;
    if (role == Role::longitude) from = block.column, many = block.columns;
    start.push_back(from);
    count.push_back(many);
  }
  std::vector<double> values = file.read(variable.head, start, count);
  for (double& value : values)
    value = unpack(variable.packing, value) * variable.to_field.factor + variable.to_field.offset;
  return values;
}

// Versions with the final one, the lowest number, first; one without the dimension.
std::vector<std::size_t> versions_in_order(const Variable& variable) {
  std::vector<std::size_t> order(std::max<std::size_t>(variable.versions.size(), 1));
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  if (!variable.versions.empty())
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
      return variable.versions[a] < variable.versions[b];
    });
  return order;
}

// A block with each value of the first version that has one. `later` counts those not of the final version.
std::vector<double> read_versions(const File& file, const Variable& variable, Block block,
                                  std::size_t* later = nullptr) {
  std::vector<double> out;
  for (const std::size_t version : versions_in_order(variable)) {
    block.version = version;
    const std::vector<double> values = read_block(file, variable, block);
    if (out.empty()) {
      out = values;
      continue;
    }
    for (std::size_t i = 0; i < out.size(); ++i)
      if (std::isnan(out[i]) && !std::isnan(values[i])) {
        out[i] = values[i];
        if (later != nullptr) ++*later;
      }
  }
  return out;
}

bool longitude_fastest(const Variable& variable) {
  const auto at = [&](Role role) { return std::find(variable.roles.begin(), variable.roles.end(), role); };
  return at(Role::latitude) < at(Role::longitude);
}

}  // namespace

std::vector<Cell> cells_near(const Variable& variable, const Place& place, double reach_km) {
  std::vector<Cell> out;
  for (std::size_t row = 0; row < variable.latitude_deg.size(); ++row) {
    const double latitude = variable.latitude_deg[row];
    if (distance_km({latitude, 0}, {place.latitude_deg, 0}) > reach_km) continue;
    for (std::size_t column = 0; column < variable.longitude_deg.size(); ++column) {
      const Place centre{latitude, variable.longitude_deg[column]};
      const double distance = distance_km(centre, place);
      if (distance <= reach_km) out.push_back({row, column, centre, distance});
    }
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const Cell& a, const Cell& b) { return a.distance_km < b.distance_km; });
  return out;
}

Times times_for(const std::vector<double>& t, const Span& span) {
  if (t.empty() || t.back() < span.begin_unix_s || t.front() > span.end_unix_s) return {};
  const auto after = std::upper_bound(t.begin(), t.end(), span.begin_unix_s);
  const auto first = after == t.begin() ? after : after - 1;
  const auto behind = std::lower_bound(t.begin(), t.end(), span.end_unix_s);
  const auto last = behind == t.end() ? behind - 1 : behind;
  return {static_cast<std::size_t>(first - t.begin()), static_cast<std::size_t>(last - first) + 1};
}

std::optional<Cell> nearest_with_value(const File& file, const Variable& variable, const Place& place,
                                       double reach_km, const Times& times, const Progress& progress) {
  const std::vector<Cell> cells = cells_near(variable, place, reach_km);
  if (cells.empty()) return {};
  std::size_t lowest = cells.front().row, highest = lowest;
  for (const Cell& cell : cells) lowest = std::min(lowest, cell.row), highest = std::max(highest, cell.row);
  const std::size_t rows = highest - lowest + 1, columns = variable.longitude_deg.size();
  for (std::size_t t = times.first; t < times.first + times.count; ++t) {
    progress();
    const std::vector<double> values = read_versions(file, variable, {t, 1, 0, lowest, rows, 0, columns});
    for (const Cell& cell : cells) {
      const std::size_t row = cell.row - lowest;
      const std::size_t at =
          longitude_fastest(variable) ? row * columns + cell.column : cell.column * rows + row;
      if (!std::isnan(values[at])) return cell;
    }
  }
  return {};
}

Series read_series(const File& file, const Variable& variable, const Cell& cell, const Times& times,
                   const Progress& progress) {
  Series out;
  out.field = variable.field;
  out.variable = variable.head.name;
  out.units = variable.units;
  out.cell = cell;
  out.held = {variable.unix_s.front(), variable.unix_s.back()};
  if (variable.head.type == Head::Type::whole)
    out.rounding = std::abs(variable.packing.scale * variable.to_field.factor);
  const std::size_t end = times.first + times.count;
  for (std::size_t from = times.first; from < end; from += times_at_once) {
    progress();
    const std::size_t count = std::min(times_at_once, end - from);
    const std::vector<double> values =
        read_versions(file, variable, {from, count, 0, cell.row, 1, cell.column, 1}, &out.preliminary);
    out.value.insert(out.value.end(), values.begin(), values.end());
  }
  for (std::size_t t = times.first; t < end; ++t) {
    out.unix_s.push_back(variable.unix_s[t]);
    if (!variable.interval_s.empty()) out.interval_s.push_back(variable.interval_s[t]);
    if (!variable.preliminary.empty() && variable.preliminary[t]) ++out.preliminary;
  }
  return out;
}

}  // namespace bide::tool::cf
