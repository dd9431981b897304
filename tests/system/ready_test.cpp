// What is refused before a run begins, by its place in the file. The messages on a terminal are in
// tests/bad_scenarios/not_ready/.
#include "bide/system/ready.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "bide/core/time_utc.hpp"
#include "support/runs.hpp"

using namespace bide;
using nlohmann::json;

namespace {

scenario::Diagnostics refusals(const json& file, const std::filesystem::path& folder = ".") {
  auto validated = scenario::validate_text(file.dump(), "s.json", folder);
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(validated));
  const auto& valid = std::get<scenario::ValidScenario>(validated);
  auto loaded = weather::load(valid);
  REQUIRE(std::holds_alternative<weather::Record>(loaded));
  auto ready = system::make_ready(valid, std::get<weather::Record>(loaded));
  if (auto* wrong = std::get_if<scenario::Diagnostics>(&ready)) return *wrong;
  return {};
}

// A canopy of 0.95 m over tubes of 0.25 m on 1.488 m2: a cylinder of 0.5 m and two thirds of 0.45 m,
// 1.488 (0.5 + 0.3) = 1.190 m3.
json small_raft(int people, double mass_kg) {
  json file = json::parse(test::minimal_text);
  file["raft"].update({{"floor_area_m2", 1.488}, {"canopy_height_m", 0.95}, {"tube_diameter_m", 0.25}});
  file["crew"][0]["mass_kg"] = mass_kg;
  for (int i = 1; i < people; ++i) file["crew"].push_back(file["crew"][0]);
  return file;
}

}  // namespace

TEST_CASE("people may fill the cabin nearly, not wholly") {
  CHECK(refusals(small_raft(10, 118)).empty());
  const auto wrong = refusals(small_raft(10, 120));
  REQUIRE(wrong.size() == 1);
  CHECK(to_string(wrong[0]) ==
        "s.json: /crew: found 10 people of 1.2 m3 together in a cabin of 1.19 m3; allowed fewer, or a larger "
        "raft, so that air is left");
}

TEST_CASE("whoever is dead at the start is refused, each in their place") {
  json file = json::parse(test::minimal_text);
  file["limits"] = {{"lethal_water_deficit_pct", 6}, {"able_water_deficit_pct", 3}};
  for (const double deficit_pct : {8.0, 5.9, 6.1}) {
    file["crew"].push_back(file["crew"][0]);
    file["crew"].back()["water_deficit_pct"] = deficit_pct;
  }
  const auto wrong = refusals(file);
  REQUIRE(wrong.size() == 2);
  CHECK(wrong[0].pointer == "/crew/1");
  CHECK(wrong[1].pointer == "/crew/3");
}

// A row a second over three days: 259,200 rows.
TEST_CASE("a plan of more time events than a run may have is refused") {
  const auto folder = std::filesystem::temp_directory_path() / "bide_ready_test";
  std::filesystem::create_directories(folder);
  json file = json::parse(test::minimal_text);
  file["duration_h"] = 72;
  file["weather"] = {{"kind", "csv"}, {"file", "rows.csv"}};
  const double start_s = *parse_time_utc("2031-02-03T18:00:00Z");
  for (const int apart_s : {1, 2}) {
    std::ofstream rows(folder / "rows.csv");
    rows << "time_utc,air_temperature_degC,water_temperature_degC,relative_humidity_pct,wind_speed_m_s\n";
    for (int s = 0; s <= 72 * 3600; s += apart_s) rows << format_time_utc(start_s + s) << ",10,11,80,5\n";
    rows.close();
    const auto wrong = refusals(file, folder);
    CHECK(wrong.size() == (apart_s == 1 ? 1 : 0));
    if (!wrong.empty()) CHECK(wrong[0].pointer == "/duration_h");
  }
  std::filesystem::remove_all(folder);
}
