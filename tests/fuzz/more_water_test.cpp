// A litre more of drinking water never shortens anybody's stay: alone on any raft, from cool to hot, under
// every rule of rationing, from much too little water to far more than can be drunk.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "bide/core/random.hpp"
#include "bide/core/units.hpp"
#include "bide/timeline/simulate.hpp"
#include "bide/weather/weather.hpp"
#include "fuzz/generator.hpp"

using namespace bide;
using nlohmann::json;

namespace {

constexpr std::uint64_t seed = 16, number = 200;
constexpr double days = 14, about = 0.995;

struct Person {
  const char* sex;
  double age_years, height_m, mass_kg;
};
constexpr Person people[] = {{"male", 30, 1.78, 80},   {"female", 25, 1.65, 55}, {"male", 72, 1.72, 85},
                             {"female", 45, 1.60, 95}, {"male", 12, 1.49, 40.5}, {"female", 8, 1.28, 26},
                             {"male", 4, 1.03, 17}};

double drawn(std::uint64_t k, const char* name, double low, double high) {
  return low + (high - low) * uniform(seed, k, stream_of(name), 0);
}

// The raft, routine and model of a random scenario, under one person in weather in which water may decide.
json scenario_of(json file, std::uint64_t k) {
  const Person& who = people[k % std::size(people)];
  const double air = drawn(k, "air", 8, 36);
  file["duration_h"] = days * 24;
  file["output_interval_min"] = 60;
  file["crew"] = json::array({{{"sex", who.sex},
                               {"age_years", who.age_years},
                               {"height_m", who.height_m},
                               {"mass_kg", who.mass_kg}}});
  file["weather"] = {{"kind", "constant"},
                     {"air_temperature_degC", air},
                     {"water_temperature_degC", std::clamp(air + drawn(k, "sea", -3, 3), 6.0, 31.0)},
                     {"relative_humidity_pct", drawn(k, "humidity", 40, 95)},
                     {"wind_speed_m_s", drawn(k, "wind", 0, 12)},
                     {"cloud_cover_fraction", drawn(k, "cloud", 0, 1)}};
  file["boarding"] = {{"kind", "dry"}};
  file.erase("failures");
  file["stores"] = {{"pack", "none"}};
  if (k % 3 == 0) {
    file["rationing"] = {{"rule", "spread"}, {"spread_days", drawn(k, "days", 3, days)}};
  } else if (k % 3 == 1) {
    file["rationing"] = {{"rule", drawn(k, "rule", 0, 1) < 0.5 ? "fixed_per_day" : "none_first_day"},
                         {"water_L_per_day", drawn(k, "ration", 0.3, 4)}};
  } else {
    file["rationing"] = {{"rule", "by_thirst"}};
  }
  return file;
}

// Empty where the scenario is refused.
std::optional<timeline::Fate> fate_with(json file, double water_L) {
  file["stores"]["extra"] = json::array({{{"kind", "water_L"}, {"quantity", water_L}}});
  auto validated = scenario::validate_text(file.dump(), "drawn.json", ".");
  if (!std::holds_alternative<scenario::ValidScenario>(validated)) return std::nullopt;
  const auto& valid = std::get<scenario::ValidScenario>(validated);
  const auto weather = weather::load(valid);
  REQUIRE(std::holds_alternative<weather::Record>(weather));
  auto simulated = timeline::simulate(valid, std::get<weather::Record>(weather));
  if (!std::holds_alternative<timeline::Timeline>(simulated)) return std::nullopt;
  return std::get<timeline::Timeline>(simulated).fates.at(0);
}

double until_h(const std::optional<double>& at_s) {
  return at_s.value_or(days * day_s) / hour_s;
}

}  // namespace

// Within half a per cent: who drinks more sweats sooner, and loses more salt with it, which in great heat
// costs minutes in days.
TEST_CASE("a litre more never shortens anybody's stay") {
  int compared = 0, longer = 0;
  for (std::uint64_t k = 0; k < number; ++k) {
    const auto made = test::any_scenario(test::Mode::ordinary, seed, k);
    if (!made || !made->file.contains("raft")) continue;
    const json file = scenario_of(made->file, k);
    const double water_L = drawn(k, "water", 0, k % 2 == 0 ? 8 : 50);
    const auto less = fate_with(file, water_L), more = fate_with(file, water_L + 1);
    if (!less || !more) continue;
    ++compared;
    CAPTURE(k);
    CAPTURE(water_L);
    CAPTURE(file.dump());
    const double able_h = until_h(less->able_until_s), alive_h = until_h(less->alive_until_s);
    CHECK(until_h(more->able_until_s) >= about * able_h);
    CHECK(until_h(more->alive_until_s) >= about * alive_h);
    longer += until_h(more->alive_until_s) > alive_h + 1;
  }
  CHECK(compared > 100);
  CHECK(longer > 12);  // water decides in some
}
