#include "bide/report/html/page.hpp"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <string>

#include "bide/core/notice.hpp"
#include "bide/report/document/values.hpp"
#include "bide/report/html/elements.hpp"
#include "bide/report/html/escape.hpp"
#include "bide/study/records/fingerprint.hpp"
#include "support/presentation.hpp"

using namespace bide::report::document;
using namespace bide::report::html;

namespace {

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t out = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++out;
  return out;
}

std::string between(const std::string& text, const std::string& before, const std::string& after) {
  const std::size_t from = text.find(before);
  REQUIRE(from != std::string::npos);
  const std::size_t start = from + before.size();
  return text.substr(start, text.find(after, start) - start);
}

Chart small_chart() {
  Chart chart;
  chart.title = "Core in cold water";
  chart.sentence = "The core falls.";
  chart.x = {"time", "min"};
  chart.y = {"core", "degC"};
  chart.series = {{"model", Kind::line, {{0, 37}, {30, 36.25}, {60, Point::none}}, {}},
                  {"measured", Kind::points, {{30, 36.5, 36.1, 36.9}}, {}},
                  {"taken out", Kind::marks, {{60, Point::none, Point::none, Point::none, "by boat"}}, {}}};
  return chart;
}

nlohmann::json data_of(const std::string& html) {
  return nlohmann::json::parse(between(html, "<script type=\"application/json\">", "</script>"));
}

// A page whose every text is hostile, U+2028 and U+2029 among it.
Page hostile_page() {
  const std::string text = bide::test::hostile + "</script></style></title>\xE2\x80\xA8\xE2\x80\xA9&amp;-->";
  Chart chart = small_chart();
  chart.title = chart.sentence = chart.x.label = chart.x.unit = chart.y.label = chart.y.unit = text;
  for (Series& series : chart.series) {
    series.name = text;
    for (Point& point : series.points) point.label = text;
  }
  Chart across = chart;
  across.categories = {text};
  across.series = {{text, Kind::bars, {{0, 1, 0.5, 2, text}}, {}}};
  Table table{text, {{text}, {text, true}, {text}, {text}}, {{text, text, text, text}}, true};
  return {text, text, {{text, {Paragraph{text}, List{{text}}, table, chart, across}}}};
}

}  // namespace

TEST_CASE("the standing notice and advice stand at the top and at the bottom") {
  const std::string html = to_html({"Title", "Lead", {{"One", {Paragraph{"text"}}}}});
  const std::string notice(bide::standing_notice), advice = escaped(bide::standing_advice);
  CHECK(count(html, notice) == 2);
  CHECK(count(html, advice) == 2);
  CHECK(html.find(notice) < html.find("<h1>"));
  CHECK(html.rfind(advice) > html.find("</main>"));
}

TEST_CASE("the page names the model that made it, once, at its foot") {
  const std::string html = to_html({"Title", "Lead", {{"One", {Paragraph{"text"}}}}});
  const std::string model(bide::study::fingerprint());
  CHECK(count(html, model) == 1);
  CHECK(html.find(model) > html.find("<footer>"));
}

TEST_CASE("nothing is fetched, and only the page's own script may run") {
  const std::string html = to_html({"Title", "Lead", {{"One", {small_chart()}}}});
  const std::string policy = between(html, "Content-Security-Policy\" content=\"", "\"");
  CHECK(policy.find("default-src 'none'") == 0);
  CHECK(policy.find("unsafe-eval") == std::string::npos);
  CHECK(between(policy, "script-src ", ";").find("unsafe-inline") == std::string::npos);
  const std::string body = html.substr(html.find("<body>"), html.find("<script>") - html.find("<body>"));
  for (const char* loads : {"src=", "<link", "<img", "<iframe", "@import", "url(", "http:", "https:"})
    CHECK_MESSAGE(body.find(loads) == std::string::npos, loads);
  for (const char* loads : {"@import", "url("})
    CHECK_MESSAGE(between(html, "<style>", "</style>").find(loads) == std::string::npos, loads);
  CHECK(html.size() < 1500000);
}

TEST_CASE("no text from outside becomes a part of the page") {
  const std::string whole = to_html(hostile_page());
  const std::string html = whole.substr(0, whole.find("<script>"));  // all that comes before the own script
  CHECK(count(html, "<script") == 2);                                // the data of two charts
  CHECK(count(html, "</script>") == 2);
  CHECK(count(html, "</style>") == 1);
  CHECK(count(html, "</title>") == 1);
  CHECK(html.find("<script>alert") == std::string::npos);
  CHECK(html.find("-->") == std::string::npos);
  CHECK(html.find("\xE2\x80\xA8") == std::string::npos);
  CHECK(html.find('\x1b') == std::string::npos);
  CHECK(html.find("\"quoted\"") == std::string::npos);
}

TEST_CASE("a chart's data are what was given, whatever the names") {
  const Page page = hostile_page();
  const nlohmann::json data = data_of(chart_html(std::get<Chart>(page.sections[0].blocks[3])));
  CHECK(data["series"].size() == 3);
  CHECK(data["series"][0]["points"][1][0] == 30);
  CHECK(data["series"][0]["points"][1][1] == 36.25);
  CHECK(data["series"][0]["points"][2][1].is_null());
  CHECK(data["series"][1]["points"][0][2] == 36.1);
  CHECK(data["series"][0]["name"].get<std::string>().find("<script>alert(1)</script>") != std::string::npos);
}

TEST_CASE("behind a chart stands every value of it") {
  const Table table = values_of(small_chart());
  CHECK(table.folded);
  REQUIRE(table.columns.size() == 4);
  CHECK(table.columns[0].name == "time, min");
  CHECK(table.columns[1].name == "model, degC");
  REQUIRE(table.rows.size() == 3);
  CHECK(table.rows[0] == std::vector<std::string>{"0", "37", "", ""});
  CHECK(table.rows[1] == std::vector<std::string>{"30", "36.2", "36.5 (36.1 to 36.9)", ""});
  CHECK(table.rows[2] == std::vector<std::string>{"60", "", "", "by boat"});
}

TEST_CASE("places that differ by noise are one place") {
  Chart chart = small_chart();
  chart.series = {{"model", Kind::line, {{0.1 + 0.2, 1}}, {}}, {"measured", Kind::points, {{0.3, 2}}, {}}};
  REQUIRE(values_of(chart).rows.size() == 1);
  CHECK(values_of(chart).rows[0] == std::vector<std::string>{"0.3", "1", "2"});
}

TEST_CASE("categories stand in their order, each with its values") {
  Chart chart;
  chart.x = {"floor", ""};
  chart.y = {"insulation", "m2 K/W"};
  chart.categories = {"flat", "blown up"};
  chart.series = {{"measured", Kind::bars, {{0, 0.174}, {1, 0.236, 0.2, 0.27}}, {}},
                  {"model", Kind::points, {{1, 1234.4}}, {}}};
  const Table table = values_of(chart);
  REQUIRE(table.rows.size() == 2);
  CHECK(table.rows[0] == std::vector<std::string>{"flat", "0.174", ""});
  CHECK(table.rows[1] == std::vector<std::string>{"blown up", "0.236 (0.2 to 0.27)", "1234"});
}

TEST_CASE("parts of a bar stand one on the other, and the table gives their sizes") {
  Chart chart;
  chart.x = {"raft", ""};
  chart.y = {"heat", "W"};
  chart.categories = {"small", "large"};
  chart.series = stack({"canopy", "floor"}, {{100, 150}, {40, 0}});
  REQUIRE(chart.series.size() == 2);
  CHECK(chart.series[1].points[0].low == 100);
  CHECK(chart.series[1].points[0].high == 140);
  CHECK(chart.series[1].points[1].low == 150);
  const Table table = values_of(chart);
  CHECK(table.rows[0] == std::vector<std::string>{"small", "100", "40"});
  CHECK(table.rows[1] == std::vector<std::string>{"large", "150", "0"});
}

TEST_CASE("spans along the x axis and in a row of their category say from where to where") {
  Chart along = small_chart();
  along.series = {{"night", Kind::spans, {{10, Point::none, 10, 30}}, {}}};
  CHECK(values_of(along).columns[1].name == "night, min");
  CHECK(values_of(along).rows[0] == std::vector<std::string>{"10", "10 to 30"});
  Chart across;
  across.categories = {"Person A"};
  across.series = {{"able", Kind::spans, {{0, Point::none, 0, 12}, {0, Point::none, 20, 30}}, {}}};
  CHECK(values_of(across).rows[0] == std::vector<std::string>{"Person A", "0 to 12; 20 to 30"});
}

TEST_CASE("a wide table keeps its meaning when it is shown as lists") {
  const Table narrow{"", {{"a"}, {"b"}}, {{"1", "2"}}};
  const Table wide{"", {{"a"}, {"b"}, {"c"}, {"d", true}}, {{"1", "2", "3", "4"}}};
  CHECK(table_html(narrow).find("role=") == std::string::npos);
  const std::string html = table_html(wide);
  CHECK(count(html, "role=\"cell\"") == 3);
  CHECK(count(html, "role=\"rowheader\"") == 1);
  CHECK(html.find("data-name=\"d\">4<") != std::string::npos);
}
