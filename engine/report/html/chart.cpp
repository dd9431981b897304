#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <string>

#include "bide/report/document/values.hpp"
#include "bide/report/html/elements.hpp"
#include "bide/report/html/escape.hpp"

namespace bide::report::html {

using document::Axis;
using document::Chart;
using document::Kind;
using document::Point;
using document::rounded;
using document::Series;
using document::values_of;

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

std::string chart_html(const Chart& chart) {
  return fmt::format(
      "<figure class=\"chart {}\">\n<figcaption>{}</figcaption>\n<div class=\"drawing\"></div>\n"
      "<p class=\"sentence\">{}</p>\n{}<script type=\"application/json\">{}</script>\n</figure>\n",
      chart.categories.empty() ? "along" : "across", escaped(chart.title), escaped(chart.sentence),
      table_html(values_of(chart)), script_data(data_of(chart)));
}

}  // namespace bide::report::html
