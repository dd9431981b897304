#include "bide/report/run/run_page.hpp"
#include "bide/report/html/page.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "bide/core/notice.hpp"
#include "bide/core/units.hpp"
#include "bide/report/run/terminal.hpp"
#include "support/presentation.hpp"
#include "support/synthetic_timeline.hpp"

using namespace bide;
namespace document = report::document;
namespace html = report::html;

namespace {

// A run that is able until 40 h, and the same over what is not known, at other hours.
struct Case {
  scenario::ValidScenario scenario;
  timeline::Timeline timeline;
  outcome::Outcome outcome;
  study::RangeMembers unmeasured;

  explicit Case(int persons, bool in_raft = true)
      : scenario(test::valid_scenario(persons, in_raft)),
        timeline(test::synthetic_timeline(persons, in_raft)),
        outcome(outcome::read_outcome(timeline, scenario)) {}
  void with_able_first_at(std::optional<double> at_s) {
    study::RangeMember member;
    member.able = outcome.able;
    member.able.first_s = at_s;
    member.first_persons = {0};
    member.alive = outcome.alive;
    unmeasured.push_back(member);
  }
  document::Page page() const { return report::pages::run_page({{outcome, timeline, scenario}, unmeasured}); }
};

const document::Section& section(const document::Page& page, const std::string& title) {
  const auto at = std::find_if(page.sections.begin(), page.sections.end(),
                               [&](const document::Section& each) { return each.title == title; });
  REQUIRE(at != page.sections.end());
  return *at;
}

template <class Block>
const Block& block(const document::Section& section, std::size_t number = 0) {
  for (const document::Block& each : section.blocks)
    if (const Block* found = std::get_if<Block>(&each); found && number-- == 0) return *found;
  FAIL("no such block in " << section.title);
  std::abort();
}

const document::Series& series(const document::Chart& chart, const std::string& name) {
  const auto at = std::find_if(chart.series.begin(), chart.series.end(),
                               [&](const document::Series& each) { return each.name == name; });
  REQUIRE(at != chart.series.end());
  return *at;
}

std::vector<std::string> texts(const document::Page& page) {
  std::vector<std::string> out{page.lead};
  for (const document::Section& each : page.sections) {
    out.push_back(each.title);
    for (const document::Block& one : each.blocks) {
      if (const auto* paragraph = std::get_if<document::Paragraph>(&one)) out.push_back(paragraph->text);
      if (const auto* list = std::get_if<document::List>(&one))
        out.insert(out.end(), list->items.begin(), list->items.end());
      if (const auto* facts = std::get_if<document::Facts>(&one))
        for (const report::AnswerLine& line : facts->lines) out.push_back(line.says);
      if (const auto* chart = std::get_if<document::Chart>(&one))
        out.insert(out.end(), {chart->title, chart->sentence});
    }
  }
  return out;
}

bool has(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

std::string said(const document::Page& page, const std::string& asks) {
  for (const document::Block& each : section(page, "The answer").blocks)
    if (const auto* facts = std::get_if<document::Facts>(&each))
      for (const report::AnswerLine& line : facts->lines)
        if (line.asks == asks) return line.says;
  FAIL("nothing is said of " << asks);
  std::abort();
}

TEST_CASE("terminal and page begin with the same sentence") {
  for (const bool in_raft : {true, false}) {
    const Case c(2, in_raft);
    report::TerminalOptions options;
    options.members = c.unmeasured;
    const std::string terminal =
        test::unwrapped(report::terminal_summary(c.outcome, c.timeline, c.scenario, options));
    CHECK(has(terminal, c.page().lead));
  }
  // Synthetic runs start on 3 Feb at 18:00 UTC, at 30 W, and last five days.
  CHECK(Case(2).page().lead.ends_with(
      ", from 3 Feb 18:00 UTC (16:00 local), followed for 5 d. Able: can still help themselves."));
}

TEST_CASE("the first screen leads with the range over what nobody has measured, and draws it") {
  Case c(2);
  c.with_able_first_at(30 * 3600.0);
  c.with_able_first_at(50 * 3600.0);
  document::Page page = c.page();
  CHECK(page.sections.front().first_screen);
  const auto& large = block<document::Facts>(section(page, "The answer"));
  CHECK(large.large);
  CHECK(large.lines.front().asks == "Able until");
  // 30 h after 3 Feb 18:00 UTC is midnight.
  CHECK(has(said(page, "Able until"),
            "first person: 30 h (5 Feb 00:00 UTC) to 2.1 d, central case 40 h; last person:"));
  CHECK(has(said(page, "How sure"),
            "; 3 runs of one case that differ in what nobody has measured (canopy heat, "));
  const document::Chart& picture = block<document::Chart>(section(page, "The answer"));
  CHECK(picture.categories.front() == "able: first person");
  const char* ranges = "range, arrow: goes on after 5 d";
  CHECK(series(picture, ranges).points.front().low == doctest::Approx(30));
  CHECK(series(picture, ranges).points.front().high == doctest::Approx(50));
  CHECK(series(picture, "central case").points.front().y == doctest::Approx(40));
  c.with_able_first_at(std::nullopt);
  CHECK(has(said(c.page(), "Able until"), "to after 5 d, central case 40 h"));
}

TEST_CASE("without a range the page says that it is one case") {
  const document::Page page = Case(2).page();
  CHECK(has(said(page, "How sure"), "no range: the file states all that nobody has measured"));
  CHECK(has(said(page, "Able until"), "first person: 40 h, 5 Feb 10:00 UTC"));
}

TEST_CASE("the answer says what would buy time where levers were tried, and how to ask where not") {
  Case c(2);
  const scenario::Lever suit = {"suit", "a second suit", "judgement", {}, {}, {}, 3, 20, false};
  study::LeversTried levers;
  levers.base.horizon_s = c.timeline.horizon_s;
  study::LeverTried tried;
  tried.lever = &suit;
  tried.gained.able = {9, false, false, true};
  levers.tried = {tried};
  const auto buys = [&](const std::optional<study::LeversTried>& given) {
    return said(report::pages::run_page({{c.outcome, c.timeline, c.scenario}, c.unmeasured, given}),
                "Buys most");
  };
  CHECK(buys(levers) == "for the first person: a second suit: able longer by 9.0 h");
  CHECK(has(buys(std::nullopt), "bide levers two_adrift.json"));
}

TEST_CASE("people whose courses are the same are drawn once") {
  Case c(4);  // Persons B, C and D are alike
  const document::Page page = c.page();
  const document::Chart& core = block<document::Chart>(section(page, "How it goes"), 1);
  CHECK(series(core, "Persons B, C and D").kind == document::Kind::line);
  const document::Chart& stay = block<document::Chart>(section(page, "The stay, hour by hour"));
  CHECK(std::count(stay.categories.begin(), stay.categories.end(), "Persons B, C and D") == 1);
}

TEST_CASE("the stay shows who is able until when") {
  const document::Page page = Case(2).page();
  const document::Chart& stay = block<document::Chart>(section(page, "The stay, hour by hour"));
  const auto row =
      std::find(stay.categories.begin(), stay.categories.end(), "Person A") - stay.categories.begin();
  const document::Series& able = series(stay, "able");
  const auto at = std::find_if(able.points.begin(), able.points.end(),
                               [row](const document::Point& p) { return p.x == static_cast<double>(row); });
  REQUIRE(at != able.points.end());
  CHECK(at->low == 0);
  CHECK(at->high == doctest::Approx(40));
}

TEST_CASE("every line of a chart keeps its extremes and its end") {
  const Case c(2);
  const document::Page page = c.page();
  const document::Chart& core = block<document::Chart>(section(page, "How it goes"), 1);
  REQUIRE(core.title == "Core temperature");
  // From 37 down to 31 at 60 h, where Person A dies; the column goes on.
  const document::Series& line = series(core, "Person A");
  CHECK(line.points.size() < 170);
  CHECK(line.points.front().y == doctest::Approx(37));
  CHECK(line.points.back().y == doctest::Approx(31));
  CHECK(line.points.back().x == doctest::Approx(60));
}

TEST_CASE("weather that varies is drawn, weather that does not is not") {
  Case c(2);
  const std::size_t rows = c.timeline.time_s.size();
  c.timeline.wind_m_s.assign(rows, 8);
  c.timeline.wave_height_m.assign(rows, 1.5);
  c.timeline.rain_mm_h.assign(rows, 0);
  const auto titles = [&] {
    std::string all;
    const document::Page page = c.page();
    for (const document::Block& each : section(page, "How it goes").blocks)
      if (const auto* chart = std::get_if<document::Chart>(&each)) all += chart->title + ";";
    return all;
  };
  CHECK_FALSE(has(titles(), "Wind"));
  c.timeline.wind_m_s[rows / 2] = 17;
  c.timeline.rain_mm_h[rows / 2] = 4;
  CHECK(has(titles(), "Inside, outside and the sea;Wind;Rain;Core temperature;"));
  c.timeline.wave_height_m.back() = 3;
  CHECK(has(titles(), ";Wind;Waves;Rain;"));
  const document::Page page = c.page();
  const document::Chart& wind = block<document::Chart>(section(page, "How it goes"), 1);
  CHECK(wind.y.unit == "m/s");
  double most = 0;
  for (const document::Point& point : series(wind, "at sea").points) most = std::max(most, point.y);
  CHECK(most == 17);
}

TEST_CASE("many people are drawn as a band, not as many lines") {
  Case c(25);
  for (std::size_t p = 0; p < c.timeline.persons.size(); ++p)
    c.timeline.persons[p].core_degC.front() += 0.01 * static_cast<double>(p);
  const document::Page page = c.page();
  const document::Chart& core = block<document::Chart>(section(page, "How it goes"), 1);
  CHECK(series(core, "lowest to highest of the crew").kind == document::Kind::band);
  CHECK(core.series.size() <= 4);
}

TEST_CASE("card and list are sheets of their own, and say what they must") {
  const document::Page page = Case(2).page();
  const document::Section &card = section(page, "Ration card"), &list = section(page, "The first hour");
  CHECK(card.own_page);
  CHECK(list.own_page);
  const auto& rules = block<document::List>(card).items;
  CHECK(std::count(rules.begin(), rules.end(), "Sea water and urine are not drinking water.") == 1);
  CHECK(has(block<document::Paragraph>(list).text, "Common practice, no source."));
  CHECK(block<document::List>(list).to_tick);
}

TEST_CASE("the page carries notice and advice, promises nothing and escapes what comes from outside") {
  for (const int persons : {1, 2, 25})
    for (const bool in_raft : {true, false}) {
      Case c(persons, in_raft);
      c.scenario.scenario.name = "<script>alert(1)</script>";
      const std::string text = html::to_html(c.page());
      CHECK(has(text, std::string(standing_notice)));
      CHECK_FALSE(has(text, "<script>alert(1)"));
      for (const std::string& said : texts(c.page())) test::check_no_promise(said);
    }
}
