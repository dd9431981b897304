// What a run reports of people and what its own events say are one story.
//
// Conditions are read aboard at checks, every ten minutes and at the end; reported times are located inside
// steps. So the event of a death follows the time reported for it by at most the interval of checks, and at
// the first check after "able until" the person is not able.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <string>
#include <variant>

#include "bide/constants/routine.hpp"
#include "bide/core/units.hpp"
#include "bide/timeline/simulate.hpp"
#include "support/runs.hpp"

using namespace bide;
using Kind = system::NoteKind;

namespace {

timeline::Timeline run_of(const std::string& text) {
  const test::Run run = test::load_run(text);
  return std::get<timeline::Timeline>(timeline::simulate(run.scenario, run.weather));
}

// A little off either way by rounding of times.
constexpr double same_s = 1e-6;

// Whoever is unable by the events for longer than a lapse may last is not reported able beyond that.
void check_spells(const timeline::Timeline& t, int person, const timeline::Fate& fate) {
  const double longest_s = constants::lapse_s + constants::check_interval_s;
  std::optional<double> since_s;
  const auto close = [&](double at_s) {
    if (since_s && at_s - *since_s > longest_s + same_s) {
      REQUIRE(fate.able_until_s);
      CHECK(*fate.able_until_s <= *since_s + same_s);
    }
    since_s.reset();
  };
  for (const timeline::Event& event : t.events) {
    if (event.person != person) continue;
    if (event.kind == Kind::unable && !since_s) since_s = event.time_s;
    if (event.kind == Kind::able_again || event.kind == Kind::died) close(event.time_s);
  }
  close(t.horizon_s);
}

void check_agreement(const timeline::Timeline& t) {
  const double interval_s = constants::check_interval_s.value;
  for (std::size_t p = 0; p < t.fates.size(); ++p) {
    CAPTURE(p);
    const timeline::Fate& fate = t.fates[p];
    std::optional<double> died_s;
    bool able = true;
    for (const timeline::Event& event : t.events) {
      if (event.person != static_cast<int>(p)) continue;
      if (event.kind == Kind::died) died_s = event.time_s;
      if (fate.able_until_s && event.time_s > *fate.able_until_s + interval_s + same_s) continue;
      if (event.kind == Kind::unable || event.kind == Kind::died) able = false;
      if (event.kind == Kind::able_again) able = true;
    }
    CHECK(died_s.has_value() == fate.alive_until_s.has_value());
    if (died_s && fate.alive_until_s) {
      CHECK(*died_s >= *fate.alive_until_s - same_s);
      CHECK(*died_s <= *fate.alive_until_s + interval_s + same_s);
    }
    if (fate.able_until_s && *fate.able_until_s + interval_s <= t.horizon_s) CHECK_FALSE(able);
    check_spells(t, static_cast<int>(p), fate);
  }
}

// Numbers for scenarios: nothing rests on their quality.
struct Dice {
  unsigned state;
  double between(double low, double high) {
    state = state * 1664525u + 1013904223u;
    return low + (high - low) * (state >> 8) / 16777216.0;
  }
  bool coin() { return between(0, 1) < 0.5; }
};

std::string random_scenario(unsigned seed) {
  Dice d{seed * 7919u + 1u};
  const bool raft = d.between(0, 1) < 0.7, swim = d.coin();
  std::string crew;
  for (int p = 0; p < 2; ++p) {
    const double height_m = d.between(1.5, 1.9), index = d.between(17, 32);
    crew += fmt::format(
        R"({}{{"sex": "{}", "age_years": {:.0f}, "height_m": {:.2f}, "mass_kg": {:.1f}, "body_fat_pct": {:.1f},
             "lifejacket": {}, "core_limit_shift_K": {:.2f}}})",
        p > 0 ? "," : "", d.coin() ? "male" : "female", d.between(20, 60), height_m,
        index * height_m * height_m, d.between(3, 30), d.coin(), d.between(-1, 1));
  }
  const bool hot = d.between(0, 1) < 0.4;
  return fmt::format(
      R"({{"format": "bide scenario 1", "start_time_utc": "2031-02-03T18:00:00Z", "duration_h": {:.3f},
      "position": {{"latitude_deg": 30, "longitude_deg": -21}},
      "weather": {{"kind": "constant", "air_temperature_degC": {:.1f}, "water_temperature_degC": {:.1f},
        "wind_speed_m_s": {:.1f}}},
      {}"crew": [{}], "boarding": {{"kind": "{}"{}}}, "stores": {{"pack": "none"}},
      "limits": {{"lethal_water_deficit_pct": {:.1f}, "lethal_core_low_degC": {:.1f}}}}})",
      d.between(5, 120), hot ? d.between(28, 42) : d.between(0, 15),
      hot ? d.between(24, 31) : d.between(1, 15), d.between(1, 18),
      raft ? R"("raft": {"kind": "offshore_4"}, )" : "", crew,
      !raft  ? "none"
      : swim ? "swim"
             : "dry",
      raft && swim ? fmt::format(R"(, "minutes_in_water": {:.1f})", d.between(3, 200)) : "",
      d.between(11, 20), d.between(22, 28));
}

}  // namespace

TEST_CASE("events and reported times agree on random scenarios") {
  int dead = 0, unable = 0;
  for (unsigned seed = 0; seed < 60; ++seed) {
    const std::string text = random_scenario(seed);
    CAPTURE(text);
    const timeline::Timeline t = run_of(text);
    check_agreement(t);
    for (const timeline::Fate& fate : t.fates) {
      dead += fate.alive_until_s.has_value();
      unable += fate.able_until_s.has_value();
    }
  }
  // Of 120 people enough die, and enough do not, for the test to mean something.
  CHECK(dead > 20);
  CHECK(unable > dead);
  CHECK(unable < 120);
}

// The core passes its limit first, water loss passes its own meanwhile, and the core comes back.
TEST_CASE("a limit passed while another is open does not hide when ability ended") {
  const timeline::Timeline t = run_of(
      R"({"format": "bide scenario 1", "start_time_utc": "2031-10-14T20:00:00Z", "duration_h": 96,
      "position": {"latitude_deg": 46, "longitude_deg": -20},
      "weather": {"kind": "constant", "air_temperature_degC": 38, "water_temperature_degC": 31,
        "wind_speed_m_s": 7, "relative_humidity_pct": 80, "cloud_cover_fraction": 0.8},
      "raft": {"kind": "offshore_4"},
      "crew": [{"sex": "male", "age_years": 44, "height_m": 1.8, "mass_kg": 84, "clothing": "wet_weather"},
        {"sex": "female", "age_years": 41, "height_m": 1.68, "mass_kg": 66, "clothing": "wet_weather"},
        {"sex": "male", "age_years": 29, "height_m": 1.76, "mass_kg": 73, "clothing": "wet_weather"},
        {"sex": "female", "age_years": 33, "height_m": 1.7, "mass_kg": 62, "clothing": "wet_weather"}],
      "boarding": {"kind": "dry"}, "stores": {"pack": "iso_9650_more_than_24_h"}})");
  check_agreement(t);
}

// Without food the very lean use up their fat: half of what they had where that is less than what the lean
// man of Elia 1992 had left, 1 kg.
TEST_CASE("the very lean die of hunger, by their events and by the reported time") {
  for (const double mass_kg : {30.0, 50.0}) {
    CAPTURE(mass_kg);
    const timeline::Timeline t = run_of(fmt::format(
        R"({{"format": "bide scenario 1", "start_time_utc": "2031-02-03T18:00:00Z", "duration_h": 240,
        "position": {{"latitude_deg": 10, "longitude_deg": -21}},
        "weather": {{"kind": "constant", "air_temperature_degC": 26, "water_temperature_degC": 26,
          "wind_speed_m_s": 4}},
        "raft": {{"kind": "offshore_4"}},
        "crew": [{{"sex": "male", "age_years": {}, "height_m": {}, "mass_kg": {}, "body_fat_pct": 3}}],
        "boarding": {{"kind": "dry"}},
        "stores": {{"pack": "none", "extra": [{{"kind": "water_L", "quantity": 80}}]}},
        "rationing": {{"rule": "by_thirst"}}}})",
        mass_kg < 40 ? 10 : 20, mass_kg < 40 ? 1.38 : 1.7, mass_kg));
    check_agreement(t);
    REQUIRE(t.fates[0].alive_until_s);
    CHECK(t.fates[0].alive_cause == system::Limit::lethal_fat);
    const double start_kg = 0.03 * mass_kg;
    std::size_t row = 0;
    while (t.time_s[row] < *t.fates[0].alive_until_s) ++row;
    CHECK(t.persons[0].fat_kg[row] == doctest::Approx(0.5 * start_kg).epsilon(0.01));
  }
}
