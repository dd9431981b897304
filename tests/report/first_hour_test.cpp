#include "bide/report/run/first_hour.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "bide/scenario/patch.hpp"

using namespace bide;

namespace {

std::vector<report::Task> tasks(const char* name, double air_degC) {
  const std::string folder = BIDE_SOURCE_DIR "/scenarios";
  auto read = scenario::validate_file(folder + "/" + name);
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(read));
  scenario::Node document = *std::get<scenario::ValidScenario>(read).document;
  scenario::put(document, "/weather/air_temperature_degC", air_degC);
  if (scenario::member(&document, "raft") != nullptr)
    scenario::put(document, "/stores/pack", std::string("solas_a"));
  read = scenario::validate_document(document, name, folder);
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(read));
  return report::first_hour_tasks(std::get<scenario::ValidScenario>(read));
}

bool has(const std::vector<report::Task>& list, std::string_view name) {
  return std::any_of(list.begin(), list.end(), [&](const report::Task& each) { return each.name == name; });
}

}  // namespace

TEST_CASE("the first hour begins with the distress call, in a raft and without one") {
  CHECK(std::string_view(tasks("tropics_little_water.json", 27).front().name) == "distress call");
  CHECK(std::string_view(tasks("immersion_only.json", 10).front().name) == "distress call");
}

// Thermal protective aids are made for air up to 20 degC (LSA Code 2.5).
TEST_CASE("a protective aid is not among the tasks of a warm sea") {
  CHECK(has(tasks("cold_sea_wet_floor_flat.json", 5), "thermal protective aids"));
  CHECK_FALSE(has(tasks("tropics_little_water.json", 27), "thermal protective aids"));
}
