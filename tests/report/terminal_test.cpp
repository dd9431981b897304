#include "bide/report/run/terminal.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <sstream>

#include "bide/core/notice.hpp"
#include "bide/core/units.hpp"
#include "bide/report/words/text.hpp"
#include "support/presentation.hpp"
#include "support/synthetic_timeline.hpp"

using namespace bide;

namespace {

struct Case {
  scenario::ValidScenario scenario;
  timeline::Timeline timeline;
};

Case a_case(int persons, bool in_raft = true) {
  return {test::valid_scenario(persons, in_raft), test::synthetic_timeline(persons, in_raft)};
}

std::string summary(const Case& c, bool utf8 = true, int width = 80, bool full = true) {
  report::TerminalOptions options;
  options.full = full;
  options.utf8 = utf8;
  options.width = width;
  options.also = {{"Files", {report::document::List{{"timeline: out/timeline.csv"}}}}};
  return report::terminal_summary(outcome::read_outcome(c.timeline, c.scenario), c.timeline, c.scenario,
                                  options);
}

void check_widths(const std::string& text, int width) {
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    INFO(line);
    CHECK(report::columns(line) <= width);
  }
}

bool has(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

// What a reader asks first: able, alive, what ends it, who first, what buys most, coldest inside, water out,
// the first hour, how sure, what is not in it.
TEST_CASE("the answer comes first and is all that is printed unless more is asked for") {
  const std::string text = summary(a_case(2), true, 80, false), line = test::unwrapped(text);
  INFO(text);
  // Able 40 h after 3 Feb 18:00 UTC: 5 Feb 10:00 UTC, 08:00 by ship's time at 30 W.
  CHECK(has(line,
            "Able until first person: 40 h, 5 Feb 10:00 UTC (08:00 local); last person: limit not reached "
            "within 5 d"));
  CHECK(has(line, "Alive until first person: 2.5 d, 6 Feb 06:00 UTC (04:00 local)"));
  CHECK(has(line, "Ends it cold: core temperature below 33 °C"));
  CHECK(has(line, "Who first Person A "));
  CHECK(has(line, "Buys most not tried; ask: bide levers two_adrift.json"));
  CHECK(has(line, "Inside coldest 10 °C, just after boarding"));
  CHECK(has(line, "Water out after 2.5 d, 6 Feb 06:00 UTC (04:00 local)"));
  CHECK(has(line, "First hour distress call, count the crew, get clear, sea anchor"));
  // Inside 12 degC in the mean until A's 40 h, 16 until the end.
  CHECK(has(
      line,
      "How sure in part beyond what was measured (extrapolated): people may get cold sooner than shown: in "
      "cold air after two hours, the model gives bodies "));
  CHECK(has(line, "; longer than the raft trials (2.5 h); "));
  CHECK(has(line, "; no range: the file states all that nobody has measured; "));
  CHECK(has(line, "Not in it Drowning"));
  CHECK(has(line, std::string(standing_notice)));
  CHECK(has(line, std::string(standing_advice)));
  CHECK_FALSE(has(text, "Events, "));
  CHECK(std::count(text.begin(), text.end(), '\n') <= 31);
}

TEST_CASE("where nobody reaches a limit, the answer says who is nearest to which") {
  Case c = a_case(2);
  for (timeline::Fate& fate : c.timeline.fates) {
    fate.able_until_s = fate.alive_until_s = {};
    fate.nearest_margin_fraction = 0.33;
    fate.next_cause = system::Limit::able_water_deficit;
  }
  c.timeline.fates[1].nearest_margin_fraction = 0.2;
  const std::string line = test::unwrapped(summary(c, true, 80, false));
  INFO(line);
  CHECK(has(line, "Able until whole crew: limit not reached within 5 d"));
  CHECK(has(line, "Ends it nothing within 5 d"));
  CHECK(has(line,
            "Who first nobody in the central case; nearest to a limit there: Person B (man, 40) by water "
            "loss, 20 % of "
            "the margin left"));
  for (timeline::Fate& fate : c.timeline.fates) fate.nearest_margin_fraction = 0.6;
  CHECK(has(test::unwrapped(summary(c, true, 80, false)), "Who first nobody in the central case Buys most"));
}

// Central case: able 40 h, alive 60 h. Early: able 14 h, alive 50 h. Late: neither within the 120 h.
TEST_CASE("help that the file states is set against the runs of the range") {
  Case c = a_case(2);
  study::RangeMember early, late;
  early.able.first_s = 14 * hour_s, early.alive.first_s = 50 * hour_s, early.first_persons = {0};
  report::TerminalOptions options;
  options.members = {early, late};
  scenario::Rescue rescue;
  rescue.kind = scenario::RescueKind::fixed;
  const auto answer = [&](double at_h) {
    rescue.at_h = at_h;
    c.scenario.scenario.uncertain.emplace().rescue = rescue;
    return test::unwrapped(report::terminal_summary(outcome::read_outcome(c.timeline, c.scenario), c.timeline,
                                                    c.scenario, options));
  };
  CHECK(has(answer(30), "Help as stated after 30 h: all able at 30 h in 2 of 3 runs, all alive in 3"));
  CHECK(has(answer(55), "Help as stated after 2.3 d: all able at 2.3 d in 1 of 3 runs, all alive in 2"));
  CHECK(has(answer(130), "Help as stated after 5.4 d, after the 5 d followed"));
}

TEST_CASE("asked for in full, the summary has the rest after the answer") {
  const std::string text = summary(a_case(2));
  INFO(text);
  const std::string line = test::unwrapped(text);
  CHECK(has(line, "Person A: able until 40 h (cold: core temperature below 33 °C)"));
  CHECK(has(line, "Next limit: water loss, 38 % of the margin left."));
  CHECK(has(line, "water: 12 L at the start, out after 2.5 d, 6 Feb 06:00 UTC (04:00 local)."));
  CHECK_FALSE(has(line, "filled again"));
  CHECK(has(line, "food: none aboard."));
  CHECK(has(line, "40 h of 40 h able"));
  CHECK(has(line, "signals left at 5 d 3 flares"));
  CHECK(has(line, "Person A 31 °C"));
  CHECK(has(line, "6.0 %"));
  CHECK(has(line, "no cold injury"));
  CHECK(has(line, "coldest inside 10 °C, "));
  CHECK(has(line, "warmest inside 22 °C, "));
  CHECK(has(line, "CO2 above 5,000 ppm 4.6 d CO2 above 15,000 ppm 3.8 d CO2 above 30,000 ppm 2.5 d"));
  CHECK(has(line, "1.2 L a day"));
  CHECK(has(line, "extrapolated able until"));
  CHECK(has(line, "canopy heat loss at the middle of its unmeasured range"));
  CHECK(has(line, "Water for Person A. (first of 4)"));
  CHECK(has(line, "Not in the model: Drowning"));
  CHECK(has(line, "EVIDENCE"));
  CHECK(has(line, "timeline: out/timeline.csv"));
}

// The range is said at the top alone; below it every sentence is of the central case, and says so.
TEST_CASE("the answer stands in the summary once") {
  const std::string line = test::unwrapped(summary(a_case(2)));
  const std::string_view top = "Able until first person: 40 h";
  CHECK(line.find(top) != std::string::npos);
  CHECK(line.find(top, line.find(top) + 1) == std::string::npos);
  CHECK(has(line, "While each is alive, in the central case"));
}

// 214.5 h after 3 Feb 18:00 UTC are 8 days and 22.5 h: 12 Feb 16:30 UTC.
TEST_CASE("an event is told by its exact clock") {
  Case c = a_case(1);
  c.timeline.events.push_back({214.5 * hour_s, 0, system::NoteKind::unable, "Late.", 0, 0, ""});
  CHECK(has(test::unwrapped(summary(c)), "12 Feb 16:30 UTC (14:30 local) 214.5 Late."));
}

TEST_CASE("the notice stands in the summary and in the quiet line") {
  const Case c = a_case(2);
  CHECK(has(test::unwrapped(summary(c)), std::string(standing_notice)));
  CHECK(has(test::unwrapped(summary(c)), std::string(standing_advice)));
  const std::string line = report::quiet_line(outcome::read_outcome(c.timeline, c.scenario), c.scenario, {});
  CHECK(has(line, std::string(standing_notice)));
  CHECK(has(line, "able until 40 h (first person)"));
  CHECK(std::count(line.begin(), line.end(), '\n') == 1);
  CHECK(line.back() == '\n');
}

TEST_CASE("with members the summary leads with their range, and the quiet line gives it") {
  const Case c = a_case(2);
  study::RangeMember early, late;  // late: beyond the horizon
  early.able = {14 * hour_s, 20 * hour_s, 30 * hour_s, 2, 2};
  early.alive = {50 * hour_s, 60 * hour_s, 70 * hour_s, 2, 2};
  early.first_persons = {1};
  report::TerminalOptions options;
  options.members = {early, late};
  const outcome::Outcome outcome = outcome::read_outcome(c.timeline, c.scenario);
  const std::string text =
      test::unwrapped(report::terminal_summary(outcome, c.timeline, c.scenario, options));
  // 14 h after 3 Feb 18:00 UTC; 30 h after is midnight.
  CHECK(has(
      text,
      "Able until first person: 14 h (4 Feb 08:00 UTC) to after 5 d, central case 40 h; last person: 30 h "
      "to after 5 d"));
  CHECK(has(text, "; 3 runs of one case that differ in what nobody has measured ("));
  CHECK(has(
      text,
      "Who first Person B (man, 40) at the early end of the range; Person A (man, 40) in the central case"));
  CHECK_FALSE(has(text, "no range"));
  CHECK_FALSE(has(text, "Help "));
  CHECK(has(report::quiet_line(outcome, c.scenario, options), "able until 14 h to after 5 d (first person)"));
}

TEST_CASE("no promise, no colour, no line too wide, plain ASCII on demand") {
  for (const int persons : {1, 2, 25}) {
    for (const bool in_raft : {true, false}) {
      const Case c = a_case(persons, in_raft);
      for (const int width : {40, 57, 80, 200}) {
        const std::string text = summary(c, true, width);
        check_widths(text, std::min(width, 80));
        CHECK_FALSE(has(text, "\x1b"));
      }
      const std::string ascii = summary(c, false);
      CHECK(
          std::all_of(ascii.begin(), ascii.end(), [](char l) { return l == '\n' || (l >= 32 && l < 127); }));
      check_widths(ascii, 80);
      test::check_no_promise(ascii);
    }
  }
}

TEST_CASE("hostile names and texts are printed harmlessly") {
  Case c = a_case(2);
  std::string printable = test::hostile;  // no file is read that is not UTF-8
  printable.erase(printable.find("\xFF\xFE"), 2);
  c.scenario.scenario.name = c.scenario.scenario.setting = printable;
  c.timeline.events[0].text = test::hostile;
  c.timeline.assumptions.push_back(test::hostile);
  c.timeline.flags.push_back(test::hostile);
  c.scenario.cautions.push_back({"f.json", test::hostile, test::hostile});
  for (const bool utf8 : {true, false}) {
    const std::string text = summary(c, utf8);
    check_widths(text, 80);
    CHECK(std::none_of(text.begin(), text.end(),
                       [](char l) { return l != '\n' && (static_cast<unsigned char>(l) < 32 || l == 127); }));
    CHECK_FALSE(has(text, "\xC2\x9B"));
    CHECK_FALSE(has(text, "\xE2\x80\xAE"));
  }
  const std::string line = report::quiet_line(outcome::read_outcome(c.timeline, c.scenario), c.scenario, {});
  CHECK(std::count(line.begin(), line.end(), '\n') == 1);
}

TEST_CASE("a store that ran out and was filled again says so") {
  Case c = a_case(1);
  c.timeline.water_L.back() = 2;
  CHECK(has(test::unwrapped(summary(c)), "(04:00 local); filled again, 2.0 L left."));
}

TEST_CASE("nothing reached: no person is listed as if it ended them") {
  Case c = a_case(2);
  c.timeline.fates[0] = c.timeline.fates[1];
  const std::string text = summary(c);
  CHECK(has(text, "Persons A and B: no limit reached within 5 d."));
  CHECK_FALSE(has(text, "reach it within"));
  test::check_no_promise(text);
}
