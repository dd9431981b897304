#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <initializer_list>
#include <limits>
#include <string>

#include "bide/body/hands.hpp"
#include "bide/constants/hands.hpp"
#include "bide/constants/limits.hpp"
#include "bide/core/people.hpp"
#include "bide/core/units.hpp"
#include "bide/report/run/run_parts.hpp"
#include "bide/report/words/words.hpp"
#include "bide/system/tasks.hpp"

namespace bide::report::pages {
namespace {

using document::Kind;
using document::Point;
using document::Series;
using timeline::PersonSeries;

constexpr std::size_t most_with_bars = 6;

// What a row of the chart is about: the tasks of one grip.
struct GripRow {
  system::Grip by;
  std::vector<double> PersonSeries::*possible;
  std::vector<double> PersonSeries::*pace;  // null: whole until lost
};
constexpr GripRow grips[] = {{system::Grip::fingers, &PersonSeries::fine_work, &PersonSeries::task_ability},
                             {system::Grip::hand, &PersonSeries::grip, nullptr}};

// "open a sachet of water, fire a signal"
std::string tasks_by(system::Grip grip) {
  std::string out;
  for (const system::TaskRow& task : system::tasks)
    if (task.by == grip) out += (out.empty() ? "" : ", ") + std::string(task.words);
  return out;
}

constexpr double clumsy_pace = 0.5;  // twice as long
enum HandState : std::size_t { can, clumsy, hands_fail, not_able, state_count };

// Of one person at one output time, or of the crew: the best that anybody can.
HandState state_of(const Material& m, std::size_t p, std::size_t i, const GripRow& row) {
  const PersonSeries& person = m.timeline.persons[p];
  if ((person.*row.possible)[i] > 0) return row.pace && (person.*row.pace)[i] <= clumsy_pace ? clumsy : can;
  const auto& able_until_s = m.outcome.persons[p].able.at_s;
  return able_until_s && m.timeline.time_s[i] >= *able_until_s ? not_able : hands_fail;
}

// Spells of one state become pieces of the bar of one category.
template <class StateAt>
void add_spells(const Material& m, double category, double until_s, std::array<Series, state_count>& series,
                const StateAt& state_at) {
  const std::vector<double>& t = m.timeline.time_s;
  std::size_t from = 0;
  for (std::size_t i = 1; i <= t.size() && t[from] < until_s; ++i) {
    const bool last = i == t.size() || t[i] >= until_s;
    if (!last && state_at(i) == state_at(from)) continue;
    const double to_s = last ? std::min(until_s, m.timeline.horizon_s) : t[i];
    series[state_at(from)].points.push_back({category, Point::none, t[from] / hour_s, to_s / hour_s, ""});
    from = i;
    if (last) break;
  }
}

double alive_until_s(const Material& m, std::size_t p) {
  return m.outcome.persons[p].alive.at_s.value_or(m.outcome.horizon_s);
}

// "1.2 times as long at 14 °C, 2 times at 12 °C"
std::string paces() {
  std::string out;
  for (const double degC : {14.0, 12.0, 10.0})
    out += fmt::format("{}{:.2g} times{} at {:g} °C", out.empty() ? "" : ", ", 1 / body::dexterity(degC),
                       out.empty() ? " as long" : "", degC);
  return out;
}

document::Chart tasks_chart(const Material& m) {
  document::Chart out;
  out.title = "Who can use their hands, and when";
  out.sentence = fmt::format(
      "Hours in which a task is possible. With the fingers: {}. With the hand: {}. Cold fingers take {}; "
      "where they take twice as long or more they are called clumsy. Below {:g} °C of fingers or hand a task "
      "is taken as "
      "impossible; nobody is taken to warm their hands on the body first. A hand that can do its task is "
      "taken to keep its pace.",
      tasks_by(system::Grip::fingers), tasks_by(system::Grip::hand), paces(),
      constants::hand_function_lost_degC.value);
  out.x = {"who"};
  out.y = hours_axis(m);
  std::array<Series, state_count> series{Series{"possible", Kind::spans, {}, 0},
                                         Series{"clumsy: takes twice as long or more", Kind::spans, {}, 2},
                                         Series{"hands too cold or hurt", Kind::spans, {}, 1},
                                         Series{"alive, not able", Kind::spans, {}, 5}};
  const std::size_t persons = m.timeline.persons.size();
  const auto add = [&](const std::string& who, double until_s, const auto& state_at) {
    for (const GripRow& row : grips) {
      out.categories.push_back(who + (row.by == system::Grip::fingers ? ", fingers" : ", hand"));
      add_spells(m, static_cast<double>(out.categories.size() - 1), until_s, series,
                 [&](std::size_t i) { return state_at(i, row); });
    }
  };
  if (persons > 1)
    add("anybody", m.outcome.watched_s, [&](std::size_t i, const GripRow& row) {
      HandState best = not_able;
      for (std::size_t p = 0; p < persons; ++p)
        if (m.timeline.time_s[i] < alive_until_s(m, p)) best = std::min(best, state_of(m, p, i, row));
      return best;
    });
  if (persons <= most_with_bars)
    for (const std::vector<int>& group : alike(m)) {
      const auto p = static_cast<std::size_t>(group.front());
      add(person_names(group), alive_until_s(m, p),
          [&](std::size_t i, const GripRow& row) { return state_of(m, p, i, row); });
    }
  out.folded = series[clumsy].points.empty() && series[hands_fail].points.empty();
  for (Series& each : series)
    if (!each.points.empty()) out.series.push_back(std::move(each));
  return out;
}

struct Level {
  double degC;
  const char* name;
  int style = 5;
};

// Levels that somebody came below are drawn across. Folded unless that is so of the last.
document::Chart with_levels(document::Chart chart, const Material& m,
                            std::vector<double> PersonSeries::*column, std::initializer_list<Level> levels) {
  double least_degC = std::numeric_limits<double>::infinity();
  for (std::size_t p = 0; p < m.timeline.persons.size(); ++p)
    for (std::size_t i = 0; i < m.timeline.time_s.size() && m.timeline.time_s[i] <= alive_until_s(m, p); ++i)
      least_degC = std::min(least_degC, (m.timeline.persons[p].*column)[i]);
  for (const Level& level : levels) {
    chart.folded = least_degC >= level.degC;
    if (!chart.folded)
      chart.series.push_back(
          {level.name, Kind::line, {{0, level.degC}, {drawn_s(m) / hour_s, level.degC}}, level.style});
  }
  return chart;
}

}  // namespace

document::Section hands_section(const Material& m) {
  const Level lost{constants::hand_function_lost_degC, "function lost"};
  document::Section out{"Hands and feet", {}};
  out.blocks.push_back(tasks_chart(m));
  out.blocks.push_back(with_levels(
      of_persons(
          m, "Fingers",
          fmt::format("Finger temperature of each person while alive. Below about {:g} °C fine work is "
                      "slower.",
                      constants::dexterity_finger_degC.value)
              .c_str(),
          {"fingers", "°C"}, &PersonSeries::finger_degC),
      m, &PersonSeries::finger_degC, {{constants::dexterity_finger_degC, "slower below", 4}, lost}));
  out.blocks.push_back(
      with_levels(of_persons(m, "Hands", "Skin of the hands of each person, fingers apart, while alive.",
                             {"hands", "°C"}, &PersonSeries::hand_skin_degC),
                  m, &PersonSeries::hand_skin_degC, {lost}));
  out.blocks.push_back(
      with_levels(of_persons(m, "Feet",
                             "Skin of the feet of each person while alive. The hours in which the toes are "
                             "colder than the line count towards cold injury.",
                             {"feet", "°C"}, &PersonSeries::foot_skin_degC),
                  m, &PersonSeries::foot_skin_degC,
                  {{constants::wet_cold_injury_degC, "hours below count towards cold injury"}}));
  return out;
}

}  // namespace bide::report::pages
