#include "bide/report/levers/levers.hpp"
#include "bide/report/document/text.hpp"
#include "bide/report/levers/levers_page.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <nlohmann/json.hpp>

#include "bide/core/notice.hpp"
#include "bide/report/levers/levers_words.hpp"
#include "support/presentation.hpp"
#include "support/synthetic_timeline.hpp"

using namespace bide;
using study::LeverTried;

namespace {

const scenario::Lever shut = {"shut", "entrance nearly shut", "judgement", {}, {}, {}, 0, 0, false, true};
const scenario::Lever litre = {"litre", "one more litre each", "judgement", {}, {}, {}, 2.2, 2.4, false};

// As it is 40 h able, 60 h alive within five days.
study::LeversTried levers(LeverTried first, LeverTried second) {
  study::LeversTried out;
  out.base.horizon_s = 120 * 3600.0;
  out.base.able = {40 * 3600.0, {}, {}, 1, 2};
  out.base.alive = {60 * 3600.0, {}, {}, 1, 2};
  out.base.able_limit = system::Limit::able_core_low;
  out.base.first_persons = {0};
  out.base_co2_low_ppm = 1000;
  out.base_co2_high_ppm = 3000;
  out.tried = {std::move(first), std::move(second)};
  return out;
}

LeverTried tried(const scenario::Lever& lever, double able_h) {
  LeverTried out;
  out.lever = &lever;
  out.burden = {lever.mass_kg, lever.volume_L};
  out.gained.able = {able_h, able_h == 80, false, true};
  out.co2_low_ppm = 2000;
  out.co2_high_ppm = 3000;
  return out;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

// The cells of a change in the table of the page.
std::string cells(const study::LeversTried& list, const scenario::ValidScenario& scenario,
                  const std::string& title) {
  for (const report::document::Section& section : report::pages::levers_page(list, scenario).sections)
    for (const report::document::Block& block : section.blocks)
      if (const auto* table = std::get_if<report::document::Table>(&block))
        for (const auto& row : table->rows)
          if (row.front() == title) return fmt::format("{}", fmt::join(row, " | "));
  return "";
}

std::string in_full(const study::LeversTried& list, const scenario::ValidScenario& scenario,
                    report::Letters letters) {
  return to_text(report::pages::levers_page(list, scenario), {80, letters, true});
}

}  // namespace

TEST_CASE("levers say what they gain or cost, what they weigh, and closing its price in air") {
  auto scenario = test::valid_scenario(2);
  scenario.scenario.name = test::hostile;
  const auto list = levers(tried(litre, 80), tried(shut, -12));
  const std::string printed = in_full(list, scenario, report::Letters::ascii);
  const std::string text = test::unwrapped(printed);
  CHECK(has(text, "Able until first person: 40 h, 5 Feb 10:00 UTC (08:00 local); last"));
  CHECK(has(text, "Ends it cold: core temperature below 33 C"));
  CHECK(has(text, "Buys most for the first person: one more litre each: able longer by 3.3 d or more"));
  CHECK(has(cells(list, scenario, "one more litre each"),
            " | 2.2 | 2.4 | able longer by 3.3 d or more; alive as long | "));
  CHECK(has(cells(list, scenario, "entrance nearly shut"),
            " | none | none | able shorter by 12 h; alive as long"));
  CHECK(has(text, "Its price in air: CO2 at most 2,000 to 3,000 ppm"));
  CHECK(has(text, std::string(standing_notice)));
  test::check_no_promise(printed);
  for (const char letter : printed) CHECK((letter == '\n' || (letter >= ' ' && letter <= '~')));
  const auto json = nlohmann::json::parse(report::levers_json(list, scenario));
  CHECK(json["format"] == "bide levers 1");
  CHECK(json["levers"][0]["able_gain"]["at_least"] == true);
  CHECK(json["levers"][1]["state"] == "harms");
}

TEST_CASE("what a lever buys is told over what nobody has measured") {
  LeverTried turns = tried(litre, 20), steady = tried(shut, -12);
  turns.gained.alive = {0, false, true, false};
  turns.members = {{{30, true, false, true}, turns.gained.alive},
                   {{-5, false, false, true}, {7, false, false, true}}};
  steady.members = {steady.gained, steady.gained};
  const auto list = levers(turns, steady);
  const auto scenario = test::valid_scenario(2);
  CHECK(has(
      cells(list, scenario, "one more litre each"),
      "able longer by 20 h (range shorter by 5.0 h to longer by 30 h or more); alive longer by 0 to 7.0 h"));
  CHECK(has(cells(list, scenario, "entrance nearly shut"), "able shorter by 12 h; alive as long"));
  // No limit as it is, but one where the raft loses most.
  LeverTried far = tried(litre, 0);
  far.gained = {{0, false, true, false}, {0, false, true, false}, 0.04};
  far.figures.next_limit = system::Limit::able_core_low;
  far.figures.next_margin_fraction = 0.5;
  far.members = {far.gained, {{9, false, false, true}, {0, false, true, false}, 0}};
  CHECK(has(report::bought_words(far, 120 * 3600.0),
            "able longer by 0 to 9.0 h; +4 % of the margin: 50 % of the margin left to cold"));
  far.members = {{{3, false, false, true}, {}, 0}, {{9, true, false, true}, {}, 0}};
  // The central case lies within its range.
  CHECK(has(report::bought_words(far, 120 * 3600.0), "able longer by 0 to 9.0 h or more"));
  far.members = {far.gained, {far.gained.able, far.gained.alive, -0.02}};
  CHECK(report::bought_words(far, 120 * 3600.0) ==
        "no limit within 5 d; +4 % of the margin (-2 to +4 %): 50 % of the margin left to "
        "cold");
}

TEST_CASE("a lever that is withheld gives its reason and no hours") {
  LeverTried withheld = tried(shut, 30);
  withheld.state = LeverTried::State::withheld;
  withheld.reason = "carbon dioxide reaches 5000 to 60000 ppm";
  const auto list = levers(tried(litre, 20), withheld);
  const std::string text = test::unwrapped(in_full(list, test::valid_scenario(2), report::Letters::utf8));
  CHECK(has(text, "Withheld: - entrance nearly shut: carbon dioxide reaches 5000 to 60000 ppm."));
  CHECK_FALSE(has(text, "gains 30 h"));
  CHECK_FALSE(nlohmann::json::parse(report::levers_json(list, test::valid_scenario(2)))["levers"][1].contains(
      "able_gain"));
}

TEST_CASE("what buys most is named in its order with its hours, and only what buys") {
  const scenario::Lever more = {"more", "a second suit", "judgement", {}, {}, {}, 3, 20, false};
  const scenario::Lever pump = {"pump", "a pump", "judgement", {}, {}, {}, 1, 1, false};
  study::LeversTried list = levers(tried(litre, 20), tried(shut, -12));
  CHECK(report::most_bought_words(list, 3) ==
        "for the first person: one more litre each: able longer by 20 h");
  LeverTried withheld = tried(more, 30);
  withheld.state = LeverTried::State::withheld;
  list.tried = {tried(more, 30), tried(litre, 20), tried(pump, 10), tried(litre, 5)};
  CHECK(report::most_bought_words(list, 3) ==
        "for the first person: a second suit: able longer by 30 h; one more litre each: able longer by 20 h; "
        "a pump: able longer "
        "by 10 h");
  LeverTried far = tried(litre, 0);
  far.gained = {{0, false, true, false}, {0, false, true, false}, 0.28};
  list.tried = {far};
  CHECK(report::most_bought_words(list, 3) ==
        "for the first person: one more litre each: +28 % of the margin");
  // Where the central case reaches no limit, hours won in a part of the range are told.
  LeverTried dry = tried(pump, 0);
  dry.gained = {{0, false, true, false}, {0, false, true, false}, 0.01};
  dry.members = {dry.gained, {{0, false, true, false}, {9.5, false, false, true}, 0}};
  list.tried = {dry, far};
  CHECK(report::most_bought_words(list, 1) == "for the first person: a pump: alive longer by 0 to 9.5 h");
  // A loss that goes on after the end of the runs is larger than its hours, not smaller.
  LeverTried worse = tried(litre, -14);
  worse.members = {{{-66, true, false, true}, worse.gained.alive}, {{0, false, true, false}, {}}};
  CHECK(has(report::bought_words(worse, 120 * 3600.0), "able shorter by 14 h (range 0 to 2.8 d or more)"));
  // Not where another part loses some.
  dry.members[0].alive = {-3, false, false, true};
  list.tried = {far, dry};
  CHECK(report::most_bought_words(list, 2) ==
        "for the first person: one more litre each: +28 % of the margin");
  list.tried = {withheld, tried(shut, -12)};
  CHECK(report::most_bought_words(list, 3) == "none of the practical changes tried, one at a time");
}
