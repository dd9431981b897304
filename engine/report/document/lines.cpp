#include "bide/report/document/lines.hpp"
#include "bide/core/units.hpp"

#include <algorithm>

namespace bide::report::pages {
namespace {

constexpr std::size_t most_points = 150;

}  // namespace

std::set<double> drawn_times(const std::vector<Curve>& curves) {
  std::set<double> out;
  for (const Curve& curve : curves) {
    const std::vector<double>& time_s = *curve.time_s;
    const auto end = std::upper_bound(time_s.begin(), time_s.end(), curve.until_s) - time_s.begin();
    if (end == 0) continue;
    const std::size_t every = (time_s.size() + most_points - 1) / most_points;
    const auto begin = curve.values->begin();
    const auto [low, high] = std::minmax_element(begin, begin + end);
    for (std::size_t i = 0; i < static_cast<std::size_t>(end); i += every) out.insert(time_s[i]);
    for (const auto place : {low - begin, high - begin, end - 1})
      out.insert(time_s[static_cast<std::size_t>(place)]);
  }
  return out;
}

std::vector<document::Series> lines(const std::vector<Curve>& curves) {
  const std::set<double> times = drawn_times(curves);
  std::vector<document::Series> out;
  int style = 0;
  for (const Curve& curve : curves) {
    document::Series line{curve.name, document::Kind::line, {}, style++};
    for (std::size_t i = 0; i < curve.time_s->size() && (*curve.time_s)[i] <= curve.until_s; ++i)
      if (times.contains((*curve.time_s)[i]))
        line.points.push_back({(*curve.time_s)[i] / hour_s, (*curve.values)[i]});
    out.push_back(std::move(line));
  }
  return out;
}

}  // namespace bide::report::pages
