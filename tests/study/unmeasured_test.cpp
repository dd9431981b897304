#include "bide/study/questions/unmeasured.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "bide/core/units.hpp"
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

study::RangeMembers members(const scenario::ValidScenario& scenario) {
  auto out = study::run_unmeasured(scenario);
  REQUIRE(std::holds_alternative<study::RangeMembers>(out));
  return std::get<study::RangeMembers>(std::move(out));
}

using Changes = std::vector<std::pair<const char*, scenario::Value>>;
const Changes everything_stated{
    {"/raft/canopy_heat_loss_position", 0.5},    {"/raft/leakage_position", 0.5},
    {"/model/shivering_endurance", "tires"},     {"/model/heat_made_position", 0.5},
    {"/model/tissue_conductance_position", 0.5}, {"/model/clothing_conductance_position", 0.5},
    {"/model/water_loss_position", 0.5}};

double earliest_h(const study::RangeMembers& all) {
  double out = std::numeric_limits<double>::infinity();
  for (const study::RangeMember& each : all)
    if (each.able.first_s) out = std::min(out, *each.able.first_s / hour_s);
  return out;
}

void check_same(const study::RangeMember& a, const study::RangeMember& b) {
  for (const study::CrewState state : {&outcome::Endurance::able, &outcome::Endurance::alive})
    for (const study::CrewTime which :
         {&outcome::CrewTimes::first_s, &outcome::CrewTimes::half_s, &outcome::CrewTimes::last_s})
      CHECK((a.*state).*which == (b.*state).*which);
  CHECK(a.next_margin_fraction == b.next_margin_fraction);
  CHECK(a.highest_co2_ppm == b.highest_co2_ppm);
}

}  // namespace

TEST_CASE("sixteen members are run, none where the file states everything") {
  CHECK(members(shipped()).size() == 16);
  CHECK(members(shipped(everything_stated)).empty());
}

TEST_CASE("the members are the same every time") {
  const auto one = members(shipped()), other = members(shipped());
  for (std::size_t i = 0; i < one.size(); ++i) check_same(one[i], other[i]);
}

// Lanes are shared by what is run together; a member is the same in any company. The crew of two rafts is one
// crew, so its first person is the earlier of both.
TEST_CASE("a member does not depend on what runs beside it") {
  const auto warm = shipped({{"/weather/air_temperature_degC", 9.0}, {"/duration_h", 72.0}}),
             cold = shipped();
  auto together = study::run_unmeasured({{&warm}, {&cold}, {&cold, &warm}});
  REQUIRE(std::holds_alternative<std::vector<study::RangeMembers>>(together));
  const auto& ran = std::get<std::vector<study::RangeMembers>>(together);
  REQUIRE(ran.size() == 3);
  const auto of_warm = members(warm), of_cold = members(cold);
  for (std::size_t k = 0; k < of_warm.size(); ++k) {
    check_same(ran[0][k], of_warm[k]);
    check_same(ran[1][k], of_cold[k]);
    CHECK(ran[2][k].able.persons == of_cold[k].able.persons + of_warm[k].able.persons);
    CHECK(ran[2][k].highest_co2_ppm == std::max(of_cold[k].highest_co2_ppm, of_warm[k].highest_co2_ppm));
  }
}

// What is stated is not moved, and the rest stands where it stood.
TEST_CASE("a member stands at the same places whatever the file states of the others") {
  using Place = std::pair<const char*, double>;
  // Member 0 is at 1/17 of canopy heat loss and 3/17 of leakage, and so on by the multipliers of the lattice.
  const Place first[] = {
      {"/raft/canopy_heat_loss_position", 1.0 / 17},      {"/raft/leakage_position", 3.0 / 17},
      {"/model/heat_made_position", 11.0 / 17},           {"/model/tissue_conductance_position", 7.0 / 17},
      {"/model/clothing_conductance_position", 2.0 / 17}, {"/model/water_loss_position", 9.0 / 17}};
  const auto open = members(shipped()).front();
  for (const auto& [pointer, place] : first) check_same(members(shipped({{pointer, place}})).front(), open);
}

TEST_CASE("the model's own error widens the range") {
  Changes canopy_open(everything_stated.begin() + 2, everything_stated.end());
  canopy_open.emplace_back("/duration_h", 72.0);
  const auto canopy = members(shipped(canopy_open)), all = members(shipped({{"/duration_h", 72.0}}));
  CHECK(earliest_h(all) < earliest_h(canopy));
}

// 30 to 90 min are told of swimmers in 10 to 14 degC (Ducharme & Lounsbury 2007; Tipton 1999).
TEST_CASE("who has no lifejacket in cold water gets a range of minutes, and that has a name") {
  const Changes overboard{{"/boarding/kind", "none"},
                          {"/raft", std::monostate()},
                          {"/boarding/water_shipped_L", std::monostate()},
                          {"/boarding/wet_fraction", std::monostate()},
                          {"/boarding/minutes_in_water", std::monostate()},
                          {"/stores", std::monostate()},
                          {"/weather/water_temperature_degC", 12.0}};
  Changes without = overboard, stated = overboard;
  without.emplace_back("/crew/0/lifejacket", false);
  stated = without;
  stated.emplace_back("/crew/0/swim_endurance_factor", 1.0);
  const auto names = [](const scenario::ValidScenario& s) {
    const auto all = study::unmeasured_of(s);
    return std::count(all.begin(), all.end(), study::Unmeasured::swimming);
  };
  CHECK(names(shipped()) == 0);
  CHECK(names(shipped(overboard)) == 0);
  CHECK(names(shipped(stated)) == 0);
  CHECK(names(shipped(without)) == 1);
  double earliest_min = std::numeric_limits<double>::infinity(), latest_min = 0;
  for (const study::RangeMember& each : members(shipped(without))) {
    REQUIRE(each.alive.first_s);
    earliest_min = std::min(earliest_min, *each.alive.first_s / minute_s);
    latest_min = std::max(latest_min, *each.alive.first_s / minute_s);
  }
  CHECK(earliest_min < 30);
  CHECK(earliest_min > 15);
  CHECK(latest_min > 75);
  CHECK(latest_min < 120);
}

TEST_CASE("how long a run is followed does not change what happens first") {
  const double three_days = earliest_h(members(shipped({{"/duration_h", 72.0}})));
  const double six_days = earliest_h(members(shipped({{"/duration_h", 144.0}})));
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
