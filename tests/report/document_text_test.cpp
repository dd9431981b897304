// A document as plain text. The expected lines are laid out by hand.
#include "bide/report/document/text.hpp"

#include <doctest/doctest.h>

#include <sstream>

#include "bide/core/notice.hpp"
#include "bide/report/document/markdown.hpp"
#include "support/presentation.hpp"

using namespace bide;
using namespace bide::report::document;
using report::Letters;

namespace {

Section section(std::string title, std::vector<Block> blocks) {
  Section out;
  out.title = std::move(title);
  out.blocks = std::move(blocks);
  return out;
}

Page page_of(std::vector<Section> sections) {
  Page out;
  out.title = "Title";
  out.lead = "Lead.";
  out.sections = std::move(sections);
  return out;
}

// What stands between the lead and the notice.
std::string body(const Page& page, bool full, int width = 80) {
  const std::string text = to_text(page, {width, Letters::ascii, full});
  const std::string head = "Title\nLead.\n\n";
  REQUIRE(text.substr(0, head.size()) == head);
  const auto end = text.find("\n\nPlanning and training aid.");
  REQUIRE(end != std::string::npos);
  return text.substr(head.size(), end - head.size());
}

bool has(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

Chart curve(bool folded, bool told) {
  Chart out;
  out.title = "Core";
  out.sentence = "What it shows.";
  out.x = {"time", "h"};
  out.y = {"core", "degC"};
  Series line{"Person A", Kind::line, {}, {}};
  for (int h = 0; h <= 48; ++h) line.points.push_back({static_cast<double>(h), 37.0 - 0.1 * h});
  out.series = {line, {"the limit", Kind::line, {{0, 33}, {48, 33}}, {}}};
  out.folded = folded;
  out.told = told;
  return out;
}

}  // namespace

TEST_CASE("the short text is the first section and the brief ones, without charts") {
  Section brief = section("Beside it", {Paragraph{"Said too."}}),
          later = section("Later", {Paragraph{"Said."}});
  brief.brief = true;
  Page page = page_of({section("The answer", {report::document::Facts{{{"Able until", "40 h"}, {"", "more"}}},
                                              curve(false, false)}),
                       brief, later});
  page.rest = "Later";
  CHECK(body(page, false) == "Able until  40 h\n            more\n\nBESIDE IT\n  Said too.\nLater: --full.");
  const std::string full = body(page, true);
  CHECK(has(full, "\n\nLATER\n  Said."));
  CHECK(has(full, "Core. What it shows.\nPerson A, degC\n"));
  CHECK(has(full, "\nthe limit: 33 degC\n"));
  CHECK_FALSE(has(full, "--full"));
}

TEST_CASE("what a page folds is named, what is told in words is left out") {
  const std::string text = body(page_of({section("The answer", {Paragraph{"Yes."}}),
                                         section("How", {curve(true, false), curve(false, true)}),
                                         section("Nothing here", {curve(false, true)})}),
                                true);
  CHECK(text == "Yes.\n\nHOW\n  On the page alone (--report): Core.");
}

TEST_CASE("columns are as wide as their cells, numbers at the right") {
  const Table table{"Caption", {{"who", false}, {"h", true}}, {{"first", "5"}, {"last of all", "120"}}};
  CHECK(body(page_of({section("", {table})}), true) ==
        "Caption\nwho            h\nfirst          5\nlast of all  120");
}

TEST_CASE("a table too wide is broken into parts, one with long cells is a list") {
  // Five columns of 20 need 13 each to stand abreast, less than can be read; four have 17.
  const std::string cell(20, 'x');
  const Table wide{"", {{"a"}, {"b"}, {"c"}, {"d"}, {"e"}, {"f"}}, {{"row", cell, cell, cell, cell, cell}}};
  const std::string text = body(page_of({section("", {wide})}), true);
  CHECK(has(test::unwrapped(text), "a b c d e row "));
  CHECK(has(text, "\n\na    f\nrow  " + cell));
  std::string sentence;
  for (int i = 0; i < 120; ++i) sentence += (i == 0 ? "" : " ") + std::string("word");
  const Table told{"", {{"change"}, {"more, kg", true}, {"why"}}, {{"a litre", "1.2", sentence}}};
  const std::string list = test::unwrapped(body(page_of({section("", {told})}), true));
  CHECK(has(list, "- a litre: more, kg: 1.2; why: word word"));
}

TEST_CASE("bars from one moment to another are a line for each row") {
  Chart stay;
  stay.title = "Stay";
  stay.sentence = "Who.";
  stay.x = {"what"};
  stay.y = {"time", "h"};
  stay.categories = {"Person A"};
  stay.series = {{"able", Kind::spans, {{0, Point::none, 0, 40}}, {}},
                 {"alive", Kind::spans, {{0, Point::none, 40, 60, "", true}}, {}}};
  CHECK(body(page_of({section("", {stay})}), true) ==
        "Stay. Who.\nIn h:\n- Person A: able 0 to 40; alive 40 to 60 or later");
}

TEST_CASE("whatever a document holds, lines keep their width and text stays text") {
  Chart chart = curve(false, false);
  chart.title = chart.sentence = chart.series[0].name = test::hostile;
  const Table table{test::hostile, {{test::hostile}, {test::hostile}}, {{test::hostile, test::hostile}}};
  Page page = page_of(
      {section(test::hostile, {Paragraph{test::hostile}, chart, table, List{{test::hostile}, true}})});
  page.title = page.lead = page.rest = test::hostile;
  for (const int width : {40, 80})
    for (const bool full : {true, false}) {
      std::istringstream lines(to_text(page, {width, Letters::ascii, full}));
      for (std::string line; std::getline(lines, line);) {
        CHECK(line.size() <= static_cast<std::size_t>(width));
        for (const char letter : line) CHECK((letter >= ' ' && letter <= '~'));
      }
    }
}

TEST_CASE("Markdown leaves out what is folded or told, and keeps some of a long curve") {
  const std::string folded = to_markdown(page_of({section("How", {curve(true, false), curve(false, true)})}));
  CHECK_FALSE(has(folded, "Core"));
  const std::string drawn = to_markdown(page_of({section("How", {curve(false, false)})}));
  CHECK(has(drawn, "### Core"));
  CHECK(has(drawn, "| 0 | 37 | 33 |"));
  CHECK(has(drawn, "| 48 | 32.2 | 33 |"));  // the end of it
  CHECK(has(drawn, "| 20 | 35 |"));         // every fifth of 49
  CHECK_FALSE(has(drawn, "| 21 |"));
}
