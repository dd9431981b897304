// The list for the first hour names what the hurt need, and only where somebody is hurt.
#include "bide/report/run/first_hour.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "support/runs.hpp"

using namespace bide;

namespace {

std::vector<std::string> tasks_with(const std::string& more) {
  const test::Run run = test::load_run(
      R"({"format": "bide scenario 1", "start_time_utc": "2031-02-03T18:00:00Z", "duration_h": 24,
      "position": {"latitude_deg": 49, "longitude_deg": -21}, "weather": {"kind": "constant",
      "air_temperature_degC": 15, "water_temperature_degC": 15, "wind_speed_m_s": 6},
      "raft": {"kind": "offshore_4"}, "boarding": {"kind": "dry"},
      "crew": [{"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 75)" +
      more + "}]}");
  std::vector<std::string> out;
  for (const report::Task& task : report::first_hour_tasks(run.scenario)) out.emplace_back(task.name);
  return out;
}

bool has(const std::vector<std::string>& names, const char* name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

}  // namespace

TEST_CASE("the first hour names what the hurt need, and only then") {
  struct Pair {
    const char *more, *task;
  };
  for (const Pair& each : {Pair{R"(, "blood_loss_pct": 10)", "press on wounds"},
                           {R"(, "burned_pct": 5)", "cover burns"},
                           {R"(, "fit_for_work": false)", "splint fractures"},
                           {R"(, "hands": "no_fine_work")", "stand in for hurt hands"}}) {
    CAPTURE(each.task);
    CHECK(has(tasks_with(each.more), each.task));
    CHECK_FALSE(has(tasks_with(""), each.task));
  }
}
