// Somebody lost in the first minutes in the water: dead from the start, and to the raft as if never there.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "bide/core/units.hpp"
#include "bide/timeline/simulate.hpp"
#include "support/runs.hpp"

using namespace bide;
using doctest::Approx;
using nlohmann::json;

namespace {

// Two people swim in cold water; the same water is shipped and aboard, whoever is lost.
json two() {
  json file = json::parse(test::cold_swim_text);
  file["boarding"]["water_shipped_L"] = 2;
  return file;
}

timeline::Timeline simulated(const json& file) {
  const test::Run run = test::load_run(file.dump());
  const auto result = timeline::simulate(run.scenario, run.weather);
  REQUIRE(std::holds_alternative<timeline::Timeline>(result));
  return std::get<timeline::Timeline>(result);
}

}  // namespace

TEST_CASE("who is lost is dead from the start, of that and nothing else; the others are not") {
  json file = two();
  file["crew"][0]["lost_in_first_minutes"] = true;
  const auto t = simulated(file);
  CHECK(t.fates[0].alive_until_s == 0);
  CHECK(t.fates[0].alive_cause == system::Limit::first_minutes);
  CHECK(t.fates[0].able_until_s == 0);
  CHECK(t.fates[0].able_cause == system::Limit::first_minutes);
  CHECK(!(t.fates[1].alive_until_s && *t.fates[1].alive_until_s < hour_s));
}

// The room of the cabin alone still counts them: air of 1 to 2 % less, which is renewed every few minutes.
TEST_CASE("to the raft whoever is lost is as if they had never been there") {
  json lost = two(), never = two();
  lost["crew"][0]["lost_in_first_minutes"] = true;
  never["crew"].erase(0);
  const auto a = simulated(lost), b = simulated(never), both = simulated(two());
  REQUIRE(a.time_s.size() == b.time_s.size());
  double most_K = 0, warmer_K = 0;
  for (std::size_t i = 0; i < a.time_s.size(); ++i) {
    most_K = std::max(most_K, std::abs(a.persons[1].core_degC[i] - b.persons[0].core_degC[i]));
    CHECK(a.inside_air_degC[i] == Approx(b.inside_air_degC[i]).epsilon(0.02));
    warmer_K = std::max(warmer_K, both.inside_air_degC[i] - a.inside_air_degC[i]);
  }
  CHECK(most_K < 0.05);
  CHECK(warmer_K > 0.2);  // a second body gives some 100 W
}
