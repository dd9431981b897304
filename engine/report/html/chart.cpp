#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>
#include <string>

#include "bide/report/html/elements.hpp"
#include "bide/report/html/escape.hpp"

namespace bide::report::html {

namespace {

using Json = nlohmann::ordered_json;

const char* word(Kind kind) {
  switch (kind) {
    case Kind::line:
      return "line";
    case Kind::points:
      return "points";
    case Kind::band:
      return "band";
    case Kind::bars:
      return "bars";
    case Kind::marks:
      return "marks";
    case Kind::spans:
      return "spans";
  }
  return "";
}

// Three figures, and whole numbers from a thousand on: the precision to which a chart can be read.
std::string figures(double value) {
  constexpr double whole_from = 1000;
  return std::abs(value) >= whole_from ? fmt::format("{:.0f}", value) : fmt::format("{:.3g}", value);
}

std::string place(const Chart& chart, double x) {
  if (chart.categories.empty()) return fmt::format("{:.6g}", x);
  return chart.categories.at(static_cast<std::size_t>(x));
}

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

// Twelve figures: far more than a drawing shows, and few enough that equal places stay equal.
double rounded(double value) {
  return std::stod(fmt::format("{:.12g}", value));
}

Json rounded_or_null(double value) {
  return std::isfinite(value) ? Json(rounded(value)) : Json();
}

Json data_of(const Axis& axis) {
  return {{"label", printable(axis.label)},
          {"unit", printable(axis.unit)},
          {"from_zero", axis.from_zero},
          {"tick_every", axis.tick_every}};
}

Json data_of(const Chart& chart) {
  Json categories = Json::array(), all = Json::array();
  for (const std::string& name : chart.categories) categories.push_back(printable(name));
  for (std::size_t i = 0; i < chart.series.size(); ++i) {
    const Series& series = chart.series[i];
    Json points = Json::array();
    for (const Point& p : series.points) {
      Json point = Json::array({rounded_or_null(p.x), rounded_or_null(p.y)});
      const bool spread = std::isfinite(p.low) && std::isfinite(p.high);
      if (spread || !p.label.empty())
        point.insert(point.end(),
                     {spread ? rounded_or_null(p.low) : Json(), spread ? rounded_or_null(p.high) : Json()});
      if (!p.label.empty() || p.open) point.push_back(printable(p.label));
      if (p.open) point.push_back(true);
      points.push_back(point);
    }
    all.push_back({{"name", printable(series.name)},
                   {"kind", word(series.kind)},
                   {"style", series.style.value_or(static_cast<int>(i))},
                   {"points", points}});
  }
  return {{"sentence", printable(chart.sentence)},
          {"x", data_of(chart.x)},
          {"y", data_of(chart.y)},
          {"categories", categories},
          {"series", all}};
}

}  // namespace

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

std::string chart_html(const Chart& chart) {
  return fmt::format(
      "<figure class=\"chart {}\">\n<figcaption>{}</figcaption>\n<div class=\"drawing\"></div>\n"
      "<p class=\"sentence\">{}</p>\n{}<script type=\"application/json\">{}</script>\n</figure>\n",
      chart.categories.empty() ? "along" : "across", escaped(chart.title), escaped(chart.sentence),
      table_html(values_of(chart)), script_data(data_of(chart)));
}

}  // namespace bide::report::html
