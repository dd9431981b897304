#include "bide/report/compare/compare.hpp"
#include "bide/report/html/page.hpp"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "bide/core/notice.hpp"
#include "bide/core/units.hpp"
#include "bide/report/compare/compare_cells.hpp"
#include "bide/report/compare/compare_futures.hpp"
#include "bide/report/compare/compare_page.hpp"
#include "bide/report/document/text.hpp"
#include "bide/report/words/input.hpp"
#include "support/presentation.hpp"
#include "support/synthetic_timeline.hpp"

using namespace bide;

namespace {

// A run of the synthetic crew of two, with what a test changes.
struct Made {
  scenario::ValidScenario scenario = test::valid_scenario(2);
  timeline::Timeline timeline = test::synthetic_timeline(2);

  Made() { cabin(14, 300, 100); }

  // Inside temperature over 10 C outside, W through the canopy, W by air; 400 W from bodies.
  void cabin(double inside_degC, double canopy_W, double air_W) {
    const std::size_t n = timeline.time_s.size();
    timeline.inside_air_degC.assign(n, inside_degC);
    timeline.outside_air_degC.assign(n, 10);
    timeline.cabin_from_bodies_W.assign(n, 400);
    timeline.cabin_from_sun_W.assign(n, 0);
    timeline.cabin_to_sea_W.assign(n, 0);
    timeline.cabin_to_outside_through_canopy_W.assign(n, canopy_W);
    timeline.cabin_to_outside_by_air_W.assign(n, air_W);
  }
  void times(std::optional<double> able_h, std::optional<double> alive_h) {
    timeline.fates[0].able_until_s = able_h ? std::optional(*able_h * hour_s) : std::nullopt;
    timeline.fates[0].alive_until_s = alive_h ? std::optional(*alive_h * hour_s) : std::nullopt;
  }
  report::Compared compared() const {
    return {&scenario, &timeline, outcome::figures_of(outcome::read_outcome(timeline, scenario), timeline)};
  }
};

report::Comparison of(const Made& first, const Made& second) {
  report::Comparison out;
  out.options.push_back({"a.json", {}, first.compared(), {}, "", {}});
  out.options.push_back({"b.json", {}, second.compared(), {}, "", {}});
  return out;
}

std::string said(const report::Comparison& comparison) {
  std::string all;
  const auto lists = report::conclusions(comparison);
  for (const std::string& sentence : report::all_of(lists.front())) all += sentence + "\n";
  return all;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("who is ahead follows from the times, and turns with them") {
  Made a, b;
  b.times(60, 80);  // a: 40 and 60 h
  CHECK(has(said(of(a, b)), "Option 2 is ahead of option 1 in able until and alive until."));
  CHECK(has(said(of(a, b)),
            "Able until, first person: option 2 is ahead by 20 h: 2.5 d, against 40 h (cold)."));
  CHECK(has(said(of(b, a)), "Option 1 is ahead of option 2 in able until and alive until."));
  b.times(60, 50);
  CHECK(has(said(of(a, b)), "Option 2 is able longer, option 1 is alive longer: which is better depends"));
}

TEST_CASE("near times cannot be separated, and times beyond the horizon are told by the margin left") {
  Made a, b;
  b.times(41, 61);
  CHECK(has(said(of(a, b)),
            "The model cannot separate option 1 and option 2, in able until or in alive until."));
  a.times({}, {});
  b.times({}, {});
  a.timeline.fates[0].nearest_margin_fraction = 0.2;
  a.timeline.fates[0].next_cause = system::Limit::able_core_low;
  CHECK(has(said(of(a, b)), "the model cannot separate them (neither within 5 d)."));
  CHECK(has(
      said(of(a, b)),
      "To the nearest limit, option 1 has 20 % of the margin left (cold), option 2 has 38 % of the margin "
      "left (water loss): option 2 has the larger margin."));
  b.times(60, 80);
  CHECK(has(said(of(a, b)), "option 1 is ahead by more than 2.5 d: not reached within 5 d, against 2.5 d"));
}

// The hand calculation of tests/outcome/compare_test.cpp: 75 to 40 W/K through the canopy is 2.8 K, 25 to 10
// W/K by openings 1.2 K.
TEST_CASE("why it is warmer is read off the heat ledger") {
  Made a, b;
  b.cabin(18, 320, 80);
  const std::string text = said(of(a, b));
  CHECK(has(
      text,
      "Inside: option 2 is 4.0 °C warmer on average over 2.5 d, 18 °C against 14 °C, because its canopy "
      "passes, for each kelvin between inside and outside, 40 W, against 75 (2.8 °C); its openings and leaks "
      "pass, for each kelvin, 10 W, against 25 (1.2 °C)."));
  CHECK(has(said(of(b, a)), "Inside: option 1 is 4.0 °C warmer"));
  // The same warmth by another way: 25 W/K more kept by the openings alone.
  a.cabin(14, 200, 200);
  b.cabin(18, 400, 0);
  CHECK(
      has(said(of(a, b)), "because its openings and leaks pass, for each kelvin, 0 W, against 50 (4.0 °C)."));
  CHECK_FALSE(has(said(of(a, b)), "canopy passes"));
  b.cabin(14.2, 300, 100);
  CHECK(has(said(of(a, b)), "Inside: the model cannot separate them"));
}

study::RangeMembers members_of(std::initializer_list<const Made*> runs) {
  study::RangeMembers out;
  for (const Made* each : runs) {
    out.emplace_back();
    static_cast<outcome::Endurance&>(out.back()) = each->compared().figures;
  }
  return out;
}

// Member by member; the range turns the order, leaves it open or keeps it, and the headline says so.
TEST_CASE("the range says in how many runs the order holds, turns or is open") {
  Made a, b, low, high;  // a: 40 h able, 60 h alive
  b.times(60, 80);
  low.times(30, 50);
  high.times(90, 100);
  report::Comparison c = of(a, b);
  const auto headline = [&c] { return report::conclusions(c).front().brief.front(); };
  CHECK_FALSE(has(headline(), "runs over what nobody has measured"));
  c.options[0].members = members_of({&low, &low});
  c.options[1].members = members_of({&high, &high});
  CHECK(
      headline() ==
      "Option 2 lasts longer. At the early end of the range the first person is able until 30 h (5 Feb 00:00 "
      "UTC) in option 1, until 2.5 d (6 Feb 06:00 UTC) in option 2. "
      "In the central case option 2 is ahead of option 1 in able until and alive until. It is the same in "
      "all "
      "3 runs over what nobody has measured.");
  c.options[1].members = members_of({&high, &low});
  CHECK(has(headline(), "In 1 of 3 runs over what nobody has measured the model cannot separate them."));
  c.options[0].members = members_of({&low, &high});
  CHECK(has(headline(), "In 1 of 3 runs over what nobody has measured the order turns: do not rely on it."));
  // As they are, nobody reaches a limit; at the early end the first does.
  Made never;
  never.times({}, {});
  c = of(never, never);
  CHECK(headline() == "Nobody reaches a limit within 5 d, in option 1 or in option 2.");
  c.options[0].members = members_of({&low, &never});
  c.options[1].members = members_of({&high, &never});
  CHECK(headline() ==
        "Option 2 lasts longer where the model can separate them. At the early end of the range the first "
        "person is able until 30 h (5 Feb 00:00 UTC) in option 1, until 3.8 d (7 Feb 13:12 UTC) in option 2. "
        "In the central case nobody reaches a limit within 5 d, in option 1 or in option 2. Of 3 runs over "
        "what nobody has measured option 1 lasts longer in 0, option 2 in 1; in 2 the model cannot separate "
        "them.");
  // Cannot be separated as they are.
  c = of(a, a);
  c.options[0].members = members_of({&low, &high, &low});
  c.options[1].members = members_of({&high, &low, &high});
  CHECK(has(headline(),
            " Of 4 runs over what nobody has measured option 1 lasts longer in 1, option 2 in 2; in 1 "));
  CHECK(has(headline(), "No clear order: it hangs on what nobody has measured. At the early end"));
  // The same in every run.
  c.options[1].members = c.options[0].members;
  CHECK(has(headline(), "The model cannot separate option 1 and option 2. At the early end"));
  // One that states all is the same in every member: 40 h against 30 h, 90 h and 30 h.
  c.options[1].members = {};
  CHECK(has(headline(),
            " Of 4 runs over what nobody has measured option 1 lasts longer in 1, option 2 in 2; in 1 "));
  CHECK(has(headline(), "No clear order: it hangs on what nobody has measured. At the early end"));
  // 40 h throughout against 30, 90 and 90.
  c.options[0].members = members_of({&a, &a, &a});
  c.options[1].members = members_of({&low, &high, &high});
  CHECK(
      has(headline(),
          "No clear order: option 1 lasts longer if things go badly, option 2 in more of the runs. At the"));
}

TEST_CASE("an option is called by its scenario, or by what was put in, in words") {
  Made a;
  report::Comparison c = of(a, a);
  c.options[0].label = "some/folder/a.json";
  c.options[1].label = "some/folder/a.json with /raft/floor_area_m2=2 /crew/0/age_years=30";
  c.options[1].put_in = {{"/raft/floor_area_m2", "2"}, {"/crew/0/age_years", "30"}};
  CHECK(report::option_title(c.options[0]) == a.scenario.scenario.name + " (a.json)");
  CHECK(report::option_title(c.options[1]) == "raft: floor area 2 m², Person A: age 30 years");
  c.options[0].label = "a with /b=c.json";  // a file's own name
  CHECK(report::option_title(c.options[0]) == a.scenario.scenario.name + " (b=c.json)");
}

TEST_CASE("foul air is told in hours, and never is never") {
  Made a, b;  // a: 500 ppm more with every hour of 120
  b.timeline.co2_ppm.assign(b.timeline.time_s.size(), 600);
  CHECK(has(said(of(a, b)), "Air: CO2 above 5,000 ppm: 4.6 d in option 1, never in option 2."));
  CHECK(has(said(of(b, a)), "Air: CO2 above 5,000 ppm: never in option 1, 4.6 d in option 2."));
  CHECK_FALSE(has(said(of(a, a)), "Air:"));
}

TEST_CASE("equal stores say whether it is the stores") {
  Made a, b, equal;
  b.times(60, 80);
  report::Comparison c = of(a, b);
  equal.times(30, 45);
  c.options[1].equal = equal.compared();
  CHECK(has(said(c), "With the stores of option 1 in both, option 1 is ahead of option 2"));
  CHECK(has(said(c), "So the order turns: with its stores option 2 is ahead, without them option 1."));
  equal.times(40, 60);
  c.options[1].equal = equal.compared();
  CHECK(has(said(c), "So its stores are what puts option 2 ahead."));
  equal.times(60, 80);
  c.options[1].equal = equal.compared();
  CHECK(has(said(c), "So option 2 is ahead even without its stores."));
}

std::string text_of(const report::Comparison& comparison, bool full) {
  return to_text(report::pages::compare_page(comparison), {80, report::Letters::ascii, full});
}

TEST_CASE("text, JSON and CSV carry the notice, promise nothing and keep to their forms") {
  Made a, b;
  b.scenario.scenario.name = test::hostile;
  report::Comparison c = of(a, b);
  c.options[1].label = test::hostile;
  const std::string text = text_of(c, true);
  CHECK(has(test::unwrapped(text), std::string(standing_notice)));
  CHECK(has(test::unwrapped(text),
            "each option: no range: the file states all that nobody has measured; one case, not a forecast"));
  CHECK(has(text, "\n\nThe model cannot separate option 1 and option 2"));
  CHECK_FALSE(has(text_of(c, false), "Inputs that differ"));
  test::check_no_promise(text);
  for (const char letter : text) CHECK((letter == '\n' || (letter >= ' ' && letter <= '~')));
  for (std::size_t at = 0, end; (end = text.find('\n', at)) != std::string::npos; at = end + 1)
    CHECK(end - at <= 80);

  const auto json = nlohmann::json::parse(report::comparison_json(c));
  CHECK(json["format"] == "bide comparison 1");
  CHECK(json["options"].size() == 2);
  CHECK(json["options"][0]["own_stores"]["able_until"]["first_h"] == doctest::Approx(40));
  CHECK(json["options"][0]["own_stores"]["able_until"]["last_h"].is_null());
  CHECK(json["conclusions"][0]["sentences"].size() >= 4);

  const std::string csv = report::comparison_csv(c);
  CHECK(csv.rfind("# Each option: no range", 0) == 0);
  CHECK(has(csv, "\n1,a.json,own,120,40,40,,60,60,,,,,,cold,"));
  CHECK(has(csv, std::string(standing_notice)));
}

// What holds for one option alone is not said of all.
TEST_CASE("first hour and how sure stand for each option where they differ, once where not") {
  Made a, b;
  const auto lines = [&](const char* asks) {
    std::vector<std::string> out;
    bool within = false;
    for (const report::AnswerLine& line : report::comparison_answer(of(a, b))) {
      if (!line.asks.empty()) within = line.asks == asks;
      if (within) out.push_back(line.says);
    }
    return out;
  };
  CHECK(lines("First hour").size() == 1);
  REQUIRE(lines("How sure").size() == 1);
  CHECK(has(lines("How sure").front(), "; each option: no range"));
  b.scenario = test::valid_scenario(2, false);
  REQUIRE(lines("First hour").size() == 2);
  CHECK(has(lines("First hour").front(), "option 1: distress call"));
  CHECK(has(lines("First hour").back(), "option 2: distress call"));
}

// "and N more under Evidence" points at something: every end of the data of both options stands there.
TEST_CASE("what the answer leaves to the evidence stands in it") {
  Made a, b;
  b.scenario = test::valid_scenario(2, false);
  const report::Comparison compared = of(a, b);
  std::vector<std::string> listed;
  for (const report::document::Section& section : report::pages::compare_page(compared).sections)
    if (section.title == "Evidence")
      for (const report::document::Block& block : section.blocks)
        if (const auto* list = std::get_if<report::document::List>(&block))
          listed.insert(listed.end(), list->items.begin(), list->items.end());
  std::size_t ends = 0;
  for (const report::Option& option : compared.options)
    for (const outcome::Evidence* evidence :
         {&option.own.figures.able_evidence, &option.own.figures.alive_evidence})
      for (const outcome::Passed& each : evidence->passed) {
        INFO(each.limit);
        CHECK(std::count(listed.begin(), listed.end(), each.limit) >= 1);
        ++ends;
      }
  CHECK(ends > 3);  // more than the answer itself tells
}

TEST_CASE("under common futures the sentence turns with what was drawn") {
  const auto future = [](float able_h) {
    study::Future out;
    out.able_h.fill(able_h);
    out.alive_h.fill(able_h);
    return std::optional(out);
  };
  study::FuturesOfOption early{{}, 120}, late{{}, 120};
  for (int k = 0; k < 8; ++k) {
    early.futures.push_back(future(20));
    late.futures.push_back(future(30));
  }
  early.futures.push_back(future(40));
  late.futures.push_back(future(25));
  const auto said_of = [](const study::FuturesOfOption& a, const study::FuturesOfOption& b) {
    return report::futures_sentences(*study::pair_futures(a, b, 0.95), "option 1", "option 2").front();
  };
  const std::string up = said_of(early, late), down = said_of(late, early), none = said_of(late, late);
  INFO(up);
  // Wilson's for 8 of 9 at 95 %: 0.565 to 0.980.
  CHECK(has(up,
            "option 2 is longer in 8 of 9 futures (5 to 9), option 1 in 1; the median difference is +10 h"));
  CHECK(has(down,
            "option 1 is longer in 8 of 9 futures (5 to 9), option 2 in 1; the median difference is -10 h"));
  CHECK(has(none, "no difference in any of 9 futures"));
  // Most differ in nothing: the median says so, and what is left over is told beside it.
  for (int k = 0; k < 12; ++k)
    for (study::FuturesOfOption* each : {&early, &late}) each->futures.push_back(future(500));
  CHECK(has(said_of(early, late), "of the time within 5 d the median difference is 0 h"));
  CHECK(has(said_of(early, late), ", where they differ +10 h, the mean"));
}

TEST_CASE("two weathers are drawn over each other where they differ") {
  Made first, second;
  first.times(20, 60);
  second.times(60, 100);
  const std::size_t rows = first.timeline.time_s.size();
  for (Made* each : {&first, &second}) {
    each->timeline.wind_m_s.assign(rows, 8);
    each->timeline.rain_mm_h.assign(rows, 0.2);
  }
  second.timeline.wind_m_s[3] = 15;
  const report::document::Page page = report::pages::compare_page(of(first, second));
  const report::document::Chart* wind = nullptr;
  for (const report::document::Section& section : page.sections)
    for (const report::document::Block& block : section.blocks)
      if (const auto* chart = std::get_if<report::document::Chart>(&block)) {
        if (chart->title == "Wind") wind = chart;
        CHECK(chart->title != "Rain");
        CHECK(chart->title != "Air outside");
      }
  REQUIRE(wind != nullptr);
  REQUIRE(wind->series.size() == 2);
  const auto most = [](const report::document::Series& series) {
    double out = 0;
    for (const report::document::Point& point : series.points) out = std::max(out, point.y);
    return out;
  };
  CHECK(most(wind->series[0]) == 8);
  CHECK(most(wind->series[1]) == 15);
}

TEST_CASE("versions of one scenario are told apart by what was put in, files by their names") {
  Made first, second;
  first.scenario.scenario.name = "One name";
  second.scenario.scenario.name = "Another";
  report::Comparison comparison = of(first, second);
  CHECK(report::pages::compare_page(comparison).lead ==
        "Option 1: One name (a.json); option 2: Another (b.json). Able: can still help themselves.");
  second.scenario.scenario.name = "One name";
  comparison.options[0].put_in = {{"/raft/capacity_persons", "4"}};
  comparison.options[1].put_in = {{"/raft/capacity_persons", "12"}};
  CHECK(report::pages::compare_page(comparison).lead ==
        "One name. Option 1: raft: capacity 4 persons; option 2: raft: capacity 12 persons. Able: can still "
        "help themselves.");
}

TEST_CASE("the page of a comparison says what the text says, with the ranges first") {
  Made early, late;
  early.times(20, 60);
  late.times(60, 100);
  late.scenario.scenario.name = "<script>alert(1)</script>";
  report::Comparison comparison = of(early, late);
  comparison.no_futures = "None.";
  for (const double able_h : {15.0, 25.0}) {
    Made member;
    member.times(able_h, 60);
    comparison.options[0].members.push_back(members_of({&member}).front());
    comparison.options[1].members.push_back(members_of({&late}).front());
  }
  const report::document::Page page = report::pages::compare_page(comparison);
  const report::document::Section& first = page.sections.front();
  CHECK(first.first_screen);
  const auto& answer = std::get<report::document::Paragraph>(first.blocks.front());
  CHECK(answer.large);
  CHECK(answer.text == report::conclusions(comparison).front().verdict.front());
  const auto* table = [&]() -> const report::document::Table* {
    for (const report::document::Block& each : first.blocks)
      if (const auto* found = std::get_if<report::document::Table>(&each)) return found;
    return nullptr;
  }();
  REQUIRE(table != nullptr);
  CHECK(table->rows.front()[0] == "able until, first");
  CHECK(table->rows.front()[1] == "15 h to 25 h");
  // The second of the two people reaches no limit in the central case; members hold it at none.
  CHECK(table->rows[1] ==
        std::vector<std::string>{"able until, last", "not reached within 5 d", "not reached within 5 d"});
  const std::string html = report::html::to_html(page);
  CHECK(has(html, std::string(standing_notice)));
  CHECK_FALSE(has(html, "<script>alert(1)"));
}
