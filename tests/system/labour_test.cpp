// Who does the work of a raft, and how fast. One turn at bailing is 20 minutes at 150 W above rest; a check
// comes every 10 minutes.
#include <doctest/doctest.h>

#include <string>

#include "bide/system/events.hpp"
#include "support/runs.hpp"

using namespace bide;

namespace {

// Afloat with a thousand litres on the floor: more than one turn can bail.
struct Flooded {
  test::Run run;
  system::Forcings<double> forcings;
  system::System<double> system;
  std::vector<double> x;
  double litres;

  explicit Flooded(const std::string& crew)
      : run(test::load_run(R"({"format": "bide scenario 1", "start_time_utc": "2031-02-03T18:00:00Z",
          "duration_h": 24, "position": {"latitude_deg": 49, "longitude_deg": -21},
          "weather": {"kind": "constant", "air_temperature_degC": 15, "water_temperature_degC": 15,
            "wind_speed_m_s": 6},
          "raft": {"kind": "offshore_4"}, "boarding": {"kind": "dry"}, "stores": {"pack": "solas_b"},
          "crew": [)" + crew +
                           "]}")),
        forcings(run.weather),
        system(run.compiled, forcings),
        x(system.start()) {
    x[system::at::water_mass] = litres = 1000;
  }
  void apply(system::StopKind kind, double minute) {
    system::apply({minute * 60, kind, 1}, system, x, nullptr);
  }
  bool bailed() const { return x[system::at::water_mass] < litres; }
  // W above rest of whoever weighs so much.
  double labour_W(double mass_kg) const {
    for (std::size_t p = 0; p < run.compiled.persons.size(); ++p)
      if (run.compiled.persons[p].mass_kg == mass_kg) return system.held.persons[p].labour_W;
    return -1;
  }
};

const std::string adult = R"({"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 75})";
const std::string other = R"({"sex": "male", "age_years": 35, "height_m": 1.8, "mass_kg": 80})";
const std::string child = R"({"sex": "male", "age_years": 2, "height_m": 0.8, "mass_kg": 9})";
const std::string weak =
    R"({"sex": "female", "age_years": 75, "height_m": 1.6, "mass_kg": 60, "vo2max_mL_kg_min": 10})";

}  // namespace

// 150 W x 20 min by two until the next check in 10 min: 150 W each. Then nothing is left.
TEST_CASE("two who can share a turn at bailing") {
  Flooded raft(adult + "," + other);
  raft.apply(system::StopKind::bail, 20);
  raft.apply(system::StopKind::check, 20);
  CHECK(raft.bailed());
  CHECK(raft.labour_W(75) == doctest::Approx(150));
  CHECK(raft.labour_W(80) == doctest::Approx(150));
  raft.apply(system::StopKind::check, 30);
  CHECK(raft.labour_W(75) == doctest::Approx(0));
}

// 47 mL/(kg min) x 9 kg = 423 mL/min of oxygen; 21.168 kJ/L make 149 W of it, and a small child has far more
// than 2 W at rest.
TEST_CASE("a small child does not bail: the other does it all, and alone nobody does") {
  Flooded two(adult + "," + child);
  two.apply(system::StopKind::bail, 20);
  two.apply(system::StopKind::check, 20);
  CHECK(two.bailed());
  CHECK(two.labour_W(75) == doctest::Approx(150));
  CHECK(two.labour_W(9) == 0);
  Flooded alone(child);
  alone.apply(system::StopKind::bail, 20);
  alone.apply(system::StopKind::check, 20);
  CHECK_FALSE(alone.bailed());
  CHECK(alone.labour_W(9) == 0);
}

TEST_CASE("who is unfit for work or has useless hands does not bail, others do it for them") {
  for (const char* hurt : {R"("fit_for_work": false})", R"("hands": "useless"})"}) {
    const std::string one = other.substr(0, other.size() - 1) + ", " + hurt;
    Flooded two(adult + "," + one);
    two.apply(system::StopKind::bail, 20);
    two.apply(system::StopKind::check, 20);
    CHECK(two.bailed());
    CHECK(two.labour_W(75) == doctest::Approx(150));
    CHECK(two.labour_W(80) == 0);
    Flooded alone(one);
    alone.apply(system::StopKind::bail, 20);
    CHECK_FALSE(alone.bailed());
  }
  Flooded no_fine_work(other.substr(0, other.size() - 1) + R"(, "hands": "no_fine_work"})");
  no_fine_work.apply(system::StopKind::bail, 20);
  CHECK(no_fine_work.bailed());
}

TEST_CASE("who is not able leaves the work") {
  Flooded raft(adult + "," + other);
  for (auto& p : raft.system.held.persons) p.able = 0;
  raft.apply(system::StopKind::bail, 20);
  raft.apply(system::StopKind::check, 20);
  CHECK_FALSE(raft.bailed());
  CHECK(raft.labour_W(75) == 0);
}

// 180 kJ at 150 W are 20 min: two checks, and then nothing is left.
TEST_CASE("a work has its own pace, also for who could work faster") {
  Flooded raft(adult);
  raft.apply(system::StopKind::bail, 20);
  for (const double minute : {20, 30}) {
    raft.apply(system::StopKind::check, minute);
    CHECK(raft.labour_W(75) == doctest::Approx(150));
  }
  raft.apply(system::StopKind::check, 40);
  CHECK(raft.labour_W(75) == doctest::Approx(0));
}

// 10 mL/(kg min) x 60 kg = 0.6 L/min x 21.168 kJ/L = 211.68 W. For 20 min (log 5700 - log 20) / 3.1 = 0.7919
// of it: 167.6 W. Rest: 10 x 60 + 6.25 x 160 - 5 x 75 - 161 = 1,064 kcal/d = 51.525 W, awake 1.15
// times: 59.25 W. Above rest 108.4 W, for two checks; of 150 W that is 0.7225, and so is what she bails of a
// turn.
TEST_CASE("nobody works harder than they can keep up, and bails less for it") {
  Flooded raft(weak), fit(adult);
  raft.apply(system::StopKind::bail, 20);
  fit.apply(system::StopKind::bail, 20);
  const double litres = raft.litres - raft.x[system::at::water_mass],
               whole = fit.litres - fit.x[system::at::water_mass];
  CHECK(litres == doctest::Approx(0.7225 * whole).epsilon(1e-3));
  for (const double minute : {20, 30}) {
    raft.apply(system::StopKind::check, minute);
    CHECK(raft.labour_W(60) == doctest::Approx(108.4).epsilon(1e-3));
  }
  raft.apply(system::StopKind::check, 40);
  CHECK(raft.labour_W(60) == doctest::Approx(0).epsilon(1e-6));
}

// A turn takes 20 min. Half way through it half of the next one can be done, and after it the whole.
TEST_CASE("who has work in hand gives the less to the next, by the time that it takes") {
  Flooded raft(adult);
  const auto bailed_by = [&](double minute) {
    const double before = raft.x[system::at::water_mass];
    raft.apply(system::StopKind::bail, minute);
    return before - raft.x[system::at::water_mass];
  };
  const double whole = bailed_by(20);
  CHECK(bailed_by(20) == 0);
  raft.apply(system::StopKind::check, 20);  // 10 min of it are as good as done
  CHECK(bailed_by(25) == doctest::Approx(0.5 * whole).epsilon(1e-6));
  for (const double minute : {30, 40}) raft.apply(system::StopKind::check, minute);
  CHECK(bailed_by(50) == doctest::Approx(whole).epsilon(1e-6));
}

// Work that goes on for hours keeps nobody from an entrance.
TEST_CASE("who has work in hand still opens the entrances by day") {
  Flooded raft(weak);
  raft.apply(system::StopKind::bail, 20);
  raft.apply(system::StopKind::check, 20);
  REQUIRE(raft.system.held.persons[0].work_left_J > 1);
  raft.apply(system::StopKind::daylight, 21);  // index 1: by day
  const double by_day_m2 = raft.system.held.opening_m2;
  raft.system.held.opening_m2 = 0.5 * by_day_m2;
  raft.apply(system::StopKind::daylight, 22);
  CHECK(raft.system.held.opening_m2 == by_day_m2);
}

// Work begins at a check, and so do the short steps that follow it.
TEST_CASE("the check at which work begins is a hard time event, no other check is") {
  const Flooded raft(adult);
  double asked_s = -1;
  int hard_checks = 0;
  for (const system::ScheduledStop& stop : raft.run.compiled.structure.stops) {
    if (stop.kind == system::StopKind::bail) asked_s = stop.time_s;
    if (stop.kind != system::StopKind::check) continue;
    CAPTURE(stop.time_s);
    CHECK(stop.hard == (asked_s >= 0 && stop.time_s - asked_s < 600));
    hard_checks += stop.hard ? 1 : 0;
  }
  CHECK(hard_checks > 0);
}
