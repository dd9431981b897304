// What the sun in the open costs in water, and what shade saves.
#include <string>

#include "scenarios/shipped.hpp"

using namespace bide;

namespace {

// A week in the trade winds with little water.
timeline::Timeline tropics(const char* canopy) {
  auto json = test::shipped("tropics_little_water");
  json["raft"]["canopy"] = canopy;
  return test::simulated(json);
}

// A man at rest in dry light clothes for three hours about noon, near the equator, on a wide raft in a light
// air: what he loses by skin and breath, kg/h.
double lost_kg_h(const char* canopy) {
  auto json = test::shipped("tropics_little_water");
  json["start_time_utc"] = "2031-04-10T11:00:00Z";
  json["duration_h"] = 6;
  json["position"] = {{"latitude_deg", 5}, {"longitude_deg", 0}};
  json["weather"]["air_temperature_degC"] = 29;
  json["weather"]["air_temperature_swing_K"] = 0;
  json["weather"]["wind_speed_m_s"] = 1.5;
  json["raft"] = {{"kind", "solas_20"}, {"canopy", canopy}, {"opening_area_m2", 10}};
  json["crew"] = test::Json::array(
      {{{"sex", "male"}, {"age_years", 28}, {"height_m", 1.75}, {"mass_kg", 72}, {"clothing", "tropical"}}});
  json["routine"] = {{"opening_fraction_day", 1}};
  const auto run = test::simulated(json);
  const auto& man = run.persons[0];
  const auto from = test::row_at(run, 2), to = test::row_at(run, 5);
  const double lacking_kg = (man.water_deficit_pct[to] - man.water_deficit_pct[from]) / pct * 72;
  return (lacking_kg - (man.urine_kg_total[to] - man.urine_kg_total[from])) / 3;
}

}  // namespace

TEST_CASE("in the trade winds a canopy saves water against sitting in the sun") {
  const auto shaded = tropics("one_skin"), open = tropics("none");
  for (std::size_t p = 0; p < shaded.persons.size(); ++p) {
    CAPTURE(p);
    CHECK(shaded.persons[p].water_deficit_pct.back() < open.persons[p].water_deficit_pct.back());
  }
}

// Five men lost 420 g an hour in the sun on the deck of a ship in the tropics, and 230 under an awning: 1.8
// (validation/losses).
TEST_CASE("in a light air the sun on dry clothes costs more water than shade") {
  const double sun = lost_kg_h("none"), shade = lost_kg_h("one_skin");
  CAPTURE(sun);
  CAPTURE(shade);
  CHECK(sun > 1.25 * shade);
}
