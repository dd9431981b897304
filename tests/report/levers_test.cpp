#include "report/levers.hpp"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "core/notice.hpp"
#include "support/presentation.hpp"
#include "support/synthetic_timeline.hpp"

using namespace bide;
using study::LeverTried;

namespace {

const scenario::Lever shut = {"shut", "entrance nearly shut", "judgement", {}, {}, {}, 0, 0, true};
const scenario::Lever litre = {"litre", "one more litre each", "judgement", {}, {}, {}, 2.2, 2.4, false};

// As it is 40 h able, 60 h alive within five days.
study::LeversTried levers(LeverTried first, LeverTried second) {
  study::LeversTried out;
  out.base.horizon_s = 120 * 3600.0;
  out.base.able = {40 * 3600.0, {}, {}, 1, 2};
  out.base.alive = {60 * 3600.0, {}, {}, 1, 2};
  out.base.able_limit = "able_core_low";
  out.base_co2_low_ppm = 1000;
  out.base_co2_high_ppm = 3000;
  out.tried = {std::move(first), std::move(second)};
  return out;
}

LeverTried tried(const scenario::Lever& lever, double able_h) {
  LeverTried out;
  out.lever = &lever;
  out.burden = {lever.mass_kg, lever.volume_L};
  out.able = {able_h, able_h == 80, false, true};
  out.co2_low_ppm = 2000;
  out.co2_high_ppm = 3000;
  return out;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("levers say what they gain or cost, what they weigh, and closing its price in air") {
  auto scenario = test::valid_scenario(2);
  scenario.scenario.name = test::hostile;
  const auto list = levers(tried(litre, 80), tried(shut, -12));
  const std::string printed = report::levers_text(list, scenario, report::Letters::ascii, 80);
  const std::string text = test::unwrapped(printed);
  CHECK(has(text, "As it is: able until 40 h, alive until 60 h (first person); ended by cold."));
  CHECK(has(
      text,
      "one more litre each (2.2 kg, 2.4 L more aboard): able gains at least 80 h, alive not told apart."));
  CHECK(has(text, "COST TIME OR MARGIN HERE - entrance nearly shut: able loses 12 h"));
  CHECK(has(text, "Its price in air: CO2 at most 2,000 to 3,000 ppm"));
  CHECK(has(text, std::string(standing_notice)));
  test::check_no_promise(printed);
  for (const char letter : printed) CHECK((letter == '\n' || (letter >= ' ' && letter <= '~')));
  const auto json = nlohmann::json::parse(report::levers_json(list, scenario));
  CHECK(json["format"] == "bide levers 1");
  CHECK(json["levers"][0]["able_gain"]["at_least"] == true);
  CHECK(json["levers"][1]["state"] == "harms");
}

TEST_CASE("a lever that is withheld gives its reason and no hours") {
  LeverTried withheld = tried(shut, 30);
  withheld.state = LeverTried::State::withheld;
  withheld.reason = "carbon dioxide reaches 5000 to 60000 ppm";
  const auto list = levers(tried(litre, 20), withheld);
  const std::string text =
      test::unwrapped(report::levers_text(list, test::valid_scenario(2), report::Letters::utf8, 80));
  CHECK(has(text, "WITHHELD - entrance nearly shut: carbon dioxide reaches 5000 to 60000 ppm."));
  CHECK_FALSE(has(text, "gains 30 h"));
  CHECK_FALSE(nlohmann::json::parse(report::levers_json(list, test::valid_scenario(2)))["levers"][1].contains(
      "able_gain"));
}
