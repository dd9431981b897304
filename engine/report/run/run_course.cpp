#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>

#include "bide/core/people.hpp"
#include "bide/core/units.hpp"
#include "bide/report/document/lines.hpp"
#include "bide/report/run/run_parts.hpp"
#include "bide/report/run/weather_curves.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {
namespace {

using document::Axis;
using document::Chart;
using document::Kind;
using document::Point;
using document::Series;
using timeline::PersonSeries;

Chart base(const Material& m, const char* title, const char* sentence, const Axis& y) {
  Chart out;
  out.title = title;
  out.sentence = sentence;
  out.x = hours_axis(m);
  out.y = y;
  if (Series dark = nights(m); !dark.points.empty()) {
    dark.style = 5;
    out.series.push_back(std::move(dark));
  }
  return out;
}

void add_lines(Chart& chart, const std::vector<Curve>& curves) {
  for (Series& line : lines(curves)) chart.series.push_back(std::move(line));
}

// The lowest, the middle and the highest of those alive.
void add_band(Chart& chart, const Material& m, const std::vector<Curve>& curves) {
  Series band{"lowest to highest of the crew", Kind::band, {}, 0},
      middle{"middle of the crew", Kind::line, {}, 0};
  const std::set<double> times = drawn_times(curves);
  for (std::size_t i = 0; i < m.timeline.time_s.size(); ++i) {
    const double time_s = m.timeline.time_s[i];
    if (!times.contains(time_s)) continue;
    std::vector<double> alive;
    for (const Curve& curve : curves)
      if (time_s <= curve.until_s) alive.push_back((*curve.values)[i]);
    if (alive.empty()) break;
    std::sort(alive.begin(), alive.end());
    const double hours = time_s / hour_s;
    const std::size_t low = (alive.size() - 1) / 2, high = alive.size() / 2;
    middle.points.push_back({hours, 0.5 * (alive[low] + alive[high])});
    band.points.push_back({hours, Point::none, alive.front(), alive.back(), ""});
  }
  chart.series.push_back(std::move(band));
  chart.series.push_back(std::move(middle));
}

// The limits of being able on what the chart shows, each across the whole of it once something came more than
// half of the way there; a chart on which nothing did is folded.
void add_limits(Chart& chart, const Material& m, system::quantity::Id shown) {
  const scenario::Limits& stated = m.scenario.scenario.limits;
  std::vector<Series> marks;
  for (const system::LimitRow& row : system::limits) {
    if (row.of != shown || row.meaning != system::Meaning::unable || row.stated.member == nullptr) continue;
    const double limit = stated.*row.stated.member, normal = system::quantities[shown].normal;
    const auto near = [&](double y) { return (y - normal) / (limit - normal) > 0.5; };
    if (std::any_of(chart.series.begin(), chart.series.end(), [&](const Series& series) {
          return std::any_of(series.points.begin(), series.points.end(), [&](const Point& point) {
            return near(point.y) || (series.kind == Kind::band && (near(point.low) || near(point.high)));
          });
        }))
      marks.push_back({fmt::format("limit of being able, {}", row.cause),
                       Kind::line,
                       {{0, limit}, {drawn_s(m) / hour_s, limit}},
                       5});
  }
  chart.folded = marks.empty();
  for (Series& mark : marks) chart.series.push_back(std::move(mark));
}

Chart folded(Chart chart) {
  chart.folded = true;
  return chart;
}

Chart temperatures(const Material& m) {
  const timeline::Timeline& t = m.timeline;
  Chart out = base(m, "Inside, outside and the sea",
                   "Air inside the raft, air outside and the sea against time.", {"temperature", "°C"});
  std::vector<Curve> curves;
  if (t.in_raft) curves.push_back({"inside the raft", &t.time_s, &t.inside_air_degC, m.outcome.watched_s});
  curves.push_back({"outside air", &t.time_s, &t.outside_air_degC, m.outcome.watched_s});
  curves.push_back({"sea", &t.time_s, &t.sea_degC, m.outcome.watched_s});
  add_lines(out, curves);
  return out;
}

Chart core(const Material& m) {
  Chart out = of_persons(m, "Core temperature", "Deep body temperature of each person while alive.",
                         {"core", "°C"}, &PersonSeries::core_degC);
  add_limits(out, m, system::quantity::core);
  return out;
}

Chart deficit(const Material& m) {
  Chart out = of_persons(m, "Water lost and not replaced",
                         "Water deficit of each person, in per cent of body mass, while alive.",
                         {"water deficit", "% of body mass", true}, &PersonSeries::water_deficit_pct);
  add_limits(out, m, system::quantity::deficit);
  return out;
}

// Weather that stays the same is among the inputs and needs no chart; no limit is stated on any of it.
void add_weather(document::Section& section, const Material& m) {
  for (const WeatherCurve& curve : weather_curves) {
    const std::vector<double>& values = m.timeline.*curve.values;
    if (std::adjacent_find(values.begin(), values.end(), std::not_equal_to<>()) == values.end()) continue;
    Chart out = base(m, curve.title, curve.sentence, curve.y);
    add_lines(out, {{"at sea", &m.timeline.time_s, &values, m.outcome.watched_s}});
    section.blocks.push_back(folded(std::move(out)));
  }
}

void add_store(document::Section& section, const Material& m, const char* title, const char* sentence,
               const Axis& y, const std::vector<double>& values) {
  if (values.empty() || *std::max_element(values.begin(), values.end()) <= 0) return;
  Chart out = base(m, title, sentence, y);
  add_lines(out, {{"left aboard", &m.timeline.time_s, &values, m.outcome.watched_s}});
  out.folded = true;
  section.blocks.push_back(std::move(out));
}

Chart foul_air(const Material& m) {
  Chart out = base(m, "Carbon dioxide inside",
                   "Carbon dioxide in the air of the raft; outside has about 420 ppm.", {"CO2", "ppm", true});
  add_lines(out, {{"inside the raft", &m.timeline.time_s, &m.timeline.co2_ppm, m.outcome.watched_s}});
  add_limits(out, m, system::quantity::co2);
  return out;
}

}  // namespace

document::Chart of_persons(const Material& m, const char* title, const char* sentence, const Axis& y,
                           std::vector<double> PersonSeries::*column) {
  Chart out = base(m, title, sentence, y);
  std::vector<Curve> curves;
  for (const std::vector<int>& group : alike(m)) {
    const auto p = static_cast<std::size_t>(group.front());
    curves.push_back({person_names(group), &m.timeline.time_s, &(m.timeline.persons[p].*column),
                      m.outcome.persons[p].alive.at_s.value_or(m.outcome.horizon_s)});
  }
  if (curves.size() <= most_lines) {
    add_lines(out, curves);
  } else {
    add_band(out, m, curves);
  }
  return out;
}

document::Section course_section(const Material& m) {
  document::Section out{"How it goes", {}};
  out.blocks.push_back(document::Paragraph{
      "What came half of the way to a limit of being able is drawn; the other charts open by their titles.",
      false, false});
  if (m.timeline.persons.size() > most_lines)
    out.blocks.push_back(document::Paragraph{
        fmt::format("For a crew of {} the charts show the lowest, the middle and the highest of those alive.",
                    m.timeline.persons.size())});
  Chart cores = core(m), around = temperatures(m);
  around.folded = cores.folded;  // what is around people matters where cold or heat comes near
  out.blocks.push_back(std::move(around));
  add_weather(out, m);
  out.blocks.push_back(std::move(cores));
  out.blocks.push_back(folded(of_persons(m, "Skin", "Mean skin temperature of each person while alive.",
                                         {"mean skin", "°C"}, &PersonSeries::mean_skin_degC)));
  out.blocks.push_back(deficit(m));
  add_store(out, m, "Drinking water aboard", "Litres of drinking water left aboard, for the whole crew.",
            {"water", "L", true}, m.timeline.water_L);
  add_store(out, m, "Food aboard", "Kilojoules of food left aboard, for the whole crew.",
            {"food", "kJ", true}, m.timeline.food_kJ);
  if (m.timeline.in_raft) out.blocks.push_back(foul_air(m));
  return out;
}

}  // namespace bide::report::pages
