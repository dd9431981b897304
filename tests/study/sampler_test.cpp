// Samples of the scenario that states every uncertain field, and of small ones.
#include "bide/study/sampling/sampler.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <limits>
#include <set>

#include "bide/scenario/patch.hpp"
#include "bide/scenario/write.hpp"

using namespace bide;
using study::Sampler;

namespace {

const std::filesystem::path folder = std::filesystem::path(BIDE_SOURCE_DIR) / "tests/scenario";

scenario::ValidScenario full() {
  return std::get<scenario::ValidScenario>(scenario::validate_file(folder / "full.json"));
}

// The smallest scenario with this `uncertain`.
scenario::ValidScenario with(const std::string& uncertain, const std::string& weather = "constant") {
  const std::string text = R"({"format": "bide scenario 1", "start_time_utc": "2031-02-03T18:00:00Z",
    "duration_h": 24, "position": {"latitude_deg": 49, "longitude_deg": -21},
    "weather": {"kind": ")" +
                           weather + R"(", "air_temperature_degC": 10, "water_temperature_degC": 11,
                "wind_speed_m_s": 8},
    "raft": {"kind": "offshore_4"},
    "crew": [{"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 75},
             {"sex": "female", "age_years": 25, "height_m": 1.65, "mass_kg": 60}],
    "boarding": {"kind": "dry"}, "uncertain": )" +
                           uncertain + "}";
  return std::get<scenario::ValidScenario>(scenario::validate_text(text, "s.json", folder));
}

double value(const study::Drawn& sample, const std::string& pointer) {
  for (const study::Setting& each : sample.settings)
    if (each.pointer == pointer) return std::get<double>(each.value);
  return std::numeric_limits<double>::quiet_NaN();
}

}  // namespace

TEST_CASE("a sample is the same in any order, and its text is the scenario that was drawn") {
  const Sampler sampler(full());
  for (const std::uint64_t k : {5, 0, 2}) {  // 3 draws an aid that no one has aboard
    const study::Drawn one = sampler.draw(11, k), again = Sampler(full()).draw(11, k);
    CHECK(sampler.text_of(one) == Sampler(full()).text_of(again));
    const auto direct = sampler.scenario_of(one);
    const auto read = scenario::validate_text(sampler.text_of(one), "s.json", folder);
    REQUIRE(std::holds_alternative<scenario::ValidScenario>(read));
    CHECK(std::get<scenario::ValidScenario>(read).scenario ==
          std::get<scenario::ValidScenario>(direct).scenario);
    CHECK_FALSE(std::get<scenario::ValidScenario>(direct).scenario.uncertain.has_value());
  }
  CHECK(sampler.text_of(sampler.draw(11, 0)) != sampler.text_of(sampler.draw(12, 0)));
}

TEST_CASE("an input more leaves the other draws as they were") {
  const Sampler one(with(R"({"inputs": {"/weather/rain_mm_h": {"kind": "uniform", "low": 0, "high": 5}}})"));
  const Sampler two(with(R"({"inputs": {"/weather/wind_speed_m_s": {"kind": "uniform", "low": 0, "high": 9},
                                        "/weather/rain_mm_h": {"kind": "uniform", "low": 0, "high": 5}}})"));
  CHECK(value(one.draw(1, 7), "/weather/rain_mm_h") == value(two.draw(1, 7), "/weather/rain_mm_h"));
}

TEST_CASE("nobody of an unknown crew is drawn leaner than the essential fat") {
  const Sampler sampler(with(R"({"crew_unknown": true})"));
  double leanest = 100;
  for (std::uint64_t k = 0; k < 2000; ++k)
    leanest = std::min(leanest, value(sampler.draw(1, k), "/crew/0/body_fat_pct"));
  CHECK(leanest > 3);
  CHECK(leanest < 8);  // the tail below the leanest athletes is there
}

// Correlation of normal scores 0.8; of n = 4000 its standard error is (1 - 0.64) / sqrt(4000) = 0.006.
TEST_CASE("inputs drawn together have the correlation that was asked for") {
  const Sampler sampler(with(R"({"inputs": {
      "/weather/air_temperature_degC": {"kind": "normal", "mean": 10, "sd": 2},
      "/weather/water_temperature_degC": {"kind": "normal", "mean": 12, "sd": 1}},
    "together": [{"first": "/weather/air_temperature_degC", "second": "/weather/water_temperature_degC",
                  "correlation": 0.8}]})"));
  constexpr int n = 4000;
  double product = 0, first = 0, second = 0;
  for (std::uint64_t k = 0; k < n; ++k) {
    const study::Drawn s = sampler.draw(3, k);
    const double a = (value(s, "/weather/air_temperature_degC") - 10) / 2,
                 b = value(s, "/weather/water_temperature_degC") - 12;
    product += a * b, first += a * a, second += b * b;
  }
  CHECK(std::abs(product / std::sqrt(first * second) - 0.8) < 5 * 0.006);
  CHECK(std::abs(first / n - 1) < 5 * std::sqrt(2.0 / n));
}

// Mean height of men 1.753 m, sd 0.074 (constants/people): standard error of 2000 is 0.0017.
TEST_CASE("unknown people come from the population of their sex, whatever was written") {
  const Sampler sampler(with(R"({"crew_unknown": true})"));
  CHECK(sampler.factors().size() == 6);
  double height = 0;
  int failed = 0;
  constexpr int n = 2000;
  for (std::uint64_t k = 0; k < n; ++k) {
    const study::Drawn s = sampler.draw(9, k);
    height += value(s, "/crew/0/height_m");
    failed += std::holds_alternative<scenario::Diagnostics>(sampler.scenario_of(s)) ? 1 : 0;
  }
  CHECK(std::abs(height / n - 1.753) < 5 * 0.0017);
  CHECK(failed < n / 50);
}

// A boy of eight on the growth charts: 1.28 m, 25.5 kg, so 15.56 kg/m2; stature spreads by 4.5 %, body mass
// index by a factor of 1.12. Standard errors of 2000: 0.0013 m, 0.0025 of the logarithm.
TEST_CASE("unknown children spread about the medians of their age") {
  const Sampler sampler(with(R"({"crew_unknown": true, "inputs": {
      "/crew/0/sex": {"kind": "discrete", "values": ["male"], "weights": [1]},
      "/crew/0/age_years": {"kind": "discrete", "values": [8], "weights": [1]}}})"));
  constexpr int n = 2000;
  double sum = 0, squares = 0, bmi = 0, bmi_squares = 0;
  for (std::uint64_t k = 0; k < n; ++k) {
    const study::Drawn s = sampler.draw(9, k);
    const double height = value(s, "/crew/0/height_m");
    const double index = std::log(value(s, "/crew/0/mass_kg") / (height * height));
    sum += height, squares += height * height, bmi += index, bmi_squares += index * index;
  }
  CHECK(std::abs(sum / n - 1.28) < 5 * 0.0013);
  CHECK(std::abs(std::sqrt(squares / n - sum / n * (sum / n)) - 0.0576) < 0.005);
  CHECK(std::abs(bmi / n - std::log(15.56)) < 5 * 0.0025);
  CHECK(std::abs(std::sqrt(bmi_squares / n - bmi / n * (bmi / n)) - std::log(1.12)) < 0.01);
}

TEST_CASE("a draw out of range fails and says why") {
  const Sampler sampler(
      with(R"({"inputs": {"/weather/wind_speed_m_s": {"kind": "normal", "mean": 60, "sd": 5}}})"));
  const auto fails = sampler.scenario_of(sampler.at({0.9}));
  REQUIRE(std::holds_alternative<scenario::Diagnostics>(fails));
  CHECK(std::get<scenario::Diagnostics>(fails).front().pointer == "/weather/wind_speed_m_s");
  CHECK(std::holds_alternative<scenario::ValidScenario>(sampler.scenario_of(sampler.at({0.4}))));
  // Half of it lies above 60 m/s.
  const auto cautions = study::range_cautions(
      with(R"({"inputs": {"/weather/wind_speed_m_s": {"kind": "normal", "mean": 60, "sd": 5}}})"));
  REQUIRE(cautions.size() == 1);
  CHECK(cautions.front().message.rfind("50 %", 0) == 0);
}

TEST_CASE("one alternative holds: in the water there is no raft") {
  const Sampler sampler(with(R"({"unmeasured": true, "alternatives": [
      {"name": "in the raft", "weight": 3},
      {"name": "in the water", "weight": 1, "set": {"/boarding/kind": "none", "/raft": null}}]})"));
  // Canopy, leakage, four errors of the model and the law of shivering; then the alternatives.
  REQUIRE(sampler.factors().size() == 8);
  for (std::size_t i = 0; i < 7; ++i) CHECK(sampler.factors()[i].kind == study::FactorKind::epistemic);
  CHECK(sampler.factors()[7].kind == study::FactorKind::aleatory);
  const auto water = sampler.at({0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.8});
  CHECK(water.alternative == "in the water");
  CHECK_FALSE(std::get<scenario::ValidScenario>(sampler.scenario_of(water)).scenario.raft.has_value());
  const auto raft = sampler.at({0.25, 0.5, 0.1, 0.2, 0.3, 0.4, 0.9, 0.7});
  const auto valid = std::get<scenario::ValidScenario>(sampler.scenario_of(raft));
  CHECK(valid.scenario.raft->canopy_heat_loss_position == 0.25);
  CHECK(valid.scenario.model.shivering_endurance == scenario::ShiveringEndurance::tires_late);
  CHECK(valid.scenario.model.heat_made_position == 0.1);
  CHECK(valid.scenario.model.tissue_conductance_position == 0.2);
  CHECK(valid.scenario.model.clothing_conductance_position == 0.3);
  CHECK(valid.scenario.model.water_loss_position == 0.4);
}

TEST_CASE("a failure happens with its probability, at a whole hour, or after the end not at all") {
  const Sampler sampler(with(R"({"events": [{"failure": "canopy_torn", "probability": 0.3,
      "at_h": {"kind": "uniform", "low": 0, "high": 48}}]})"));
  CHECK(sampler.at({0.31, 0.1}).failures.empty());
  REQUIRE(sampler.at({0.29, 0.1}).failures.size() == 1);
  CHECK(sampler.at({0.29, 0.1}).failures.front().at_h == 5);  // 4.8 h
  CHECK(sampler.at({0.29, 0.9}).failures.empty());            // 43.2 h of 24
}

TEST_CASE("a shared draw is the same for all it is for; rescue is drawn beside the scenario") {
  const Sampler sampler(with(R"({"groups": [{"name": "sleep",
      "pointers": ["/crew/0/hours_since_sleep_h", "/crew/1/hours_since_sleep_h"],
      "distribution": {"kind": "uniform", "low": 0, "high": 20}}],
      "rescue": {"kind": "fixed", "at_h": 30}})"));
  const study::Drawn s = sampler.draw(2, 2);
  CHECK(value(s, "/crew/0/hours_since_sleep_h") == value(s, "/crew/1/hours_since_sleep_h"));
  CHECK(s.rescue_h == 30);
}

TEST_CASE(
    "drawn weather: another seed for each sample, the same for both of a pair, fixed where it is stated") {
  const Sampler sampler(with(R"({"weather": true})", "variable"));
  const Sampler other(with(R"({"weather": true, "person_spread": true})", "variable"));
  std::set<double> seeds;
  for (std::uint64_t k = 0; k < 100; ++k) {
    const double seed = value(sampler.draw(3, k), "/weather/seed");
    CHECK(seed == std::floor(seed));
    CHECK(value(other.draw(3, k), "/weather/seed") == seed);
    CHECK(std::holds_alternative<scenario::ValidScenario>(sampler.scenario_of(sampler.draw(3, k))));
    seeds.insert(seed);
  }
  CHECK(seeds.size() == 100);
  const Sampler drawn(
      with(R"({"weather": true, "inputs": {"/weather/seed": {"kind": "discrete", "values": [4, 9]}}})",
           "variable"));
  CHECK(drawn.factors().size() == 1);
  CHECK(Sampler(with("{}", "variable")).factors().empty());
}

TEST_CASE("a raft that is drawn brings its own pack, unless the pack is drawn too or was chosen apart") {
  // offshore_4 usually carries iso_9650_more_than_24_h, coastal_6 iso_9650_less_than_24_h.
  const auto packs = [](const char* written, const std::string& uncertain) {
    auto text = with(uncertain);
    scenario::Node document = *text.document;
    scenario::put(document, "/stores/pack", std::string(written));
    const auto valid =
        std::get<scenario::ValidScenario>(scenario::validate_document(std::move(document), "s.json", folder));
    const Sampler sampler(valid);
    std::set<std::string> out;
    for (std::uint64_t k = 0; k < 16; ++k) {
      const auto sample = std::get<scenario::ValidScenario>(sampler.scenario_of(sampler.draw(1, k)));
      out.insert(sample.scenario.raft->kind + " " + sample.scenario.stores.pack);
    }
    return out;
  };
  using Set = std::set<std::string>;
  const std::string raft = R"("/raft/kind": {"kind": "discrete", "values": ["offshore_4", "coastal_6"]})";
  const std::string drawn = R"({"inputs": {)" + raft + "}}";
  CHECK(packs("iso_9650_more_than_24_h", drawn) ==
        Set{"offshore_4 iso_9650_more_than_24_h", "coastal_6 iso_9650_less_than_24_h"});
  CHECK(packs("solas_b", drawn) == Set{"offshore_4 solas_b", "coastal_6 solas_b"});
  CHECK(packs("iso_9650_more_than_24_h",
              R"({"inputs": {)" + raft +
                  R"(, "/stores/pack": {"kind": "discrete", "values": ["solas_b", "solas_b"]}}})") ==
        Set{"offshore_4 solas_b", "coastal_6 solas_b"});
  CHECK(packs("iso_9650_more_than_24_h",
              R"({"alternatives": [{"name": "a", "weight": 1, "set": {"/raft/kind": "coastal_6"}},
                  {"name": "b", "weight": 1, "set": {"/raft/kind": "offshore_8", "/stores/pack": "none"}}]})") ==
        Set{"coastal_6 iso_9650_less_than_24_h", "offshore_8 none"});
}

TEST_CASE("a raft that does not inflate takes its pack, its failures and what is used in it along") {
  const Sampler sampler(with(R"({"readiness": {"neglected": 1, "not_inflating": 1, "lamp_dead": 0,
      "tube_leaking": 0, "valve_lost": 0, "floor_failed": 0},
    "events": [{"failure": "canopy_torn", "probability": 1, "at_h": {"kind": "uniform", "low": 1, "high": 9}}]})"));
  const auto drawn = sampler.scenario_of(sampler.draw(1, 0));
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(drawn));
  const scenario::Scenario& s = std::get<scenario::ValidScenario>(drawn).scenario;
  CHECK_FALSE(s.raft.has_value());
  CHECK(s.boarding.kind == scenario::BoardingKind::none);
  CHECK(s.failures.empty());
}

TEST_CASE("what stands undated in a neglected raft is past its date, and what is dated keeps it") {
  for (const double neglected : {0.0, 1.0}) {
    scenario::Node document = *with(R"({"readiness": {"neglected": 0, "not_inflating": 0}})").document;
    REQUIRE(scenario::put(document, "/uncertain/readiness/neglected", neglected));
    REQUIRE(scenario::put(document, "/readiness/pack_expires", std::string("2040-01-31")));
    const auto read = scenario::validate_document(std::move(document), "s.json", folder);
    REQUIRE(std::holds_alternative<scenario::ValidScenario>(read));
    const Sampler sampler(std::get<scenario::ValidScenario>(read));
    const auto drawn = sampler.scenario_of(sampler.draw(1, 0));
    REQUIRE(std::holds_alternative<scenario::ValidScenario>(drawn));
    const auto& known = std::get<scenario::ValidScenario>(drawn).scenario.readiness;
    REQUIRE(known);
    CHECK(known->pack_expires == "2040-01-31");
    CHECK(known->signals_expire.has_value() == (neglected > 0));
    if (known->signals_expire) CHECK(*known->signals_expire == "2031-02-01");  // the start is 3 February
  }
}

TEST_CASE("failures of a neglected raft are those that it can have") {
  const char* all_fail = R"({"readiness": {"neglected": 1, "not_inflating": 0, "lamp_dead": 1,
      "tube_leaking": 1, "valve_lost": 1, "floor_failed": 1}})";
  const Sampler sampler(with(all_fail));  // an inflated floor, and no pack, so no lamp
  const auto drawn = sampler.scenario_of(sampler.draw(1, 0));
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(drawn));
  const auto& failures = std::get<scenario::ValidScenario>(drawn).scenario.failures;
  REQUIRE(failures.size() == 2);
  CHECK(failures[0].kind == scenario::FailureKind::tube_leaking);
  CHECK(failures[1].kind == scenario::FailureKind::floor_not_inflated);
}

// Quartiles of a lognormal factor lie at exp(-+0.674 sd): 0.845 and 1.184 for an sd of 0.25, 0.714 and 1.401
// for 0.5.
TEST_CASE("how much children shiver is drawn twice as wide as how much adults do") {
  const Sampler sampler(with(
      R"({"person_spread": true, "inputs": {"/crew/1/age_years": {"kind": "uniform", "low": 7, "high": 9}}})"));
  int adult = 0, child = 0;
  constexpr int drawn = 2000;
  for (std::uint64_t k = 0; k < drawn; ++k) {
    const study::Drawn one = sampler.draw(7, k);
    const auto within = [&](const char* pointer, double low, double high) {
      const double at = value(one, pointer);
      return at > low && at < high ? 1 : 0;
    };
    adult += within("/crew/0/shivering_drive_factor", 0.845, 1.184);
    child += within("/crew/1/shivering_drive_factor", 0.714, 1.401);
  }
  const double three_sd = 3 * std::sqrt(drawn * 0.25);
  CHECK(std::abs(adult - drawn / 2) < three_sd);
  CHECK(std::abs(child - drawn / 2) < three_sd);
}

// A spread of 0.5 has 1.4 % of its draws above 3, which no scenario may state: every future is one that runs.
TEST_CASE("how a person differs is drawn within what a scenario may state") {
  const Sampler sampler(with(
      R"({"person_spread": true, "inputs": {"/crew/1/age_years": {"kind": "uniform", "low": 12, "high": 14}}})"));
  double most = 0;
  for (std::uint64_t k = 0; k < 2000; ++k) {
    const study::Drawn one = sampler.draw(3, k);
    most = std::max(most, value(one, "/crew/1/shivering_drive_factor"));
    const auto made = sampler.scenario_of(one);
    if (const auto* wrong = std::get_if<scenario::Diagnostics>(&made))
      FAIL(scenario::to_string(wrong->front()));
  }
  CHECK(most > 2.5);
  CHECK(most <= 3);
}

// Median 1 and a spread of the logarithm that takes 30 to 90 min, told of swimmers, for two to three spreads.
TEST_CASE("people differ in for how long their arms swim") {
  const Sampler sampler(with(R"({"person_spread": true})"));
  constexpr int n = 2000;
  double sum = 0, squares = 0, both = 0;
  for (std::uint64_t k = 0; k < n; ++k) {
    const study::Drawn s = sampler.draw(11, k);
    const double one = std::log(value(s, "/crew/0/swim_endurance_factor")),
                 other = std::log(value(s, "/crew/1/swim_endurance_factor"));
    sum += one, squares += one * one, both += one * other;
  }
  const double spread = std::sqrt(squares / n);
  CHECK(std::abs(sum / n) < 5 * spread / std::sqrt(n));
  CHECK(spread > std::log(90 / 30.) / 4);
  CHECK(spread < std::log(90 / 30.) / 2);
  CHECK(std::abs(both / n) < 5 * spread * spread / std::sqrt(n));
}

TEST_CASE("a launch draws how the raft is reached, and nothing else changes") {
  const Sampler plain(with(R"({"person_spread": true})")),
      launched(with(R"({"person_spread": true, "launch": {"way": "by_hand", "steps_across": 0.5}})"));
  int wet = 0;
  for (std::uint64_t k = 0; k < 200; ++k) {
    const study::Drawn one = plain.draw(5, k), other = launched.draw(5, k);
    CHECK(value(one, "/crew/1/sweat_factor") == value(other, "/crew/1/sweat_factor"));
    REQUIRE(other.raft.launch.has_value());
    const auto drawn = launched.scenario_of(other);
    REQUIRE(std::holds_alternative<scenario::ValidScenario>(drawn));
    const scenario::Boarding& boarding = std::get<scenario::ValidScenario>(drawn).scenario.boarding;
    const bool swims = other.raft.launch->reached == study::Reached::wet;
    wet += swims ? 1 : 0;
    if (!swims) continue;
    CHECK(boarding.kind == scenario::BoardingKind::swim);
    CHECK(boarding.minutes_in_water == other.raft.launch->minutes);
    CHECK(boarding.wet_fraction == 1);
  }
  CHECK(std::abs(wet / 200.0 - 0.5) < 5 * std::sqrt(0.25 / 200));
}
