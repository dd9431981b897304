#include "bide/report/html/svg_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "bide/report/html/escape.hpp"

namespace bide::report::html {

using document::Kind;

namespace embedded {
extern const std::string_view style;
}

namespace {

constexpr int looks = 6;

int look(int style) {
  return style % looks;
}

}  // namespace

double nice_step(double span, double about) {
  const double raw = span / about, decade = std::pow(10.0, std::floor(std::log10(raw)));
  for (const double step : {1.0, 2.0, 5.0})
    if (raw <= step * decade) return step * decade;
  return 10 * decade;
}

void Extent::take(double value) {
  if (!std::isfinite(value)) return;
  low = std::min(low, value);
  high = std::max(high, value);
}

Scale Extent::scale(double from, double to, bool whole) const {
  Scale out{low, high, from, to};
  if (low > high) out.low = 0, out.high = 1;
  // Values that differ by rounding alone are one value: ticks between them would be none.
  constexpr double rounding = 1e-9;
  const double size = std::max(std::abs(out.low), std::abs(out.high));
  if (out.high - out.low <= rounding * size) out.high = out.low + std::max(1.0, 2 * rounding * size);
  if (!whole) return out;
  constexpr double steps = 6;
  const double every = nice_step(out.high - out.low, steps);
  out.low = std::floor(out.low / every) * every;
  out.high = std::ceil(out.high / every) * every;
  return out;
}

std::string style_value(std::string_view name) {
  const std::string key = fmt::format("--{}: ", name);
  const std::size_t at = embedded::style.find(key), from = at + key.size();
  if (at == std::string_view::npos) return "#000000";
  return std::string(embedded::style.substr(from, embedded::style.find(';', from) - from));
}

std::string series_colour(int style) {
  return style_value(fmt::format("series-{}", look(style)));
}

std::string dashes(int style) {
  const std::string dash = style_value(fmt::format("dash-{}", look(style)));
  return dash == "none" ? "" : fmt::format(" stroke-dasharray=\"{}\"", dash);
}

std::string hatch(int style) {
  return fmt::format("url(#hatch-{})", look(style));
}

std::string hatches() {
  std::string out = "<defs>\n";
  for (int i = 0; i < looks; ++i)
    out += fmt::format(
        "<pattern id=\"hatch-{0}\" width=\"8\" height=\"8\" patternUnits=\"userSpaceOnUse\"><rect "
        "width=\"8\" "
        "height=\"8\" fill=\"{1}\" fill-opacity=\"0.22\"/><path d=\"{2}\" stroke=\"{1}\" "
        "stroke-width=\"1.6\" "
        "fill=\"none\"/></pattern>\n",
        i, series_colour(i), style_value(fmt::format("hatch-{}", i)));
  return out + "</defs>\n";
}

std::string words(double x, double y, int size, std::string_view colour, std::string_view text,
                  std::string_view anchor, bool bold) {
  return fmt::format(
      "<text x=\"{:.1f}\" y=\"{:.1f}\" font-size=\"{}\" fill=\"{}\" text-anchor=\"{}\"{}>{}</text>\n", x, y,
      size, style_value(colour), anchor, bold ? " font-weight=\"bold\"" : "", escaped(text));
}

std::string symbol(int style, double x, double y) {
  constexpr double r = 4.5;
  static constexpr std::array<const char*, looks> paths{"",
                                                        "M-4,-4H4V4H-4Z",
                                                        "M0,-5L5,4H-5Z",
                                                        "M0,-6L4.5,0L0,6L-4.5,0Z",
                                                        "M-5,0H5M0,-5V5",
                                                        "M-5,0L-2.5,-4.3H2.5L5,0L2.5,4.3H-2.5Z"};
  const char* path = paths[static_cast<std::size_t>(look(style))];
  const std::string shape =
      *path ? fmt::format("<path d=\"{}\" transform=\"translate({:.1f},{:.1f})\"", path, x, y)
            : fmt::format("<circle cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"{}\"", x, y, r);
  return fmt::format("{} fill=\"{}\" stroke=\"{}\" stroke-width=\"2\"/>\n", shape, style_value("page"),
                     series_colour(style));
}

std::string sample(Kind kind, bool across, int style, double x, double y, double wide) {
  const std::string colour = series_colour(style);
  constexpr double half = 5;
  const auto box = [&](const std::string& fill, double opacity, bool edged) {
    return fmt::format(
        "<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{}\" fill=\"{}\" "
        "fill-opacity=\"{}\"{}/>\n",
        x, y - half, wide, 2 * half, fill, opacity, edged ? fmt::format(" stroke=\"{}\"", colour) : "");
  };
  switch (kind) {
    case Kind::band:
      return box(colour, 0.2, false);
    case Kind::bars:
      return box(colour, 0.3, true);
    case Kind::spans:
      return across ? box(hatch(style), 1, true) : box(style_value("ink"), 0.12, false);
    case Kind::points:
      return symbol(style, x + wide / 2, y);
    case Kind::marks:
      return fmt::format(
          "<line x1=\"{0:.1f}\" y1=\"{1:.1f}\" x2=\"{0:.1f}\" y2=\"{2:.1f}\" stroke=\"{3}\" "
          "stroke-width=\"1.5\" stroke-dasharray=\"4 3\"/>\n",
          x + wide / 2, y - half, y + half, colour);
    case Kind::line:
      break;
  }
  return fmt::format(
      "<line x1=\"{:.1f}\" y1=\"{:.1f}\" x2=\"{:.1f}\" y2=\"{:.1f}\" stroke=\"{}\" "
      "stroke-width=\"2\"{}/>\n",
      x, y, x + wide, y, colour, dashes(style));
}

}  // namespace bide::report::html
