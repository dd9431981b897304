// What a scenario says of one person beside the average: factors of heat and sweat, and own limits of the
// cold. Expected: the average times the factor, by definition of the fields.
#include <doctest/doctest.h>

#include <filesystem>

#include "bide/body/build.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/system/limits.hpp"

using namespace bide;
using doctest::Approx;

namespace {

body::Build<double> build(const std::string& fields) {
  const std::string text = R"({"format": "bide scenario 1", "start_time_utc": "2031-02-03T18:00:00Z",
    "duration_h": 24, "position": {"latitude_deg": 49, "longitude_deg": -21},
    "weather": {"kind": "constant", "air_temperature_degC": 10, "water_temperature_degC": 11,
                "wind_speed_m_s": 8},
    "raft": {"kind": "offshore_4"}, "boarding": {"kind": "dry"},
    "crew": [{"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 75)" +
                           fields + "}]}";
  const auto valid = std::get<scenario::ValidScenario>(scenario::validate_text(text, "s.json", {}));
  return body::make_build(valid.scenario.crew[0], *valid.ensembles[0]);
}

}  // namespace

TEST_CASE("factors of one person multiply the average") {
  const auto average = build("");
  const auto b = build(
      R"(, "shivering_drive_factor": 1.2, "shivering_ceiling_factor": 0.8, "resting_metabolism_factor": 1.1,
          "sweat_factor": 0.7)");
  CHECK(b.shivering_factor == Approx(1.2 * average.shivering_factor));
  CHECK(b.shivering_ceiling_W == Approx(0.8 * average.shivering_ceiling_W));
  CHECK(b.basal_total_W == Approx(1.1 * average.basal_total_W));
  CHECK(b.basal_W[body::head][body::core] == Approx(1.1 * average.basal_W[body::head][body::core]));
  CHECK(b.finger_basal_W == Approx(1.1 * average.finger_basal_W));
  CHECK(b.sweat_factor == Approx(0.7 * average.sweat_factor));
}

TEST_CASE("a shift moves one person's limits of the cold and no other") {
  system::Levels<double> common{};
  common[system::Limit::able_core_low] = 34, common[system::Limit::unconscious_core] = 30;
  common[system::Limit::lethal_core_low] = 24, common[system::Limit::able_core_high] = 39;
  const auto own = system::levels_of(common, build(R"(, "core_limit_shift_K": -1.5)"));
  CHECK(own[system::Limit::able_core_low] == Approx(32.5));
  CHECK(own[system::Limit::unconscious_core] == Approx(28.5));
  CHECK(own[system::Limit::lethal_core_low] == Approx(22.5));
  CHECK(own[system::Limit::able_core_high] == 39);
}
