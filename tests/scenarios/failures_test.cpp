// What breaks, at 10 degC: how it shows in heat, water and hands, and failures that need a sea.
#include <algorithm>
#include <cmath>

#include "scenarios/shipped.hpp"

using namespace bide;

namespace {

// Four people in a raft for four at 10 degC, with 7 m/s of wind.
test::Json base() {
  auto json = test::shipped("four_in_a_right_sized_raft");
  json["duration_h"] = 12;
  json["weather"]["wave_height_m"] = 2;
  json["weather"]["wave_period_s"] = 6;
  return json;
}

timeline::Timeline with(test::Json failures) {
  auto json = base();
  json["failures"] = std::move(failures);
  return test::simulated(json);
}

test::Json one(const char* kind, double at_h = 6) {
  return test::Json::array({{{"kind", kind}, {"at_h", at_h}}});
}

// Heat made by all, W.
double heat_W(const timeline::Timeline& run, double at_h) {
  double sum = 0;
  for (const auto& person : run.persons) sum += person.metabolic_W[test::row_at(run, at_h)];
  return sum;
}

}  // namespace

TEST_CASE("a capsize soaks everybody, fills the floor and is paid for in heat") {
  auto json = base();
  json["routine"] = {{"bail_every_h", 0}, {"wring_clothes", false}};
  const auto sound = test::simulated(json);
  json["failures"] = one("capsize");
  const auto run = test::simulated(json);
  const auto row = test::row_at(run, 6);
  // 40 L on each square metre of the raft's floor stay inside, and nobody bails.
  const double area_m2 = scenario::find_raft("offshore_4")->floor_area_m2;
  CHECK(run.floor_water_L[row] - sound.floor_water_L[row] == doctest::Approx(40 * area_m2).epsilon(0.02));
  for (const auto& person : run.persons) CHECK(person.clothing_water_kg[row] > 2);
  CHECK(run.inside_air_degC[row] == doctest::Approx(10).epsilon(0.05));
  CHECK(heat_W(run, 8) > 1.3 * heat_W(sound, 8));
}

TEST_CASE("a torn canopy or an open entrance costs warmth, a flat floor heat") {
  const auto sound = test::simulated(base());
  for (const char* kind : {"canopy_torn", "closure_lost"}) {
    CAPTURE(kind);
    const auto run = with(one(kind));
    const auto row = test::row_at(run, 12);
    CHECK(run.inside_air_degC[row] < sound.inside_air_degC[row] - 1);
    CHECK(run.persons[0].finger_degC[row] < sound.persons[0].finger_degC[row] - 1);
    CHECK(heat_W(run, 12) > heat_W(sound, 12));
  }
  CHECK(heat_W(with(one("floor_not_inflated", 0)), 8) > 1.1 * heat_W(sound, 8));
}

TEST_CASE("a failure that needs a sea does not happen in a lower one") {
  const auto sound = test::simulated(base());
  for (const double from_m : {1.9, 2.1}) {
    auto failures = one("capsize", 5);  // bailing comes at even hours
    failures[0]["in_waves_from_m"] = from_m;
    const auto run = with(failures);
    const bool noted = std::any_of(run.events.begin(), run.events.end(),
                                   [](const auto& event) { return event.kind == system::NoteKind::failure; });
    CHECK(noted == (from_m < 2));
    const double colder_K = sound.persons[0].core_degC.back() - run.persons[0].core_degC.back();
    CHECK((std::abs(colder_K) < 0.01) == (from_m > 2));
    CHECK((run.floor_water_L[test::row_at(run, 5)] > 10) == (from_m < 2));
  }
}

TEST_CASE("lamps that fail have no hours left") {
  const auto run = with(one("lamp_dead", 1));
  CHECK(run.lamp_h.front() > 0);
  CHECK(run.lamp_h[test::row_at(run, 1)] == 0);
}

// A soft tube rides lower and ships three times the spray (judgement), and that is all it does here: in a
// moderate wind next to nothing, in a strong one water on the floor and in the clothes.
TEST_CASE("a leaking tube shows in a strong wind") {
  for (const double wind_m_s : {7.0, 15.0}) {
    auto json = base();
    json["weather"]["wind_speed_m_s"] = wind_m_s;
    json["routine"] = {{"bail_every_h", 0}};
    const auto sound = test::simulated(json);
    json["failures"] = one("tube_leaking", 1);
    const auto run = test::simulated(json);
    const auto row = test::row_at(run, 12);
    const double more_kg = run.persons[0].clothing_water_kg[row] - sound.persons[0].clothing_water_kg[row];
    const bool strong = wind_m_s > 10;
    CAPTURE(wind_m_s);
    CAPTURE(more_kg);
    CHECK((more_kg > 0.1) == strong);
    CHECK((heat_W(run, 12) > 1.03 * heat_W(sound, 12)) == strong);
  }
}
