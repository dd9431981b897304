#include "bide/study/questions/ask_odds.hpp"

#include <doctest/doctest.h>

#include <limits>
#include <optional>

#include "support/synthetic_timeline.hpp"

using namespace bide;
using study::Refusal;

namespace {

// Six hours of a scenario of which the air temperature is uncertain.
scenario::ValidScenario uncertain() {
  scenario::Validated with = scenario::validate_text(
      R"({"format": "bide scenario 1", "start_time_utc": "2031-02-03T18:00:00Z", "duration_h": 6,
          "position": {"latitude_deg": 49, "longitude_deg": -21},
          "weather": {"kind": "constant", "air_temperature_degC": 10, "water_temperature_degC": 11,
                      "wind_speed_m_s": 10},
          "raft": {"kind": "offshore_4"}, "boarding": {"kind": "dry"},
          "crew": [{"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 75}],
          "uncertain": {"inputs": {"/weather/air_temperature_degC": {"kind": "uniform", "low": 5, "high": 15}},
                        "known": {"alive_at_h": 2}}})",
      "u.json", {});
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(with));
  return std::get<scenario::ValidScenario>(with);
}

Refusal refused(const scenario::ValidScenario& scenario, const study::OddsQuestion& question) {
  auto answer = study::ask_odds(scenario, question);
  REQUIRE(std::holds_alternative<Refusal>(answer));
  REQUIRE(!std::get<Refusal>(answer).reasons.empty());
  return std::get<Refusal>(answer);
}

study::OddsQuestion knowing(std::optional<double> alive_at_h, std::optional<double> now_h) {
  study::OddsQuestion question;
  question.futures = 16;
  question.known = {alive_at_h, now_h};
  return question;
}

}  // namespace

TEST_CASE("what is known must lie within the hours simulated and must not contradict itself") {
  const scenario::ValidScenario scenario = uncertain();
  CHECK(refused(scenario, knowing(7, {})).reasons.front().pointer == "/uncertain/known/alive_at_h");
  CHECK(refused(scenario, knowing(1, 7)).reasons.front().pointer == "/uncertain/known/now_h");
  CHECK(refused(scenario, knowing(3, 2)).reasons.front().pointer == "/uncertain/known/alive_at_h");
  // The hour of the file is contradicted by the hour of the question.
  CHECK(refused(scenario, knowing({}, 1)).reasons.front().message ==
        "found 2; allowed 0 to the time of asking, 1 (/uncertain/known/now_h)");
  CHECK(refused(scenario, knowing(1, std::numeric_limits<double>::quiet_NaN())).why == Refusal::Why::input);
}

TEST_CASE("nothing to draw and nothing uncertain are refused, not run") {
  study::OddsQuestion none;
  none.futures = 0;
  CHECK(refused(uncertain(), none).why == Refusal::Why::input);
  CHECK(refused(test::valid_scenario(1), {}).reasons.front().pointer == "/uncertain");
}

TEST_CASE(
    "the answer carries the question, and what is known from the file where the question says nothing") {
  const auto answer = study::ask_odds(uncertain(), knowing({}, 3));
  REQUIRE(std::holds_alternative<study::OddsAnswer>(answer));
  const auto& odds = std::get<study::OddsAnswer>(answer);
  CHECK(odds.samples == 16);
  CHECK(odds.odds.futures + odds.odds.ruled_out + odds.failed.size() == 16);
  CHECK(odds.known.alive_at_h == 2.0);
  CHECK(odds.known.now_h == 3.0);
  CHECK(odds.odds.horizon_h == 6.0);
  CHECK_FALSE(odds.too_many_failed());
}

TEST_CASE("more than one failed sample in a hundred is too many") {
  study::OddsAnswer answer{uncertain(), 1, 200, {{0, "a"}, {1, "b"}}, {}, {}, {}, {}};
  CHECK_FALSE(answer.too_many_failed());
  answer.failed.push_back({2, "c"});
  CHECK(answer.too_many_failed());
}

TEST_CASE("futures drawn in parts give the answer of those drawn together") {
  const scenario::ValidScenario scenario = uncertain();
  study::OddsQuestion question;
  question.futures = 20;
  question.nested = false;
  const auto together = std::get<study::OddsAnswer>(study::ask_odds(scenario, question));
  auto all = std::get<study::SomeFutures>(study::draw_some(scenario, question, {0, 7}));
  const auto rest = std::get<study::SomeFutures>(study::draw_some(scenario, question, {7, 20}));
  REQUIRE(rest.futures.size() == 13);
  CHECK(rest.futures.front().sample == 7);
  all.futures.insert(all.futures.end(), rest.futures.begin(), rest.futures.end());
  const auto parts = std::get<study::OddsAnswer>(study::odds_from(scenario, question, all));
  CHECK(parts.odds.futures == together.odds.futures);
  for (std::size_t who = 0; who < study::who_count; ++who)
    for (std::size_t q = 0; q < study::quantiles.size(); ++q) {
      CHECK(parts.odds.able[who].until[q].time == together.odds.able[who].until[q].time);
      CHECK(parts.odds.alive[who].until[q].time == together.odds.alive[who].until[q].time);
    }
  REQUIRE(parts.unknowns.size() == together.unknowns.size());
  for (std::size_t i = 0; i < parts.unknowns.size(); ++i)
    CHECK(parts.unknowns[i].reduction.of_variance == together.unknowns[i].reduction.of_variance);
}
