// What goes into other people's documents: drawings, Markdown, sheets, columns of tables.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "bide/core/notice.hpp"
#include "bide/report/document/markdown.hpp"
#include "bide/report/html/elements.hpp"
#include "bide/report/html/svg.hpp"
#include "bide/report/html/svg_parts.hpp"
#include "bide/report/run/sheets.hpp"
#include "bide/report/study/study_table.hpp"
#include "bide/report/study/study_words.hpp"
#include "support/presentation.hpp"
#include "support/synthetic_timeline.hpp"

using namespace bide;
using namespace bide::report;
using document::Kind;

namespace {

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

std::size_t count(const std::string& text, const std::string& part) {
  std::size_t out = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++out;
  return out;
}

document::Chart along() {
  document::Chart out;
  out.title = "Core & skin";
  out.sentence = "What it shows.";
  out.x = {"time", "h", true, 24};
  out.y = {"core", "degC"};
  out.series = {
      {"first", Kind::line, {{0, 37}, {48, 36}, {96, 35}}, {}},
      {"range", Kind::band, {{0, document::Point::none, 36, 38}, {96, document::Point::none, 34, 36}}, {}},
      {"night", Kind::spans, {{0, document::Point::none, 10, 20}}, {}}};
  return out;
}

document::Chart across() {
  document::Chart out;
  out.title = "Until when";
  out.x = {"who"};
  out.y = {"time", "h", true};
  out.categories = {"one", "two"};
  out.series = {{"bar", Kind::bars, {{0, 10, 5, 15}, {1, 20}}, {}}, {"dot", Kind::points, {{1, 12}}, {}}};
  return out;
}

}  // namespace

// 0 h at the left end of the plot (64 px) and 96 h at its right end (900 - 16 px); the middle is 48 h.
TEST_CASE(
    "a drawing stands by itself: colours, legend, sentence and notice, and its points in their places") {
  const std::string svg = html::svg_of(along());
  INFO(svg);
  CHECK_FALSE(has(svg, "var("));
  CHECK_FALSE(has(svg, "class="));
  CHECK(has(svg, "#1d5c96"));  // series-0 of style.css
  CHECK(has(svg, "Core &amp; skin"));
  CHECK(has(svg, "What it shows."));
  CHECK(has(svg, "Planning and training aid. Not a forecast for named people."));
  CHECK(has(svg, ">night</text>"));
  CHECK(has(svg, "M64.0,"));
  CHECK(has(svg, "L474.0,"));
  CHECK(has(svg, "L884.0,"));
  CHECK(has(svg, ">4</text>"));  // 96 h are four days
  CHECK(has(svg, "time, days"));
}

TEST_CASE("values that differ by rounding alone are drawn as one value") {
  for (const double value : {37.0, -1e-300, 5e12}) {
    document::Chart chart = along();
    const double beside = std::nextafter(value, 1e300);
    chart.series = {{"same", Kind::line, {{0, value}, {96, beside}}, {}}};
    const std::string svg = html::svg_of(chart);
    CHECK(svg.size() < 20000);  // a tick for every step between them would fill the memory
    CHECK_FALSE(has(svg, "nan"));
  }
}

TEST_CASE("bars lie beside their names, with whiskers") {
  const std::string svg = html::svg_of(across());
  // 0 at 250 px, the longest bar's end at 884: half of it is 317 px wide.
  CHECK(has(svg, "x=\"250.0\""));
  CHECK(has(svg, "width=\"317.0\""));
  CHECK(has(svg, "width=\"634.0\""));
  CHECK(count(svg, ">one</text>") == 1);
}

TEST_CASE("a bar that goes on after the end has an arrow, and its value says so") {
  document::Chart chart = across();
  chart.series = {{"range", document::Kind::spans, {{0, document::Point::none, 2, 8, "", true}}, 0}};
  const auto arrows = [&] { return count(html::svg_of(chart), "M0,-5L9,0L0,5Z"); };
  CHECK(arrows() == 1);
  CHECK(has(html::chart_html(chart), "2 to 8 or later"));
  chart.series[0].points[0].open = false;
  CHECK(arrows() == 0);
  CHECK_FALSE(has(html::chart_html(chart), "or later"));
}

TEST_CASE("steps of an axis are 1, 2 or 5 times a power of ten") {
  CHECK(html::nice_step(10, 5) == doctest::Approx(2));
  CHECK(html::nice_step(24, 5) == doctest::Approx(5));
  CHECK(html::nice_step(0.7, 7) == doctest::Approx(0.1));
  CHECK(html::nice_step(900, 10) == doctest::Approx(100));
}

TEST_CASE("hostile text in a drawing and in Markdown is text") {
  document::Chart chart = along();
  chart.title = chart.sentence = chart.series[0].name = "</text><script>x</script>|*";
  CHECK_FALSE(has(html::svg_of(chart), "<script"));
  document::Page page{
      chart.title, chart.title, {{chart.title, {chart, document::Paragraph{chart.title}}}}, "foot"};
  const std::string markdown = document::to_markdown(page);
  CHECK_FALSE(has(markdown, "<script"));
  CHECK(has(markdown, "&lt;script&gt;"));
  CHECK(has(markdown, std::string(standing_notice)));
  CHECK(has(markdown, "| 48 | 36 |"));
}

TEST_CASE("charts of a page are named by their place and title, empty ones left out") {
  const document::Page page{"", "", {{"", {along(), document::Chart{}, across()}}}, ""};
  const auto charts = html::charts_of(page);
  REQUIRE(charts.size() == 2);
  CHECK(charts[0].name == "01_core_skin");
  CHECK(charts[1].name == "02_until_when");
}

TEST_CASE("a run as sheets: answer, people, cabin, timeline, stores, assumptions, each with the notice") {
  auto scenario = test::valid_scenario(2);
  scenario.scenario.name = "=1+1 \x1b[2J";
  const timeline::Timeline timeline = test::synthetic_timeline(2);
  const outcome::Outcome outcome = outcome::read_outcome(timeline, scenario);
  const auto sheets = run_sheets({outcome, timeline, scenario}, {{"Able until", "=1+1"}});
  REQUIRE(sheets.size() == 6);
  for (const Sheet& sheet : sheets) {
    CHECK(std::count(sheet.notes.begin(), sheet.notes.end(), std::string(standing_notice)) == 1);
    for (const auto& row : sheet.rows) CHECK(row.size() == sheet.columns.size());
    for (const std::string& note : sheet.notes)
      CHECK(
          std::none_of(note.begin(), note.end(), [](char l) { return static_cast<unsigned char>(l) < 32; }));
  }
  CHECK(sheets[1].name == "people");
  // Able 40 h, alive 60 h: the synthetic first person.
  CHECK(std::get<double>(sheets[1].rows[0][1]) == doctest::Approx(40));
  CHECK(std::get<double>(sheets[1].rows[0][3]) == doctest::Approx(60));
  CHECK(std::get<std::string>(sheets[1].rows[1][1]).empty());
  CHECK(sheets[2].name == "cabin");
  // The synthetic cabin warms from 10 to 22 °C.
  CHECK(std::get<std::string>(sheets[2].rows[1][0]) == "warmest_inside");
  CHECK(std::get<double>(sheets[2].rows[1][1]) == doctest::Approx(22).epsilon(0.03));
  CHECK(sheets[3].columns[0] == "time_h");
  CHECK(sheets[3].rows.size() == timeline.time_s.size());
  CHECK(sheets[4].columns[3] == "out_after_h");
}

TEST_CASE("columns of a study are plain words with their unit") {
  CHECK(column_name("/crew/0/mass_kg", "kg") == "person_a_mass_kg");
  CHECK(column_name("/crew/27/height_m", "m") == "person_ab_height_m");
  CHECK(column_name("/weather/wind_speed_m_s", "m/s") == "weather_wind_speed_m_s");
  CHECK(column_name("first able until", "h") == "first_able_until_h");
  CHECK(column_name("Person A worst water deficit", "%") == "person_a_worst_water_deficit_pct");
  CHECK(column_name("hours above 5,000 ppm CO2", "h") == "hours_above_5000_ppm_CO2_h");
  CHECK(column_name("failures", "") == "failures");
}

TEST_CASE("figures of a study are told with whose they are") {
  CHECK(figure_words("first able until") == "able until, first person");
  CHECK(figure_words("half alive until") == "alive until, half of the crew");
  CHECK(figure_words("first able until, within 288 h") == "able until, first person (within 288 h)");
  CHECK(figure_words("coldest core") == "coldest core");
  study::Spread spread;
  spread.is_time = true;
  CHECK(spread_words(spread, 288) == "no run has it");
  for (const double h : {14.0, 20.0, 26.0, 30.0})
    spread.quantiles.push_back({0, h, h - 1, h + 1, true, true});
  spread.quantiles.push_back({});
  CHECK(spread_words(spread, 288) ==
        "9 in 10 runs between 14 h and after 12 d; half between 20 h and 30 h; median 26 h (25 h to 27 h)");
}
