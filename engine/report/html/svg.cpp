#include "bide/report/html/svg.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

#include "bide/core/notice.hpp"
#include "bide/core/text.hpp"
#include "bide/core/units.hpp"
#include "bide/report/html/escape.hpp"
#include "bide/report/html/svg_parts.hpp"
#include "bide/report/words/made_by.hpp"
#include "bide/report/words/text.hpp"

namespace bide::report::html {

using document::Axis;
using document::Block;
using document::Chart;
using document::Kind;
using document::Page;
using document::Point;
using document::Section;
using document::Series;
namespace {

constexpr double width = 900, side = 16, line_height = 17, small_line = 14;
constexpr int letters_on_a_line = 120;  // of 12 px, in the width

bool across(const Chart& chart) {
  return !chart.categories.empty();
}

// A long run is shown in days; its values stay in hours.
bool in_days(const Axis& axis) {
  return axis.unit == "h" && axis.tick_every >= day_h;
}

std::string title_of(const Axis& axis) {
  if (in_days(axis)) return axis.label + ", days";
  return axis.unit.empty() ? axis.label : axis.label + ", " + axis.unit;
}

std::string tick_words(const Axis& axis, double value) {
  const double shown = in_days(axis) ? value / day_h : value;
  return fmt::format("{:g}", std::round(shown * 1e6) / 1e6);
}

std::vector<double> ticks_of(const Axis& axis, const Scale& scale) {
  constexpr double most_ticks = 10;
  double every = nice_step(scale.high - scale.low, most_ticks);
  if (axis.tick_every > 0)
    every =
        axis.tick_every * std::max(1.0, std::ceil((scale.high - scale.low) / axis.tick_every / most_ticks));
  std::vector<double> out;
  for (double at = std::ceil(scale.low / every) * every; at <= scale.high + every * 1e-9; at += every)
    out.push_back(at);
  return out;
}

// Ends of the values, of which those along the axis of values are y, low and high.
Scale values_scale(const Chart& chart, double from, double to) {
  Extent extent;
  if (chart.y.from_zero || across(chart)) extent.take(0);
  for (const Series& series : chart.series) {
    if (series.kind == Kind::marks || (series.kind == Kind::spans && !across(chart))) continue;
    for (const Point& point : series.points)
      for (const double value : {point.low, point.high, series.kind == Kind::spans ? Point::none : point.y})
        extent.take(value);
  }
  return extent.scale(from, to, !across(chart));
}

Scale place_scale(const Chart& chart, double from, double to) {
  Extent extent;
  if (chart.x.from_zero) extent.take(0);
  for (const Series& series : chart.series)
    for (const Point& point : series.points) {
      const bool shade = series.kind == Kind::spans;
      extent.take(shade ? point.low : point.x);
      if (shade) extent.take(point.high);
    }
  return extent.scale(from, to, false);
}

// Drawing of one chart between its frame's sides.
struct Plot {
  const Chart& chart;
  double left, top, right, bottom;
  Scale x, y;         // y: from the bottom up; across: of the values, along x
  double row_height;  // across

  double row(double place) const { return top + (place + 0.5) * row_height; }

  void line(std::string& out, const Series& series, int style) const {
    std::string path;
    bool pen_down = false;
    for (const Point& p : series.points) {
      if (!std::isfinite(p.y)) {
        pen_down = false;
        continue;
      }
      path += fmt::format("{}{:.1f},{:.1f}", pen_down ? "L" : "M", x(p.x), y(p.y));
      pen_down = true;
    }
    out += fmt::format("<path d=\"{}\" fill=\"none\" stroke=\"{}\" stroke-width=\"2\"{}/>\n", path,
                       series_colour(style), dashes(style));
  }

  void band(std::string& out, const Series& series, int style) const {
    std::string there, back;
    for (const Point& p : series.points) {
      if (!std::isfinite(p.low) || !std::isfinite(p.high)) continue;
      there += fmt::format("{}{:.1f},{:.1f}", there.empty() ? "M" : "L", x(p.x), y(p.low));
      back = fmt::format("L{:.1f},{:.1f}", x(p.x), y(p.high)) + back;
    }
    if (there.empty()) return;
    out += fmt::format("<path d=\"{}{}Z\" fill=\"{}\" fill-opacity=\"0.16\" stroke=\"none\"/>\n", there, back,
                       series_colour(style));
  }

  void spread(std::string& out, const Point& p, int style) const {
    if (!std::isfinite(p.low) || !std::isfinite(p.high)) return;
    constexpr double tick = 4;
    const bool wide = across(chart);
    const double a = wide ? x(p.low) : y(p.low), b = wide ? x(p.high) : y(p.high),
                 at = wide ? row(p.x) : x(p.x);
    const auto stroke = [&](double from_x, double from_y, double to_x, double to_y) {
      out += fmt::format(
          "<line x1=\"{:.1f}\" y1=\"{:.1f}\" x2=\"{:.1f}\" y2=\"{:.1f}\" stroke=\"{}\" "
          "stroke-width=\"1.5\"/>\n",
          from_x, from_y, to_x, to_y, series_colour(style));
    };
    if (wide) {
      stroke(a, at, b, at);
      for (const double end : {a, b}) stroke(end, at - tick, end, at + tick);
    } else {
      stroke(at, a, at, b);
      for (const double end : {a, b}) stroke(at - tick, end, at + tick, end);
    }
  }

  void bar(std::string& out, const Point& p, int style, bool span) const {
    const double low = span ? p.low : std::min(0.0, p.y), high = span ? p.high : std::max(0.0, p.y);
    if (!std::isfinite(low) || !std::isfinite(high)) return;
    const double inset = row_height * 0.14;
    out += fmt::format(
        "<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" fill=\"{}\"{} stroke=\"{}\"/>\n",
        x(low), row(p.x) - row_height / 2 + inset, x(high) - x(low), row_height - 2 * inset,
        span ? hatch(style) : series_colour(style), span ? "" : " fill-opacity=\"0.22\"",
        series_colour(style));
    if (p.open)
      out += fmt::format("<path d=\"M0,-5L9,0L0,5Z\" transform=\"translate({:.1f},{:.1f})\" fill=\"{}\"/>\n",
                         x(high) + 1, row(p.x), series_colour(style));
  }

  void draw(std::string& out, const Series& series, int style) const {
    switch (series.kind) {
      case Kind::line:
        return line(out, series, style);
      case Kind::band:
        return band(out, series, style);
      case Kind::marks:
        for (const Point& p : series.points)
          out += fmt::format(
              "<line x1=\"{0:.1f}\" y1=\"{1:.1f}\" x2=\"{0:.1f}\" y2=\"{2:.1f}\" stroke=\"{3}\" "
              "stroke-width=\"1.5\" stroke-dasharray=\"4 3\"/>\n",
              x(p.x), top, bottom, series_colour(style));
        return;
      case Kind::spans:
        for (const Point& p : series.points) {
          if (across(chart)) {
            bar(out, p, style, true);
          } else if (std::isfinite(p.low) && std::isfinite(p.high)) {
            out += fmt::format(
                "<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" fill=\"{}\" "
                "fill-opacity=\"0.07\"/>\n",
                x(p.low), top, x(p.high) - x(p.low), bottom - top, style_value("ink"));
          }
        }
        return;
      case Kind::bars:
        for (const Point& p : series.points) {
          bar(out, p, style, false);
          spread(out, p, style);
        }
        return;
      case Kind::points:
        for (const Point& p : series.points) {
          spread(out, p, style);
          if (!std::isfinite(p.y)) continue;
          out += symbol(style, across(chart) ? x(p.y) : x(p.x), across(chart) ? row(p.x) : y(p.y));
        }
        return;
    }
  }
};

// Legend in rows; returns the height it takes.
double legend(std::string& out, const Chart& chart, double top) {
  constexpr double swatch = 30, gap = 22, letter = 6.9;
  double at = side, y = top;
  for (std::size_t i = 0; i < chart.series.size(); ++i) {
    const Series& series = chart.series[i];
    const double needs = swatch + 8 + letter * columns(printable(series.name));
    if (at > side && at + needs > width - side) {
      at = side;
      y += line_height;
    }
    out += sample(series.kind, across(chart), series.style.value_or(static_cast<int>(i)), at, y - 4, swatch);
    out += words(at + swatch + 6, y, 12, "ink", series.name);
    at += needs + gap;
  }
  return y - top + line_height;
}

double paragraph(std::string& out, std::string_view text, double top, const char* colour) {
  double y = top;
  for (const std::string& row : wrap(printable(text), letters_on_a_line)) {
    out += words(side, y, 11, colour, row);
    y += small_line;
  }
  return y - top;
}

void axes(std::string& out, const Plot& plot) {
  const Chart& chart = plot.chart;
  const auto rule = [&out](double x1, double y1, double x2, double y2, const char* colour) {
    out += fmt::format(
        "<line x1=\"{:.1f}\" y1=\"{:.1f}\" x2=\"{:.1f}\" y2=\"{:.1f}\" stroke=\"{}\" stroke-width=\"1\"/>\n",
        x1, y1, x2, y2, style_value(colour));
  };
  const Axis& below = across(chart) ? chart.y : chart.x;
  for (const double at : ticks_of(below, plot.x)) {
    if (across(chart)) rule(plot.x(at), plot.top, plot.x(at), plot.bottom, "line");
    rule(plot.x(at), plot.bottom, plot.x(at), plot.bottom + 5, "ink");
    out += words(plot.x(at), plot.bottom + 18, 12, "ink", tick_words(below, at), "middle");
  }
  out += words((plot.left + plot.right) / 2, plot.bottom + 36, 12, "ink", title_of(below), "middle");
  rule(plot.left, plot.bottom, plot.right, plot.bottom, "ink");
  if (!across(chart)) {
    for (const double at : ticks_of(chart.y, plot.y)) {
      rule(plot.left, plot.y(at), plot.right, plot.y(at), "line");
      out += words(plot.left - 8, plot.y(at) + 4, 12, "ink", tick_words(chart.y, at), "end");
    }
    out += words(side, plot.top - 10, 12, "ink", title_of(chart.y));
    return;
  }
  if (plot.x.low < 0 && plot.x.high > 0) rule(plot.x(0), plot.top, plot.x(0), plot.bottom, "ink");
}

constexpr int letters_of_a_category = 36;

void categories(std::string& out, const Plot& plot) {
  for (std::size_t i = 0; i < plot.chart.categories.size(); ++i) {
    const auto rows = wrap(printable(plot.chart.categories[i]), letters_of_a_category);
    double y = plot.row(static_cast<double>(i)) + 4 - small_line * static_cast<double>(rows.size() - 1) / 2;
    for (const std::string& row : rows) {
      out += words(plot.left - 8, y, 12, "ink", row, "end");
      y += small_line;
    }
  }
}

Plot placed(const Chart& chart, double top) {
  constexpr double labels = 250, numbers = 64, height = 300, least_row = 30;
  const double left = across(chart) ? labels : numbers, right = width - side;
  double row_height = least_row;
  for (const std::string& name : chart.categories)
    row_height =
        std::max(row_height,
                 8 + small_line * static_cast<double>(wrap(printable(name), letters_of_a_category).size()));
  const double bottom =
      top + (across(chart) ? row_height * static_cast<double>(chart.categories.size()) : height);
  return {chart,
          left,
          top,
          right,
          bottom,
          across(chart) ? values_scale(chart, left, right) : place_scale(chart, left, right),
          values_scale(chart, bottom, top),
          row_height};
}

std::string file_words(const std::string& title) {
  constexpr std::size_t most = 60;
  return underscored(lower_case(title)).substr(0, most);
}

}  // namespace

std::string svg_of(const Chart& chart) {
  std::string body = words(side, 26, 17, "ink", chart.title, "start", true);
  double y = 48;
  y += legend(body, chart, y) + (across(chart) ? 0 : line_height);
  const Plot plot = placed(chart, y);
  axes(body, plot);
  if (across(chart)) categories(body, plot);
  for (std::size_t i = 0; i < chart.series.size(); ++i)
    plot.draw(body, chart.series[i], chart.series[i].style.value_or(static_cast<int>(i)));
  y = plot.bottom + 60;
  for (const std::string_view text : {std::string_view(chart.sentence), standing_notice, standing_advice})
    y += paragraph(body, text, y, text == standing_notice ? "ink" : "quiet");
  return fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{0:.0f}\" height=\"{1:.0f}\" viewBox=\"0 0 {0:.0f} "
      "{1:.0f}\" role=\"img\" font-family=\"DejaVu Sans, Verdana, Arial, sans-serif\">\n<title>{2}</title>\n"
      "<desc>{3}</desc>\n<metadata>{7}</metadata>\n{4}<rect width=\"{0:.0f}\" height=\"{1:.0f}\" "
      "fill=\"{5}\"/>\n"
      "{6}</svg>\n",
      width, y, escaped(chart.title), escaped(chart.sentence), hatches(), style_value("page"), body,
      escaped(made_by_line()));
}

std::vector<NamedChart> charts_of(const Page& page) {
  std::vector<NamedChart> out;
  for (const Section& section : page.sections)
    for (const Block& block : section.blocks) {
      const auto* chart = std::get_if<Chart>(&block);
      if (!chart || chart->series.empty()) continue;
      out.push_back({fmt::format("{:02}_{}", out.size() + 1, file_words(chart->title)), chart});
    }
  return out;
}

}  // namespace bide::report::html
