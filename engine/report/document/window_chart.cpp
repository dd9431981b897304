#include "bide/report/document/window_chart.hpp"

#include <fmt/format.h>

#include <utility>

#include "bide/core/units.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {

using document::Kind;
using document::Point;

document::Axis time_axis(double horizon_s) {
  constexpr double quarter_day_h = 6, long_h = 48;
  const double hours = horizon_s / hour_s;
  return {"time since the start", "h", true, hours >= long_h ? day_h : hours >= day_h ? quarter_day_h : 0};
}

WindowRow window_row(std::string name, const outcome::CrewTimes& central, const study::RangeMembers& members,
                     study::CrewState state, study::CrewTime which) {
  WindowRow out{std::move(name), {}, central.*which};
  if (!members.empty()) out.range = study::range_over(central, members, state, which);
  return out;
}

document::Chart window_chart(const std::vector<WindowRow>& rows, double horizon_s) {
  document::Chart out;
  const double horizon_h = horizon_s / hour_s;
  const std::string onward = "goes on after " + horizon(horizon_s);
  out.title = "Until when";
  out.sentence = fmt::format(
      "Until when people are able and alive: the bar is the range, the dot the central case. A bar that ends "
      "in an arrow {}; where no dot is, the central case does too.",
      onward);
  out.x = {"who"};
  out.y = time_axis(horizon_s);
  document::Series range{"range", Kind::spans, {}, 0}, central{"central case", Kind::points, {}, 1};
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const WindowRow& row = rows[i];
    const double x = static_cast<double>(i);
    out.categories.push_back(row.name);
    if (row.range) {
      const auto& [earliest_s, latest_s] = *row.range;
      range.points.push_back({x, Point::none, earliest_s ? *earliest_s / hour_s : horizon_h,
                              latest_s ? *latest_s / hour_s : horizon_h, "", !latest_s});
      if (!latest_s) range.name = "range, arrow: " + onward;
    }
    if (row.central_s)
      central.points.push_back({x, *row.central_s / hour_s});
    else if (!row.range)
      range.points.push_back({x, Point::none, horizon_h, horizon_h, "", true});
  }
  for (document::Series* each : {&range, &central})
    if (!each->points.empty()) out.series.push_back(std::move(*each));
  return out;
}

}  // namespace bide::report::pages
