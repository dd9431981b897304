#include "bide/study/questions/unmeasured.hpp"

#include <doctest/doctest.h>

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

std::vector<study::Run> runs(const scenario::ValidScenario& scenario) {
  auto out = study::run_unmeasured(scenario);
  REQUIRE(std::holds_alternative<std::vector<study::Run>>(out));
  return std::get<std::vector<study::Run>>(std::move(out));
}

}  // namespace

TEST_CASE("both ends of the canopy and both laws of shivering are run, unless the file states them") {
  CHECK(runs(shipped()).size() == 4);
  CHECK(runs(shipped({{"/model/shivering_endurance", "tires"}})).size() == 2);
  CHECK(runs(shipped({{"/raft/canopy_heat_loss_position", 0.5}, {"/raft/leakage_position", 0.5}})).size() ==
        2);
  CHECK(runs(shipped({{"/model/shivering_endurance", "tires"},
                      {"/raft/canopy_heat_loss_position", 0.5},
                      {"/raft/leakage_position", 0.5}}))
            .empty());
}

TEST_CASE("the leaky end is the colder one inside") {
  const std::vector<study::Run> ends = runs(shipped({{"/model/shivering_endurance", "tires"}}));
  REQUIRE(ends.size() == 2);
  CHECK(ends[0].outcome.cabin.warmest_inside_degC->value > ends[1].outcome.cabin.warmest_inside_degC->value);
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
