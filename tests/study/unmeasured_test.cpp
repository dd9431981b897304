#include "bide/study/questions/unmeasured.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "bide/scenario/patch.hpp"

using namespace bide;

namespace {

scenario::ValidScenario shipped(const std::vector<std::pair<const char*, scenario::Value>>& changes = {}) {
  const std::string folder = BIDE_SOURCE_DIR "/scenarios";
  scenario::Validated read = scenario::validate_file(folder + "/cold_sea_wet_floor_flat.json");
  scenario::Node document = *std::get<scenario::ValidScenario>(read).document;
  REQUIRE(scenario::put(document, "/duration_h", 6.0));
  for (const auto& [pointer, value] : changes) REQUIRE(scenario::put(document, pointer, value));
  read = scenario::validate_document(document, "changed", folder);
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(read));
  return std::get<scenario::ValidScenario>(read);
}

std::vector<study::Future> members(const scenario::ValidScenario& scenario) {
  auto out = study::run_unmeasured(scenario);
  REQUIRE(std::holds_alternative<std::vector<study::Future>>(out));
  return std::get<std::vector<study::Future>>(std::move(out));
}

using Changes = std::vector<std::pair<const char*, scenario::Value>>;
const Changes everything_stated{
    {"/raft/canopy_heat_loss_position", 0.5},    {"/raft/leakage_position", 0.5},
    {"/model/shivering_endurance", "tires"},     {"/model/heat_made_position", 0.5},
    {"/model/tissue_conductance_position", 0.5}, {"/model/clothing_conductance_position", 0.5},
    {"/model/water_loss_position", 0.5}};

float earliest_h(const std::vector<study::Future>& all) {
  float out = INFINITY;
  for (const study::Future& each : all) out = std::min(out, each.able_h[study::first_person]);
  return out;
}

}  // namespace

TEST_CASE("sixteen members are run, none where the file states everything") {
  CHECK(members(shipped()).size() == 16);
  CHECK(members(shipped(everything_stated)).empty());
}

TEST_CASE("the members are the same every time") {
  const auto one = members(shipped()), other = members(shipped());
  for (std::size_t i = 0; i < one.size(); ++i) CHECK(one[i].able_h == other[i].able_h);
}

TEST_CASE("the model's own error widens the range") {
  Changes canopy_open(everything_stated.begin() + 2, everything_stated.end());
  canopy_open.emplace_back("/duration_h", 72.0);
  const auto canopy = members(shipped(canopy_open)), all = members(shipped({{"/duration_h", 72.0}}));
  CHECK(earliest_h(all) < earliest_h(canopy));
}

TEST_CASE("how long a run is followed does not change what happens first") {
  const double three_days = static_cast<double>(earliest_h(members(shipped({{"/duration_h", 72.0}}))));
  const double six_days = static_cast<double>(earliest_h(members(shipped({{"/duration_h", 144.0}}))));
  REQUIRE(std::isfinite(three_days));
  CHECK(six_days == doctest::Approx(three_days).epsilon(0.01));
}

TEST_CASE("the earliest and the latest of times, some of them beyond the horizon") {
  const study::TimeRange reached = study::range_of({{30.0}, {10.0}, {20.0}});
  CHECK(reached.earliest_s == 10.0);
  CHECK(reached.latest_s == 30.0);
  const study::TimeRange partly = study::range_of({{30.0}, std::nullopt});
  CHECK(partly.earliest_s == 30.0);
  CHECK_FALSE(partly.latest_s);
  CHECK_FALSE(study::range_of({std::nullopt}).earliest_s);
}
