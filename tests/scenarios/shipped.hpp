// The shipped scenarios: their files, their runs, and small readings of a run.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <string>
#include <variant>
#include <vector>

#include "bide/core/units.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/timeline/simulate.hpp"
#include "bide/weather/weather.hpp"

namespace bide::test {

using Json = nlohmann::ordered_json;

inline std::filesystem::path scenarios_folder() {
  return std::filesystem::path(BIDE_SOURCE_DIR) / "scenarios";
}

inline std::vector<std::filesystem::path> shipped_scenarios() {
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(scenarios_folder()))
    if (entry.path().extension() == ".json") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

inline Json shipped(const std::string& name) {
  std::ifstream in(scenarios_folder() / (name + ".json"));
  REQUIRE_MESSAGE(in.good(), name);
  return Json::parse(in);
}

inline scenario::ValidScenario valid(const Json& json) {
  const auto validated = scenario::validate_text(json.dump(), "changed.json", scenarios_folder());
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&validated))
    for (const auto& each : *wrong) FAIL_CHECK(scenario::to_string(each));
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(validated));
  return std::get<scenario::ValidScenario>(validated);
}

inline weather::Record loaded(const scenario::ValidScenario& scenario) {
  const auto record = weather::load(scenario);
  if (const auto* wrong = std::get_if<scenario::Diagnostics>(&record))
    for (const auto& each : *wrong) FAIL_CHECK(scenario::to_string(each));
  REQUIRE(std::holds_alternative<weather::Record>(record));
  return std::get<weather::Record>(record);
}

inline timeline::Timeline simulated(const scenario::ValidScenario& scenario,
                                    const timeline::Options& options = {}) {
  auto run = timeline::simulate(scenario, loaded(scenario), options);
  if (const auto* failure = std::get_if<timeline::Failure>(&run))
    FAIL_CHECK(failure->ledger << ": " << failure->message);
  REQUIRE(std::holds_alternative<timeline::Timeline>(run));
  return std::get<timeline::Timeline>(std::move(run));
}

inline timeline::Timeline simulated(const Json& json) {
  return simulated(valid(json));
}

// Mean of a column over output times within [from_h, to_h].
inline double mean_of(const timeline::Timeline& run, const std::vector<double>& column, double from_h,
                      double to_h) {
  double sum = 0, count = 0;
  for (std::size_t i = 0; i < column.size(); ++i)
    if (run.time_s[i] >= from_h * hour_s && run.time_s[i] <= to_h * hour_s) sum += column[i], count += 1;
  REQUIRE(count > 0);
  return sum / count;
}

inline std::size_t row_at(const timeline::Timeline& run, double h) {
  constexpr double near_s = 1;
  for (std::size_t i = 0; i < run.time_s.size(); ++i)
    if (std::abs(run.time_s[i] - h * hour_s) < near_s) return i;
  FAIL("no row at " << h << " h");
  return 0;
}

}  // namespace bide::test
