// What answers say of the first minutes in the water: left out, left to odds, or counted.
#include <doctest/doctest.h>

#include <limits>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "bide/report/odds/odds_words.hpp"
#include "bide/report/run/sentences.hpp"
#include "support/synthetic_timeline.hpp"

using namespace bide;
using report::not_in_the_model;
using report::Told;
using system::Limit;

namespace {

bool says(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

scenario::ValidScenario stated(bool in_raft, double low, double high) {
  scenario::ValidScenario out = test::valid_scenario(2, in_raft);
  out.scenario.uncertain.emplace();
  out.scenario.uncertain->lost_in_first_minutes = {low, high};
  return out;
}

}  // namespace

TEST_CASE("a single run leaves the first minutes out, and says what would count them") {
  const std::string dry = not_in_the_model(test::valid_scenario(2), Told::as_written);
  CHECK(says(dry, "Drowning, the first minutes in cold water, despair"));
  const std::string wet = not_in_the_model(test::valid_scenario(2, false), Told::as_written);
  CHECK(says(wet,
             "the first minutes in cold water (enter a share as "
             "lost_in_first_minutes, and odds count it), despair"));
  CHECK(says(not_in_the_model(stated(false, 0.05, 0.2), Told::as_written),
             "the first minutes in cold water (counted in odds alone: 5 to 20 % lost, as entered), despair"));
  scenario::ValidScenario lost = test::valid_scenario(2, false);
  lost.scenario.crew[1].lost_in_first_minutes = true;
  CHECK(says(not_in_the_model(lost, Told::as_written), "beyond who is entered as lost"));
}

TEST_CASE("odds count a stated range, and say that the first minutes are left out without one") {
  CHECK_FALSE(says(not_in_the_model(stated(false, 0.05, 0.2), Told::futures), "first minutes"));
  CHECK(says(not_in_the_model(test::valid_scenario(2, false), Told::futures), "lost_in_first_minutes"));
  // By a launch people may come into the water, though the file has them board dry.
  scenario::ValidScenario launched = test::valid_scenario(2);
  launched.scenario.uncertain.emplace();
  CHECK_FALSE(says(not_in_the_model(launched, Told::futures), "lost_in_first_minutes"));
  launched.scenario.uncertain->launch.emplace();
  CHECK(says(not_in_the_model(launched, Told::futures), "lost_in_first_minutes"));
  CHECK_FALSE(says(not_in_the_model(launched, Told::as_written), "lost_in_first_minutes"));
}

// In 30 of 100 futures somebody is lost at once, in 20 of the others somebody dies of cold.
TEST_CASE("odds tell the range, whose it is, and in how many futures somebody is lost") {
  constexpr float beyond = std::numeric_limits<float>::infinity();
  std::vector<study::Future> futures(100);
  for (std::size_t i = 0; i < futures.size(); ++i) {
    study::Future& f = futures[i];
    f.able_h = f.alive_h = {beyond, beyond, beyond};
    if (i < 50) f.able_h[study::first_person] = f.alive_h[study::first_person] = i < 30 ? 0.0F : 40.0F;
    f.alive_cause.fill(i < 30 ? Limit::first_minutes : Limit::lethal_core_low);
    f.able_cause = f.alive_cause;
  }
  const study::OddsAnswer answer{stated(false, 0.2, 0.2),
                                 1,
                                 futures.size(),
                                 {},
                                 {},
                                 study::odds_of(study::all_of(futures), 120, false, 0.95),
                                 {},
                                 {}};
  CHECK(report::first_minutes_line(answer) ==
        "20 % of those who enter the water are lost in the first minutes: a share that was entered, none is "
        "published; somebody in 30 % of futures");
  CHECK(
      says(report::ends_by(answer, "within 5 d"), "no longer alive: the first minutes in the water in 30 %"));
  const auto json = nlohmann::json::parse(report::odds_json(answer));
  CHECK(json["lost_in_first_minutes"]["low"] == 0.2);
  CHECK(json["first_alive_ended_by"]["first_minutes"] == 0.3);
  study::OddsAnswer none = answer;
  none.scenario.scenario.uncertain->lost_in_first_minutes.reset();
  CHECK(report::first_minutes_line(none).empty());
  CHECK(nlohmann::json::parse(report::odds_json(none))["lost_in_first_minutes"].is_null());
}
