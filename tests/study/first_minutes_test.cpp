// A stated share of those who enter the water, lost in its first minutes: who is drawn, who is not asked, and
// what becomes of the rest.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <string>
#include <vector>

#include "bide/study/ensemble/run_all.hpp"
#include "bide/study/questions/ask_odds.hpp"
#include "bide/study/sampling/sampler.hpp"

using namespace bide;
using study::Sampler;
using system::Limit;

namespace {

// Four people in a cold sea, and this beside the weather that is drawn.
scenario::ValidScenario cold(const std::string& more, const std::string& boarding = R"({"kind": "swim"})") {
  const std::string text = R"({"format": "bide scenario 1", "start_time_utc": "2031-02-03T18:00:00Z",
    "duration_h": 36, "position": {"latitude_deg": 55, "longitude_deg": -21},
    "weather": {"kind": "constant", "air_temperature_degC": 2, "water_temperature_degC": 5,
                "wind_speed_m_s": 12},
    "raft": {"kind": "offshore_4"}, "boarding": )" +
                           boarding + R"(,
    "crew": [{"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 75},
             {"sex": "female", "age_years": 25, "height_m": 1.65, "mass_kg": 60},
             {"sex": "male", "age_years": 61, "height_m": 1.8, "mass_kg": 92},
             {"sex": "female", "age_years": 48, "height_m": 1.7, "mass_kg": 70}],
    "uncertain": {"inputs": {"/weather/wind_speed_m_s": {"kind": "uniform", "low": 5, "high": 15}})" +
                           (more.empty() ? "" : ", " + more) + "}}";
  auto validated = scenario::validate_text(text, "s.json", {});
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&validated)) FAIL(to_string(wrong->front()));
  return std::get<scenario::ValidScenario>(std::move(validated));
}

std::string share(double low, double high) {
  return R"("lost_in_first_minutes": {"low": )" + std::to_string(low) + R"(, "high": )" +
         std::to_string(high) + "}";
}

// Who is lost in one future, by place in the crew.
std::set<std::size_t> lost(const Sampler& sampler, std::uint64_t k) {
  const auto made = sampler.scenario_of(sampler.draw(7, k));
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(made));
  const auto& crew = std::get<scenario::ValidScenario>(made).scenario.crew;
  std::set<std::size_t> out;
  for (std::size_t p = 0; p < crew.size(); ++p)
    if (crew[p].lost_in_first_minutes) out.insert(p);
  return out;
}

study::OddsAnswer odds(const scenario::ValidScenario& scenario, std::uint64_t futures = 24, int threads = 1) {
  study::OddsQuestion question;
  question.futures = futures;
  question.threads = threads;
  question.nested = false;
  auto answer = study::ask_odds(scenario, question);
  REQUIRE(std::holds_alternative<study::OddsAnswer>(answer));
  return std::get<study::OddsAnswer>(std::move(answer));
}

// Hours until the last of them is dead, in one future; the horizon where somebody is not.
double last_alive_h(const Sampler& sampler, std::uint64_t k) {
  const auto made = sampler.scenario_of(sampler.draw(7, k));
  const auto run = study::run_one(std::get<scenario::ValidScenario>(made));
  REQUIRE(std::holds_alternative<study::Run>(run));
  const auto& outcome = std::get<study::Run>(run).outcome;
  double out = 0;
  for (const auto& person : outcome.persons)
    out = std::max(out, person.alive.at_s.value_or(outcome.horizon_s) / 3600);
  return out;
}

}  // namespace

// Of n draws that share 0.3, five standard errors of the count are 5 sqrt(0.3 x 0.7 n).
TEST_CASE("of many who enter the water the share that is stated is lost") {
  const Sampler sampler(cold(share(0.3, 0.3)));
  constexpr int futures = 1500, n = 4 * futures;
  int count = 0, both = 0;
  std::array<int, 4> each{};
  for (std::uint64_t k = 0; k < futures; ++k) {
    const auto who = lost(sampler, k);
    count += static_cast<int>(who.size());
    for (const std::size_t p : who) ++each[p];
    both += who.contains(0) && who.contains(1) ? 1 : 0;
  }
  CHECK(std::abs(count - 0.3 * n) < 5 * std::sqrt(0.3 * 0.7 * n));
  for (const int one : each) CHECK(std::abs(one - 0.3 * futures) < 5 * std::sqrt(0.3 * 0.7 * futures));
  // A draw of their own: two of them in 0.09.
  CHECK(std::abs(both - 0.09 * futures) < 5 * std::sqrt(0.09 * 0.91 * futures));
}

// Of a share spread evenly from 0 to 1 the mean is 1/2, and two of a future are lost with the mean of its
// square, 1/3; with a share for each of them it would be 1/4.
TEST_CASE("a range gives one share for the whole future") {
  const Sampler sampler(cold(share(0, 1)));
  constexpr int futures = 1500;
  int first = 0, both = 0;
  for (std::uint64_t k = 0; k < futures; ++k) {
    const auto who = lost(sampler, k);
    first += who.contains(0) ? 1 : 0;
    both += who.contains(0) && who.contains(3) ? 1 : 0;
  }
  CHECK(std::abs(first - futures / 2.0) < 5 * std::sqrt(futures / 4.0));
  CHECK(std::abs(both - futures / 3.0) < 5 * std::sqrt(futures * 2.0 / 9));
}

TEST_CASE("only who enters the water is asked") {
  const std::string all = share(1, 1);
  const std::set<std::size_t> everybody{0, 1, 2, 3};
  CHECK(lost(Sampler(cold(all)), 3) == everybody);
  CHECK(lost(Sampler(cold(all, R"({"kind": "float_free"})")), 3) == everybody);
  CHECK(lost(Sampler(cold(all, R"({"kind": "dry"})")), 3).empty());
  // The way aboard is drawn: it decides.
  const Sampler either(
      cold(all + R"(, "alternatives": [{"name": "dry", "weight": 1, "set": {"/boarding/kind": "dry"}},
                                       {"name": "no raft", "weight": 1,
                                        "set": {"/boarding/kind": "none", "/raft": null}}])"));
  int dry = 0;
  for (std::uint64_t k = 0; k < 40; ++k) {
    const bool stepped = either.draw(7, k).alternative == "dry";
    dry += stepped ? 1 : 0;
    CHECK(lost(either, k) == (stepped ? std::set<std::size_t>{} : everybody));
  }
  CHECK(dry > 0);
  CHECK(dry < 40);
  // By a launch as well: whoever steps across is dry.
  const Sampler launch(cold(all + R"(, "launch": {"way": "by_hand"})", R"({"kind": "dry"})"));
  for (std::uint64_t k = 0; k < 40; ++k) {
    const auto drawn = launch.draw(7, k);
    CHECK(lost(launch, k).empty() == (drawn.raft.launch->reached == study::Reached::dry));
  }
}

TEST_CASE("a share of nothing is the same futures as none stated, to the bit") {
  const Sampler without(cold("")), with(cold(share(0, 0)));
  for (std::uint64_t k = 0; k < 20; ++k)
    CHECK(with.text_of(with.draw(7, k)) == without.text_of(without.draw(7, k)));
}

TEST_CASE("a greater share takes the same people and more, and leaves every other draw") {
  const Sampler small(cold(share(0.1, 0.3))), great(cold(share(0.4, 0.8)));
  std::size_t more = 0;
  for (std::uint64_t k = 0; k < 60; ++k) {
    const auto few = lost(small, k), many = lost(great, k);
    CHECK(std::includes(many.begin(), many.end(), few.begin(), few.end()));
    more += many.size() - few.size();
    CHECK(small.draw(7, k).settings.front().value == great.draw(7, k).settings.front().value);
  }
  CHECK(more > 0);
}

TEST_CASE("what a file says of a person goes before the draw") {
  const Sampler one(cold(share(1, 1) + R"(, "alternatives": [{"name": "A", "weight": 1,
      "set": {"/crew/0/lost_in_first_minutes": false}}])"));
  CHECK(lost(one, 0) == std::set<std::size_t>{1, 2, 3});
}

TEST_CASE("if all are lost nobody is alive after the first minutes, and that is what ended it") {
  const auto all = odds(cold(share(1, 1)));
  for (const auto& at : all.odds.times) CHECK(at.some_alive.count == 0);
  REQUIRE(all.odds.alive_ended.size() == 1);
  CHECK(all.odds.alive_ended.front().first == Limit::first_minutes);
  CHECK(all.odds.alive_ended.front().second == 1);
  const auto dry = odds(cold(share(1, 1), R"({"kind": "dry"})"));
  for (const auto& [limit, part] : dry.odds.alive_ended) CHECK(limit != Limit::first_minutes);
  CHECK(dry.odds.times.front().all_alive.share == 1);
}

// Cold ends it here: fewer people warm the raft less, and the last of fewer people is no later.
TEST_CASE("in the cold a greater share never lets somebody live longer") {
  const Sampler none(cold(share(0, 0))), some(cold(share(0.3, 0.3))), most(cold(share(0.7, 0.7)));
  bool earlier = false;
  for (std::uint64_t k = 0; k < 6; ++k) {
    const double whole = last_alive_h(none, k), less = last_alive_h(some, k), least = last_alive_h(most, k);
    CHECK(less <= whole);
    CHECK(least <= less);
    earlier = earlier || least < whole;
  }
  CHECK(earlier);
}

TEST_CASE("threads and lane mates change no bit of it") {
  const auto scenario = cold(share(0.1, 0.6));
  const auto one = odds(scenario, 40, 1), three = odds(scenario, 40, 3);
  for (std::size_t i = 0; i < one.odds.times.size(); ++i) {
    CHECK(one.odds.times[i].all_alive.count == three.odds.times[i].all_alive.count);
    CHECK(one.odds.times[i].some_alive.count == three.odds.times[i].some_alive.count);
  }
  CHECK(one.odds.able[study::last_person].until[1].time == three.odds.able[study::last_person].until[1].time);
  CHECK(one.odds.alive_ended == three.odds.alive_ended);
}
