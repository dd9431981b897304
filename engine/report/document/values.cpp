#include "bide/report/document/values.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace bide::report::document {
namespace {

// Three figures, and whole numbers from a thousand on: the precision to which a chart can be read.
std::string figures(double value) {
  constexpr double whole_from = 1000;
  return std::abs(value) >= whole_from ? fmt::format("{:.0f}", value) : fmt::format("{:.3g}", value);
}

std::string place(const Chart& chart, double x) {
  if (chart.categories.empty()) return fmt::format("{:.6g}", x);
  return chart.categories.at(static_cast<std::size_t>(x));
}

}  // namespace

std::string with_unit(const std::string& text, const std::string& unit) {
  return unit.empty() ? text : text + ", " + unit;
}

std::string value_of(const Point& point, Kind kind) {
  std::string out = std::isfinite(point.y) ? figures(point.y) : "";
  const bool sized = kind == Kind::spans && std::isfinite(point.y);  // where it lies says nothing more
  if (!sized && std::isfinite(point.low) && std::isfinite(point.high)) {
    const std::string spread = figures(point.low) + " to " + figures(point.high);
    out += out.empty() ? spread : " (" + spread + ")";
  }
  if (point.open) out += " or later";
  if (!point.label.empty()) out += (out.empty() ? "" : ", ") + point.label;
  return out;
}

double rounded(double value) {
  return std::stod(fmt::format("{:.12g}", value));
}

std::vector<Series> stack(const std::vector<std::string>& parts,
                          const std::vector<std::vector<double>>& values) {
  std::vector<Series> out;
  std::vector<double> reached;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    Series series{parts[i], Kind::spans, {}, {}};
    reached.resize(std::max(reached.size(), values[i].size()));
    for (std::size_t k = 0; k < values[i].size(); ++k) {
      const double from = reached[k];
      reached[k] += values[i][k];
      series.points.push_back({static_cast<double>(k), values[i][k], from, reached[k], ""});
    }
    out.push_back(std::move(series));
  }
  return out;
}

Table values_of(const Chart& chart) {
  Table out;
  out.caption = "Values behind this chart";
  out.folded = true;
  const bool by_category = !chart.categories.empty();
  out.columns.push_back({by_category ? chart.x.label : with_unit(chart.x.label, chart.x.unit), !by_category});
  std::map<double, std::vector<std::string>> rows;
  for (std::size_t i = 0; i < chart.series.size(); ++i) {
    const Series& series = chart.series[i];
    const bool along_x = series.kind == Kind::marks || (series.kind == Kind::spans && !by_category);
    out.columns.push_back({with_unit(series.name, series.kind == Kind::marks ? ""
                                                  : along_x                  ? chart.x.unit
                                                                             : chart.y.unit),
                           true});
    for (const Point& point : series.points) {
      std::vector<std::string>& row = rows[rounded(point.x)];
      row.resize(chart.series.size());
      const std::string value =
          series.kind == Kind::marks && point.label.empty() ? "here" : value_of(point, series.kind);
      row[i] += (row[i].empty() || value.empty() ? "" : "; ") + value;
    }
  }
  for (const auto& [x, values] : rows) {
    out.rows.push_back({place(chart, x)});
    out.rows.back().insert(out.rows.back().end(), values.begin(), values.end());
  }
  return out;
}

}  // namespace bide::report::document
