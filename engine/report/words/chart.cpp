#include "bide/report/words/chart.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "bide/core/digits.hpp"
#include "bide/core/units.hpp"
#include "bide/outcome/measures.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

constexpr int gutter = 10;  // columns left of the plot: a label and a bar
constexpr double gap = std::numeric_limits<double>::quiet_NaN();

int plot_width(const ChartArea& area) {
  return std::max(10, area.width - gutter);
}

// One value per column of the plot: the values inside it and the one at its middle.
std::vector<double> binned(const Chart& chart, const std::vector<double>& time_s, const ChartArea& area) {
  const int width = plot_width(area);
  std::vector<double> bins(static_cast<std::size_t>(width), gap);
  std::size_t next = 0;
  for (int c = 0; c < width; ++c) {
    const double from_s = area.horizon_s * c / width, to_s = area.horizon_s * (c + 1) / width;
    const double middle_s = 0.5 * (from_s + to_s);
    double low = gap, high = gap, sum = 0;
    int count = 0;
    const auto take = [&](double value) {
      if (!std::isfinite(value)) return;
      low = count == 0 ? value : std::min(low, value);
      high = count == 0 ? value : std::max(high, value);
      sum += value;
      ++count;
    };
    for (; next < time_s.size() && time_s[next] < to_s; ++next) take(chart.values[next]);
    if (!time_s.empty() && middle_s <= time_s.back()) {
      take(outcome::value_at(time_s, chart.values, middle_s).value_or(gap));
    }
    if (count == 0) continue;
    bins[static_cast<std::size_t>(c)] = chart.bin == Bin::lowest    ? low
                                        : chart.bin == Bin::highest ? high
                                                                    : sum / count;
  }
  return bins;
}

struct Scale {
  double low = 0, high = 1;
};

// Bounds on a step of 1, 2 or 5 times a power of ten.
Scale scale_of(const std::vector<double>& bins, bool from_zero, double least_span) {
  double low = from_zero ? 0 : std::numeric_limits<double>::infinity(), high = -low;
  if (from_zero) high = 0;
  for (const double value : bins) {
    if (!std::isfinite(value)) continue;
    low = std::min(low, value);
    high = std::max(high, value);
  }
  if (!std::isfinite(low)) return {};
  const double span = std::max(high - low, least_span);
  const double decade = std::pow(10.0, std::floor(std::log10(span)));
  const double share = span / decade;
  const double step = decade * (share < 2 ? 0.5 : share < 5 ? 1 : 2);
  const double bottom = std::floor(low / step) * step;
  return {bottom, std::max(std::ceil(high / step) * step, bottom + std::ceil(least_span / step) * step)};
}

const char* const blocks[] = {" ", "▁", "▂", "▃", "▄", "▅", "▆", "▇", "█"};
const char* const marks[] = {" ", ".", ":", "#"};

// `fill` of one cell, 0 to 1. A finite value always leaves a trace in the lowest row.
std::string cell(double fill, Letters letters, bool lowest_row) {
  const int levels = letters == Letters::utf8 ? 8 : 3;
  int level = static_cast<int>(std::lround(std::clamp(fill, 0.0, 1.0) * levels));
  if (lowest_row) level = std::max(level, 1);
  return letters == Letters::utf8 ? blocks[level] : marks[level];
}

std::string scale_label(double value, double span) {
  return with_thousands(fmt::format("{:.{}f}", value + 0.0, span >= 5 ? 0 : 1));
}

}  // namespace

std::vector<std::string> draw(const Chart& chart, const std::vector<double>& time_s, const ChartArea& area) {
  std::vector<std::string> lines;
  lines.push_back(cut(chart.title + ", " + chart.unit, area.width));
  const std::vector<double> bins = binned(chart, time_s, area);
  const Scale scale = scale_of(bins, chart.from_zero, chart.least_span);
  const double span = scale.high - scale.low;
  for (int row = area.rows - 1; row >= 0; --row) {
    std::string label;
    if (row == area.rows - 1) label = scale_label(scale.high, span);
    if (row == 0) label = scale_label(scale.low, span);
    std::string line = fmt::format("{:>8} |", label);
    for (const double value : bins) {
      if (std::isfinite(value)) {
        line += cell((value - scale.low) / span * area.rows - row, area.letters, row == 0);
      } else {
        line += ' ';
      }
    }
    line.erase(line.find_last_not_of(' ') + 1);
    lines.push_back(line);
  }
  return lines;
}

std::vector<std::string> draw_axis(const ChartArea& area) {
  constexpr double most_ticks = 7;
  const int width = plot_width(area);
  constexpr double steps_s[] = {hour_s / 6,  hour_s / 2, hour_s,    2 * hour_s, 6 * hour_s,
                                12 * hour_s, day_s,      2 * day_s, 5 * day_s,  10 * day_s};
  double step_s = steps_s[std::size(steps_s) - 1];
  for (const double candidate : steps_s) {
    if (area.horizon_s / candidate <= most_ticks) {
      step_s = candidate;
      break;
    }
  }
  std::string ticks(static_cast<std::size_t>(width), '-');
  std::string labels(static_cast<std::size_t>(width), ' ');
  std::size_t free_from = 0;
  for (int i = 0; area.horizon_s > 0 && i * step_s <= area.horizon_s; ++i) {
    const auto at = static_cast<std::size_t>(
        std::min<double>(width - 1, std::floor(i * step_s / area.horizon_s * width)));
    ticks[at] = '+';
    const double time_s = i * step_s;
    const std::string label = step_s >= day_s    ? fmt::format("{:.3g} d", time_s / day_s)
                              : step_s >= hour_s ? fmt::format("{:.3g} h", time_s / hour_s)
                                                 : fmt::format("{:.3g} min", time_s / 60);
    const std::size_t start = std::min(at, labels.size() - label.size());
    if (start < free_from) continue;
    labels.replace(start, label.size(), label);
    free_from = start + label.size() + 1;
  }
  labels.erase(labels.find_last_not_of(' ') + 1);
  return {std::string(gutter - 1, ' ') + "+" + ticks, std::string(gutter, ' ') + labels};
}

}  // namespace bide::report
