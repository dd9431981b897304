// Gloves and boots: more of them never leaves fingers or feet colder, dry or soaked.
#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "bide/timeline/simulate.hpp"
#include "support/runs.hpp"

using namespace bide;

namespace {

constexpr double same_K = 0.02;  // what the step leaves unsure

timeline::Timeline run_with(double air_degC, const std::string& clothing, int wet, const std::string& worn) {
  const std::string air = std::to_string(air_degC);
  const test::Run run = test::load_run(
      R"({"format": "bide scenario 1", "start_time_utc": "2031-02-03T18:00:00Z", "duration_h": 8,
      "position": {"latitude_deg": 49, "longitude_deg": -21},
      "weather": {"kind": "constant", "air_temperature_degC": )" +
      air + R"(, "water_temperature_degC": )" + air + R"(, "wind_speed_m_s": 6, "wave_height_m": 0.5},
      "raft": {"kind": "offshore_4"},
      "boarding": {"kind": "dry", "water_shipped_L": 0, "wet_fraction": )" +
      std::to_string(wet) + R"(},
      "crew": [{"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 75, "clothing": ")" +
      clothing + "\"" + worn + "}]}");
  return std::get<timeline::Timeline>(timeline::simulate(run.scenario, run.weather));
}

void never_colder(const char* field, std::vector<double> timeline::PersonSeries::*values,
                  const std::vector<std::string>& in_turn, bool soaked_over_bare) {
  for (const double air : {0.0, 7.0, 15.0})
    for (const std::string clothing : {"shorts", "temperate_sailing", "offshore_cold"})
      for (const int wet : {0, 1}) {
        if (wet == 1 && clothing == "shorts" && !soaked_over_bare) continue;
        std::vector<double> before;
        for (const std::string& key : in_turn) {
          CAPTURE(air);
          CAPTURE(clothing);
          CAPTURE(wet);
          CAPTURE(key);
          const std::vector<double> now =
              run_with(air, clothing, wet, std::string(", \"") + field + "\": \"" + key + "\"").persons[0].*
              values;
          for (std::size_t i = 0; i < before.size(); ++i) CHECK(now[i] > before[i] - same_K);
          before = now;
        }
      }
}

}  // namespace

TEST_CASE("more glove is never a colder finger") {
  never_colder("gloves", &timeline::PersonSeries::finger_degC,
               {"none", "gloves_thin", "gloves_insulated", "mittens"}, true);
}

// Not said of soaked boots on bare feet, which dry in an hour: what evaporates from the boots costs them up
// to 1.2 K.
TEST_CASE("more boot is never a colder foot") {
  never_colder("boots", &timeline::PersonSeries::foot_skin_degC, {"none", "boots_rubber", "boots_insulated"},
               false);
}

TEST_CASE("gloves warm bare fingers, and none are none") {
  const auto bare = run_with(5, "temperate_sailing", 0, ""),
             none = run_with(5, "temperate_sailing", 0, R"(, "gloves": "none", "boots": "none")"),
             gloved = run_with(5, "temperate_sailing", 0, R"(, "gloves": "mittens")");
  CHECK(none.persons[0].finger_degC == bare.persons[0].finger_degC);
  CHECK(gloved.persons[0].finger_degC.back() > bare.persons[0].finger_degC.back() + 1);
}

// Offshore clothes have gloves of 0.1171 m2 K/W: thinner ones are not worn in their place.
TEST_CASE("what is thinner than the clothing's own changes nothing") {
  const auto own = run_with(5, "offshore_cold", 0, ""),
             thin = run_with(5, "offshore_cold", 0, R"(, "gloves": "gloves_thin")");
  CHECK(own.persons[0].finger_degC == thin.persons[0].finger_degC);
}
