#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include "bide/core/units.hpp"
#include "bide/report/document/text_parts.hpp"
#include "bide/report/document/values.hpp"
#include "bide/report/words/chart.hpp"

namespace bide::report::document {
namespace {

// Fewer places than this are a table of values.
constexpr std::size_t least_places = 12;

bool is_level(const Series& series) {
  return std::all_of(series.points.begin(), series.points.end(),
                     [&](const Point& each) { return each.y == series.points.front().y; });
}

std::size_t places(const Chart& chart) {
  std::set<double> out;
  for (const Series& series : chart.series)
    if (series.kind == Kind::line)
      for (const Point& point : series.points) out.insert(rounded(point.x));
  return out.size();
}

// A curve by time; levels and bands as a line of words.
void write_curves(TextLines& to, const Chart& chart, std::string_view indent) {
  double end_h = 0;
  for (const Series& series : chart.series)
    for (const Point& point : series.points) end_h = std::max(end_h, point.x);
  const ChartArea area{to.width(), 3, to.letters(), end_h * hour_s};
  constexpr double least_of_range = 0.02;  // smaller changes than this share of the values are not magnified
  bool drawn = false;
  const auto curves = std::count_if(chart.series.begin(), chart.series.end(), [](const Series& each) {
    return each.kind == Kind::line && !each.points.empty() && !is_level(each);
  });
  for (const Series& series : chart.series) {
    if (series.points.empty()) continue;
    const std::string name = to.fit(series.name), unit = to.fit(chart.y.unit);
    if (series.kind == Kind::band && curves == 1) {  // beside several it is the error of each
      double low = series.points.front().low, high = series.points.front().high;
      for (const Point& point : series.points)
        low = std::min(low, point.low), high = std::max(high, point.high);
      to.paragraph(fmt::format("{}: {:.3g} to {:.3g} {}", name, low, high, unit), indent, indent);
    } else if (series.kind == Kind::line && is_level(series)) {
      to.paragraph(fmt::format("{}: {:.3g} {}", name, series.points.front().y, unit), indent, indent);
    } else if (series.kind == Kind::line) {
      std::vector<double> time_s, values;
      double largest = 0;
      for (const Point& point : series.points) {
        time_s.push_back(point.x * hour_s);
        values.push_back(point.y);
        if (std::isfinite(point.y)) largest = std::max(largest, std::abs(point.y));
      }
      report::Chart one{std::string(indent) + name,
                        unit,
                        std::move(values),
                        std::max(1.0, least_of_range * largest),
                        Bin::mean,
                        chart.y.from_zero};
      for (const std::string& line : draw(one, time_s, area)) to.line(line);
      drawn = true;
    }
  }
  if (drawn)
    for (const std::string& line : draw_axis(area)) to.line(line);
}

// Bars from one moment to another: a line for each category. Values of the same series stand together.
void write_spells(TextLines& to, const Chart& chart, std::string_view indent) {
  const std::string first = std::string(indent) + "- ", rest = std::string(indent) + "  ";
  for (std::size_t row = 0; row < chart.categories.size(); ++row) {
    std::string text;
    for (const Series& series : chart.series) {
      std::string values;
      for (const Point& point : series.points)
        if (point.x == static_cast<double>(row))
          values += (values.empty() ? "" : ", ") + value_of(point, series.kind);
      if (!values.empty()) text += fmt::format("{}{} {}", text.empty() ? "" : "; ", series.name, values);
    }
    if (!text.empty()) to.paragraph(chart.categories[row] + ": " + text, first, rest);
  }
}

}  // namespace

void write_chart(TextLines& to, const Chart& chart, std::string_view indent) {
  const bool by_category = !chart.categories.empty(), curves = !by_category && chart.x.unit == "h";
  to.paragraph(chart.title + ". " + chart.sentence, indent, indent);
  if (curves && places(chart) >= least_places) return write_curves(to, chart, indent);
  const bool spells =
      by_category && std::any_of(chart.series.begin(), chart.series.end(), [](const Series& each) {
        return each.kind == Kind::spans && !each.points.empty() && !std::isfinite(each.points.front().y);
      });
  if (spells) {
    if (!chart.y.unit.empty()) to.paragraph("In " + chart.y.unit + ":", indent, indent);
    return write_spells(to, chart, indent);
  }
  Table values = values_of(chart);
  values.caption = by_category ? with_unit(chart.y.label, chart.y.unit) + ":" : "";
  // The unit is said once, above.
  for (std::size_t i = 1; by_category && i < values.columns.size(); ++i)
    values.columns[i].name = chart.series[i - 1].name;
  write_table(to, values, indent);
}

}  // namespace bide::report::document
