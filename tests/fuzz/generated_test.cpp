// Valid scenarios from the schema: each runs, its ledgers close, no column leaves what can be, and the answer
// turns the right way when the sea warms or water is added. BIDE_FUZZ_SCENARIOS sets how many (2,000;
// 10 at least).
#include <doctest/doctest.h>

#include <cstdlib>
#include <optional>
#include <string>

#include "bide/timeline/simulate.hpp"
#include "fuzz/bounds.hpp"
#include "fuzz/generator.hpp"

using namespace bide;
using test::Mode;

namespace {

constexpr std::uint64_t seed = 1;

std::uint64_t scenarios() {
  constexpr std::uint64_t ordinary_number = 2000;
  const char* asked = std::getenv("BIDE_FUZZ_SCENARIOS");
  return asked ? std::strtoull(asked, nullptr, 10) : ordinary_number;
}

struct Ran {
  weather::Record weather;
  timeline::Timeline timeline;
};

// Empty for a refusal with its place, which some scenarios get when they are made ready.
std::optional<Ran> run(const scenario::ValidScenario& valid) {
  auto loaded = weather::load(valid);
  REQUIRE(std::holds_alternative<weather::Record>(loaded));
  auto simulated = timeline::simulate(valid, std::get<weather::Record>(loaded));
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&simulated)) {
    CHECK_FALSE(wrong->front().pointer.empty());
    return std::nullopt;
  }
  if (const auto* failure = std::get_if<timeline::Failure>(&simulated)) {
    FAIL_CHECK(failure->ledger << ": " << failure->message);
    return std::nullopt;
  }
  return Ran{std::move(std::get<weather::Record>(loaded)),
             std::move(std::get<timeline::Timeline>(simulated))};
}

scenario::ValidScenario valid_of(const nlohmann::json& file) {
  auto validated = scenario::validate_text(file.dump(), "generated.json", ".");
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(validated));
  return std::get<scenario::ValidScenario>(std::move(validated));
}

// No run fails, and no column leaves its bounds.
// @param a_little_K by which steps may overshoot
// @param at_least_in_ten scenarios that are not refused when they are made ready
void check_all(Mode mode, double a_little_K, std::uint64_t at_least_in_ten) {
  std::uint64_t ran = 0;
  const std::uint64_t all = scenarios();
  for (std::uint64_t k = 0; k < all; ++k) {
    CAPTURE(k);
    const auto made = test::any_scenario(mode, seed, k);
    if (!made) continue;
    CAPTURE(made->file.dump());
    const auto done = run(made->valid);
    if (!done) continue;
    ++ran;
    for (const std::string& wrong :
         test::out_of_bounds(done->timeline, done->weather, made->valid, a_little_K))
      FAIL_CHECK(wrong);
  }
  CHECK(ran >= all * at_least_in_ten / 10);
}

}  // namespace

TEST_CASE("generated scenarios: ordinary ranges") {
  check_all(Mode::ordinary, 0.2, 8);
}
// People in steam whose vessels open and close from one step to the next: fingers swing by 10 K.
TEST_CASE("generated scenarios: edges") {
  check_all(Mode::edges, 0.5, 6);
}

TEST_CASE("a warmer sea is never a colder cabin in calm dark") {
  const std::uint64_t all = scenarios() / 10;
  std::uint64_t compared = 0;
  for (std::uint64_t k = 0; k < all; ++k) {
    CAPTURE(k);
    const auto made = test::any_scenario(Mode::ordinary, seed + 1, k);
    if (!made || !made->valid.scenario.raft) continue;
    // Polar night without wind, sleep or openings that follow the air inside.
    nlohmann::json file = made->file;
    file["start_time_utc"] = "2031-01-05T00:00:00Z";
    file["position"] = {{"latitude_deg", 80}, {"longitude_deg", 0}};
    file["weather"] = {{"kind", "constant"},
                       {"air_temperature_degC", 5},
                       {"water_temperature_degC", 4},
                       {"wind_speed_m_s", 0}};
    file["routine"] = {{"open_above_degC", 45}, {"open_above_co2_ppm", 100000}};
    file.erase("failures");
    const auto validated = scenario::validate_text(file.dump(), "generated.json", ".");
    if (!std::holds_alternative<scenario::ValidScenario>(validated)) continue;
    nlohmann::json warmer = file;
    warmer["weather"]["water_temperature_degC"] = 14;
    const auto cold = run(std::get<scenario::ValidScenario>(validated)), warm = run(valid_of(warmer));
    REQUIRE(cold.has_value() == warm.has_value());
    if (!cold) continue;
    ++compared;
    // Who shivers in the colder one warms the air a little, in open rafts by a few thousandths of a kelvin.
    constexpr double by_shivering_K = 5e-3;
    for (std::size_t i = 0; i < cold->timeline.inside_air_degC.size(); ++i)
      CHECK(warm->timeline.inside_air_degC[i] >= cold->timeline.inside_air_degC[i] - by_shivering_K);
  }
  CHECK(2 * compared > all);
}

TEST_CASE("more water aboard never makes anybody thirstier") {
  const std::uint64_t all = scenarios() / 10;
  std::uint64_t compared = 0;
  for (std::uint64_t k = 0; k < all; ++k) {
    CAPTURE(k);
    const auto made = test::any_scenario(Mode::ordinary, seed + 2, k);
    if (!made || !made->valid.scenario.raft) continue;
    // From the start everybody is given what thirst or a large ration asks for, so that water runs out.
    nlohmann::json file = made->file;
    file["duration_h"] = 24;
    file["rationing"] = {{"rule", "by_thirst"}};
    if (k % 2 == 0) file["rationing"] = {{"rule", "fixed_per_day"}, {"water_L_per_day", 3}};
    nlohmann::json more = file;
    more["stores"]["extra"].push_back({{"kind", "water_L"}, {"quantity", 2}});
    const auto little_valid = scenario::validate_text(file.dump(), "generated.json", ".");
    const auto more_valid = scenario::validate_text(more.dump(), "generated.json", ".");
    if (!std::holds_alternative<scenario::ValidScenario>(little_valid)) continue;
    REQUIRE(std::holds_alternative<scenario::ValidScenario>(more_valid));
    const auto little = run(std::get<scenario::ValidScenario>(little_valid)),
               much = run(std::get<scenario::ValidScenario>(more_valid));
    REQUIRE(little.has_value() == much.has_value());
    if (!little) continue;
    ++compared;
    for (std::size_t p = 0; p < little->timeline.persons.size(); ++p) {
      const auto& before = little->timeline.persons[p].water_deficit_pct;
      const auto& after = much->timeline.persons[p].water_deficit_pct;
      // Drinks at other times come out again at other times: 0.05 was found in one of 200.
      constexpr double a_little_pct = 0.1;
      REQUIRE(before.size() == after.size());
      for (std::size_t i = 0; i < before.size(); ++i) CHECK(after[i] <= before[i] + a_little_pct);
    }
  }
  CHECK(2 * compared > all);
}
