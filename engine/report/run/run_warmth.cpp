#include <fmt/format.h>

#include <cmath>

#include "bide/core/units.hpp"
#include "bide/report/run/run_parts.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {
namespace {

using timeline::PersonSeries;
using timeline::Timeline;

// 1 for output times at night, 0 for those by day.
std::vector<char> by_night(const Material& m) {
  std::vector<char> out(m.timeline.time_s.size(), 0);
  for (const document::Point& night : nights(m).points)
    for (std::size_t i = 0; i < out.size(); ++i) {
      const double hours = m.timeline.time_s[i] / hour_s;
      if (hours >= night.low && hours < night.high) out[i] = 1;
    }
  return out;
}

// Mean of a column up to `until_s` over the times with the wanted mark; empty when there are none.
std::optional<double> mean(const Material& m, const std::vector<double>& values, double until_s,
                           const std::vector<char>& marks, char wanted) {
  double sum = 0;
  int count = 0;
  for (std::size_t i = 0; i < values.size() && m.timeline.time_s[i] <= until_s; ++i) {
    if (marks[i] != wanted) continue;
    sum += values[i];
    ++count;
  }
  if (count == 0) return std::nullopt;
  return sum / count;
}

std::optional<double> mean_person(const Material& m, std::vector<double> PersonSeries::*column,
                                  const std::vector<char>& marks, char wanted) {
  double sum = 0;
  int count = 0;
  for (std::size_t p = 0; p < m.timeline.persons.size(); ++p) {
    const double until_s = m.outcome.persons[p].alive.at_s.value_or(m.outcome.horizon_s);
    const auto one = mean(m, m.timeline.persons[p].*column, until_s, marks, wanted);
    if (!one) continue;
    sum += *one;
    ++count;
  }
  if (count == 0) return std::nullopt;
  return sum / count;
}

template <class MeanOf>
document::Chart flows(const char* title, const char* sentence, const std::vector<std::string>& names,
                      const MeanOf& mean_of) {
  document::Chart out;
  out.title = title;
  out.sentence = sentence;
  out.x = {"flow"};
  out.y = {"heat", "W", true};
  document::Series night{"by night", document::Kind::bars, {}, 0},
      day{"by day", document::Kind::points, {}, 1};
  constexpr double worth_a_row_W = 0.5;
  for (std::size_t i = 0; i < names.size(); ++i) {
    const auto dark = mean_of(i, char{1}), light = mean_of(i, char{0});
    if (std::abs(dark.value_or(0)) < worth_a_row_W && std::abs(light.value_or(0)) < worth_a_row_W) continue;
    const double x = static_cast<double>(out.categories.size());
    out.categories.push_back(names[i]);
    if (dark) night.points.push_back({x, *dark});
    if (light) day.points.push_back({x, *light});
  }
  for (document::Series* each : {&night, &day})
    if (!each->points.empty()) out.series.push_back(std::move(*each));
  return out;
}

document::Chart body(const Material& m, const std::vector<char>& marks) {
  static constexpr std::pair<const char*, std::vector<double> PersonSeries::*> rows[] = {
      {"made by the body", &PersonSeries::metabolic_W},
      {"of it by shivering", &PersonSeries::shivering_W},
      {"lost to the air", &PersonSeries::heat_loss_air_W},
      {"lost to canopy or sky", &PersonSeries::heat_loss_canopy_W},
      {"lost to the floor", &PersonSeries::heat_loss_floor_W},
      {"lost to water", &PersonSeries::heat_loss_water_W},
      {"lost by drying", &PersonSeries::heat_loss_evaporation_W},
      {"lost with the breath", &PersonSeries::heat_loss_breath_W}};
  std::vector<std::string> names;
  for (const auto& row : rows) names.emplace_back(row.first);
  return flows(
      "Where one person's warmth goes",
      "Heat made by a person and lost by each way, mean over the crew and over the nights and the days of "
      "the stay; drying is of skin and clothes. Below zero is heat gained.",
      names, [&](std::size_t i, char wanted) { return mean_person(m, rows[i].second, marks, wanted); });
}

document::Chart cabin(const Material& m, const std::vector<char>& marks) {
  static constexpr std::pair<const char*, std::vector<double> Timeline::*> rows[] = {
      {"from the people", &Timeline::cabin_from_bodies_W},
      {"from the sun", &Timeline::cabin_from_sun_W},
      {"out by the canopy", &Timeline::cabin_to_outside_through_canopy_W},
      {"out with the air", &Timeline::cabin_to_outside_by_air_W},
      {"out to the sea", &Timeline::cabin_to_sea_W}};
  std::vector<std::string> names;
  for (const auto& row : rows) names.emplace_back(row.first);
  return flows(
      "Where the raft's warmth goes",
      "Heat into the raft from people and sun, and out of it by each way, mean over the nights and the days "
      "of the stay. Below zero it flows the other way.",
      names, [&](std::size_t i, char wanted) {
        return mean(m, m.timeline.*rows[i].second, m.outcome.watched_s, marks, wanted);
      });
}

}  // namespace

document::Section warmth_section(const Material& m) {
  const std::vector<char> marks = by_night(m);
  std::vector<document::Chart> charts{body(m, marks)};
  if (m.timeline.in_raft) charts.push_back(cabin(m, marks));
  document::Section out{"Where does the warmth go?", {}};
  for (document::Chart& chart : charts) {
    chart.folded = true;
    out.blocks.push_back(std::move(chart));
  }
  return out;
}

}  // namespace bide::report::pages
