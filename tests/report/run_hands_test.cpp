// Who can use their hands when: bars from a timeline made by hand, in which Person A is able to 40 h and
// alive to 60 h, and the others throughout the 120 h.
#include <doctest/doctest.h>

#include <algorithm>

#include "bide/core/units.hpp"
#include "bide/report/run/run_page.hpp"
#include "support/synthetic_timeline.hpp"

using namespace bide;
namespace document = report::document;

namespace {

document::Chart hands_chart(const timeline::Timeline& timeline, int persons, std::size_t place) {
  const scenario::ValidScenario scenario = test::valid_scenario(persons);
  const outcome::Outcome outcome = outcome::read_outcome(timeline, scenario);
  const document::Page page = report::pages::run_page({{outcome, timeline, scenario}, {}});
  const auto at = std::find_if(page.sections.begin(), page.sections.end(),
                               [](const document::Section& each) { return each.title == "Hands and feet"; });
  REQUIRE(at != page.sections.end());
  return std::get<document::Chart>(at->blocks.at(place));
}

document::Chart tasks_of(const timeline::Timeline& timeline, int persons) {
  return hands_chart(timeline, persons, 0);
}

timeline::Timeline with_warm_hands(int persons) {
  timeline::Timeline t = test::synthetic_timeline(persons);
  for (timeline::PersonSeries& person : t.persons) person.task_ability.assign(t.time_s.size(), 1);
  return t;
}

// Fine work is not possible from the first hour to before the second.
void fails(timeline::PersonSeries& person, const std::vector<double>& time_s, double from_h, double to_h) {
  for (std::size_t i = 0; i < time_s.size(); ++i)
    if (time_s[i] >= from_h * hour_s && time_s[i] < to_h * hour_s) person.fine_work[i] = 0;
}

struct Piece {
  double from_h, to_h;
  bool operator==(const Piece&) const = default;
};
std::vector<Piece> pieces(const document::Chart& chart, const std::string& state, const std::string& row) {
  const auto category = std::find(chart.categories.begin(), chart.categories.end(), row);
  REQUIRE(category != chart.categories.end());
  const auto place = static_cast<double>(category - chart.categories.begin());
  std::vector<Piece> out;
  for (const document::Series& series : chart.series)
    if (series.name == state)
      for (const document::Point& point : series.points)
        if (point.x == place) out.push_back({point.low, point.high});
  return out;
}
using Pieces = std::vector<Piece>;

}  // namespace

TEST_CASE("bars show when fingers and hands can do a task, and what ends it") {
  timeline::Timeline t = with_warm_hands(2);
  fails(t.persons[0], t.time_s, 10, 20);
  fails(t.persons[0], t.time_s, 40, 120);
  fails(t.persons[1], t.time_s, 15, 30);
  const document::Chart chart = tasks_of(t, 2);
  CHECK_FALSE(chart.folded);
  CHECK(pieces(chart, "possible", "Person A, fingers") == Pieces{{0, 10}, {20, 40}});
  CHECK(pieces(chart, "hands too cold or hurt", "Person A, fingers") == Pieces{{10, 20}});
  CHECK(pieces(chart, "alive, not able", "Person A, fingers") == Pieces{{40, 60}});
  CHECK(pieces(chart, "hands too cold or hurt", "Person B, fingers") == Pieces{{15, 30}});
  // Nobody's fingers only while both fail.
  CHECK(pieces(chart, "possible", "anybody, fingers") == Pieces{{0, 15}, {20, 120}});
  CHECK(pieces(chart, "hands too cold or hurt", "anybody, fingers") == Pieces{{15, 20}});
  CHECK(pieces(chart, "possible", "Person B, hand") == Pieces{{0, 120}});
}

TEST_CASE("fingers at half their pace or less are clumsy, until they fail; anybody is as good as the best") {
  timeline::Timeline t = with_warm_hands(2);
  const auto paced = [&t](std::size_t p, double pace, double from_h, double to_h) {
    for (std::size_t i = 0; i < t.time_s.size(); ++i)
      if (t.time_s[i] >= from_h * hour_s && t.time_s[i] < to_h * hour_s) t.persons[p].task_ability[i] = pace;
  };
  paced(0, 0.6, 0, 5), paced(0, 0.5, 5, 10), paced(0, 0, 10, 20);
  fails(t.persons[0], t.time_s, 10, 20);
  fails(t.persons[0], t.time_s, 40, 120);
  paced(1, 0.2, 8, 15);
  const document::Chart chart = tasks_of(t, 2);
  CHECK_FALSE(chart.folded);
  const char* clumsy = "clumsy: takes twice as long or more";
  CHECK(pieces(chart, "possible", "Person A, fingers") == Pieces{{0, 5}, {20, 40}});
  CHECK(pieces(chart, clumsy, "Person A, fingers") == Pieces{{5, 10}});
  CHECK(pieces(chart, "hands too cold or hurt", "Person A, fingers") == Pieces{{10, 20}});
  CHECK(pieces(chart, clumsy, "anybody, fingers") == Pieces{{8, 15}});
  CHECK(pieces(chart, clumsy, "Person A, hand").empty());
}

TEST_CASE("where hands never fail the bars are folded; a large crew has one row for each grip") {
  CHECK(tasks_of(with_warm_hands(1), 1).folded);
  const document::Chart crew = tasks_of(with_warm_hands(25), 25);
  CHECK(crew.categories == std::vector<std::string>{"anybody, fingers", "anybody, hand"});
}

// Slower from 16 degC, of no use from 8 (constants/limits.hpp, constants/hands.hpp).
TEST_CASE("levels that fingers came below are drawn across, and a chart is open once they were of no use") {
  const auto fingers_at = [](double degC) {
    timeline::Timeline t = test::synthetic_timeline(1);
    t.persons[0].finger_degC.assign(t.time_s.size(), degC);
    return hands_chart(t, 1, 1);
  };
  const auto level = [](const document::Chart& chart, const char* name) {
    for (const document::Series& series : chart.series)
      if (series.name == name) return series.points.at(0).y;
    return 0.0;
  };
  const document::Chart warm = fingers_at(20), cool = fingers_at(12), cold = fingers_at(7);
  CHECK(warm.title == "Fingers");
  CHECK(warm.folded);
  CHECK(level(warm, "slower below") == 0);
  CHECK(cool.folded);
  CHECK(level(cool, "slower below") == 16);
  CHECK(level(cool, "function lost") == 0);
  CHECK_FALSE(cold.folded);
  CHECK(level(cold, "slower below") == 16);
  CHECK(level(cold, "function lost") == 8);
}
