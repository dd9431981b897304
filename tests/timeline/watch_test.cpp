// Crossings and fates from made-up states: what counts is when core temperature or water passes a level.
#include "bide/timeline/watch.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "bide/constants/routine.hpp"
#include "bide/core/units.hpp"
#include "bide/system/readings.hpp"
#include "support/runs.hpp"

using namespace bide;
using doctest::Approx;

namespace {

// Two people without a story; the test sets core temperature and water by hand, minute by minute.
struct Story {
  test::Run run;
  system::Held<double> held;
  std::vector<double> x;
  timeline::Watch<double> watch;
  double t = 0;

  explicit Story(test::Run made = test::load_run(test::cold_swim_text))
      : run(std::move(made)), watch(run.compiled) {
    held.persons.resize(2);
    x.assign(static_cast<std::size_t>(system::state_size(2)), 0.0);
    for (int p = 0; p < 2; ++p) {
      const auto& b = run.compiled.persons[static_cast<std::size_t>(p)];
      double* y = x.data() + system::person_offset(p);
      y[body::at::node(body::trunk, body::core)] = 37;
      y[body::at::body_water] = b.body_water_kg;
      y[body::at::extracellular_osmoles] = b.extracellular_osmoles_mOsm;
      y[body::at::fat_mass] = b.fat_kg;
      y[body::at::protein_mass] = b.protein_kg;
      y[body::at::glycogen] = b.glycogen_kJ;
    }
    watch.begin(0, x, held);
  }
  double& core(int p) {
    return x[static_cast<std::size_t>(system::person_offset(p) + body::at::node(body::trunk, body::core))];
  }
  // One chord to `core_degC` at `until_s`.
  void go(int p, double core_degC, double until_s) {
    core(p) = core_degC;
    watch.after_step(t, until_s, x, {}, held);
    t = until_s;
    watch.after_stop(t, x, held);
  }
  // Loses a share of the deficit that ends ability, at once; salt goes with it: osmolality stays.
  void dry_out(int p, double share) {
    const auto& b = run.compiled.persons[static_cast<std::size_t>(p)];
    double* y = x.data() + system::person_offset(p);
    const double loss_kg = share * run.compiled.limits[system::Limit::able_water_deficit] / 100 * b.mass_kg;
    y[body::at::body_water] -= loss_kg;
    y[body::at::extracellular_osmoles] -=
        loss_kg / b.body_water_kg * (b.extracellular_osmoles_mOsm + b.intracellular_osmoles_mOsm);
  }
  // A check finds somebody dead.
  void dies(int p) {
    held.persons[static_cast<std::size_t>(p)].living = 0;
    watch.after_stop(t, x, held);
  }
  timeline::Fate fate(int p) const { return watch.fates(t)[static_cast<std::size_t>(p)]; }
};

// The limits in force, from the scenario.
struct Levels {
  double able, unconscious, lethal;
  explicit Levels(const Story& s)
      : able(s.run.compiled.limits[system::Limit::able_core_low]),
        unconscious(s.run.compiled.limits[system::Limit::unconscious_core]),
        lethal(s.run.compiled.limits[system::Limit::lethal_core_low]) {}
};

}  // namespace

TEST_CASE("nothing passed, nothing said") {
  Story s;
  s.go(0, 36.9, hour_s);
  CHECK(s.watch.crossings().empty());
  const auto fate = s.fate(0);
  CHECK(!fate.able_until_s);
  CHECK(!fate.alive_until_s);
  CHECK(!fate.unconscious_s);
}

TEST_CASE("a lapse of less than half an hour does not end ability, a longer one does, from its beginning") {
  const double lapse = constants::lapse_s;
  REQUIRE(lapse == 30 * minute_s);
  for (const double below_s : {25 * minute_s, 35 * minute_s}) {
    CAPTURE(below_s);
    Story s;
    const Levels level(s);
    const double down = level.able - 0.5, up = level.able + 0.5;
    s.go(0, up, hour_s);
    // Through the level half-way down and half-way up again: below it for `below_s`.
    s.go(0, down, hour_s + 10 * minute_s);
    s.go(0, down, hour_s + below_s);
    s.go(0, up, hour_s + below_s + 10 * minute_s);
    s.go(0, up, 4 * hour_s);
    REQUIRE(s.watch.crossings().size() == 2);
    CHECK(s.watch.crossings()[0].limit == system::Limit::able_core_low);
    CHECK(!s.watch.crossings()[0].upward);
    CHECK(s.watch.crossings()[0].time_s == Approx(hour_s + 5 * minute_s));
    CHECK(s.watch.crossings()[0].slope_per_h == Approx(-6.0));  // one kelvin in ten minutes
    CHECK(s.watch.crossings()[1].upward);
    CHECK(s.watch.crossings()[1].time_s == Approx(hour_s + below_s + 5 * minute_s));
    const auto fate = s.fate(0);
    CHECK(fate.able_until_s.has_value() == (below_s > lapse));
    if (fate.able_until_s) {
      CHECK(*fate.able_until_s == Approx(hour_s + 5 * minute_s));
      CHECK(fate.able_cause == system::Limit::able_core_low);
    }
    CHECK(!fate.alive_until_s);
    CHECK(!s.fate(1).able_until_s);  // the other person is not concerned
  }
}

TEST_CASE("a spell that two limits share ends ability from its beginning, by the limit that began it") {
  Story s;
  const Levels level(s);
  const double down = level.able - 0.5, up = level.able + 0.5;
  s.go(0, up, hour_s);
  s.go(0, down, hour_s + 10 * minute_s);  // through the level half-way
  s.dry_out(0, 1.1);
  s.go(0, down, hour_s + 15 * minute_s);
  s.go(0, up, hour_s + 60 * minute_s);  // warm again after half an hour, and dry to the end
  s.go(0, up, 4 * hour_s);
  const timeline::Fate fate = s.fate(0);
  REQUIRE(fate.able_until_s);
  CHECK(*fate.able_until_s == Approx(hour_s + 5 * minute_s));
  CHECK(fate.able_cause == system::Limit::able_core_low);
}

TEST_CASE("who starts beyond a limit is not able from the start, though it lies beyond what is normal") {
  test::Run run = test::load_run(test::cold_swim_text);
  run.compiled.limits[system::Limit::able_core_low] = 38;
  Story s(std::move(run));
  s.go(0, 37, 7200);
  const timeline::Fate fate = s.fate(0);
  REQUIRE(fate.able_until_s);
  CHECK(*fate.able_until_s == 0);
  CHECK(fate.able_cause == system::Limit::able_core_low);
}

TEST_CASE("death ends ability, however short the lapse before it") {
  Story s;
  const Levels level(s);
  s.go(0, level.able + 1, hour_s);
  s.go(0, level.lethal - 1, hour_s + 20 * minute_s);
  s.dies(0);
  const auto fate = s.fate(0);
  REQUIRE(fate.alive_until_s);
  REQUIRE(fate.able_until_s);
  REQUIRE(fate.unconscious_s);
  // A straight line from able + 1 to lethal - 1 in 20 minutes.
  const double rate = (level.able - level.lethal + 2) / (20 * minute_s);
  CHECK(*fate.able_until_s == Approx(hour_s + 1 / rate));
  CHECK(*fate.unconscious_s == Approx(hour_s + (level.able + 1 - level.unconscious) / rate));
  CHECK(*fate.alive_until_s == Approx(hour_s + 20 * minute_s - 1 / rate));
  CHECK(fate.alive_cause == system::Limit::lethal_core_low);
  CHECK(fate.able_cause == system::Limit::able_core_low);
}

TEST_CASE("unconscious in the water without a lifejacket the airway is lost at that moment") {
  Story s;
  const Levels level(s);
  s.held.persons[1].airway_open_to_sea = 1;
  for (int p = 0; p < 2; ++p) s.core(p) = level.unconscious + 1;
  s.watch.begin(0, s.x, s.held);
  for (int p = 0; p < 2; ++p) s.core(p) = level.unconscious - 1;
  s.go(1, level.unconscious - 1, hour_s);
  s.dies(1);
  const auto open = s.fate(1), kept = s.fate(0);
  REQUIRE(open.alive_until_s);
  CHECK(*open.alive_until_s == Approx(hour_s / 2));
  CHECK(open.alive_cause == system::Limit::lost_airway);
  CHECK(!kept.alive_until_s);
  CHECK(kept.unconscious_s.value_or(0) == Approx(hour_s / 2));
}

TEST_CASE("spent arms drown whoever has no lifejacket, at that moment, and nobody else") {
  Story s;
  s.run.compiled.persons[0].has_lifejacket = 1;
  s.run.compiled.persons[1].has_lifejacket = 0;
  const auto arms_used = [&](int p) -> double& {
    return s.x[static_cast<std::size_t>(system::person_offset(p) + body::at::arms_used)];
  };
  for (int p = 0; p < 2; ++p)
    s.held.persons[static_cast<std::size_t>(p)].airway_open_to_sea = 1, arms_used(p) = 0.45;
  s.watch.begin(0, s.x, s.held);
  for (int p = 0; p < 2; ++p) arms_used(p) = 1.45;
  s.go(0, 37, hour_s);
  s.dies(1);
  const auto jacket = s.fate(0), none = s.fate(1);
  CHECK(!jacket.alive_until_s);
  CHECK(!jacket.able_until_s);
  REQUIRE(none.alive_until_s);
  // Power falls from 1 to 0 in an hour, by the chord; a twentieth is too little.
  CHECK(*none.alive_until_s == Approx(0.95 * hour_s));
  CHECK(none.alive_cause == system::Limit::swim_failure);
}

TEST_CASE("a flat passing is flagged, a steep one is not") {
  // An error of 0.02 K moves the time by 0.02 K over the slope. At one hour 1 % is 36 s, so the 60 s count:
  // slopes below 1.2 K/h graze.
  for (const double slope_K_h : {0.6, 2.4}) {
    CAPTURE(slope_K_h);
    Story s;
    const double level = Levels(s).able;
    s.core(0) = level + slope_K_h / 2;
    s.watch.begin(0, s.x, s.held);
    s.t = hour_s / 2;
    s.watch.begin(s.t, s.x, s.held);
    s.go(0, level - slope_K_h / 2, 1.5 * hour_s);
    REQUIRE(s.watch.crossings().size() == 1);
    CHECK(s.watch.crossings()[0].time_s == Approx(hour_s));
    CHECK(s.watch.crossings()[0].grazing == (slope_K_h < 1));
  }
}

TEST_CASE("the limit that comes next is the one nearest at the last stop before ability ended") {
  Story s;
  const Levels level(s);
  s.go(0, level.able + 1, hour_s);
  s.dry_out(0, 0.75);
  s.go(0, level.able + 0.5, 2 * hour_s);
  s.go(0, level.able - 0.5, 3 * hour_s);
  s.dry_out(0, -0.75);
  for (double h = 4; h < 9; h += 1) s.go(0, level.able - 0.5, h * hour_s);
  const auto fate = s.fate(0);
  REQUIRE(fate.able_until_s);
  CHECK(*fate.able_until_s == Approx(2.5 * hour_s));
  CHECK(fate.next_cause == system::Limit::able_water_deficit);
  CHECK(fate.nearest_margin_fraction == Approx(0.25));
  // Of somebody to whom nothing happens it is read at the end.
  s.dry_out(1, 0.5);
  s.go(1, 37, 9 * hour_s);
  CHECK(s.fate(1).next_cause == system::Limit::able_water_deficit);
  CHECK(s.fate(1).nearest_margin_fraction == Approx(0.5));
}

TEST_CASE("water deficit ends ability by its own name") {
  Story s;
  // Past the level by as much as is left before it: half-way through the hour.
  s.dry_out(0, 2);
  s.watch.after_step(0, hour_s, s.x, {}, s.held);
  const auto fate = s.watch.fates(3 * hour_s)[0];
  REQUIRE(fate.able_until_s);
  CHECK(*fate.able_until_s == Approx(hour_s / 2));
  CHECK(fate.able_cause == system::Limit::able_water_deficit);
}

TEST_CASE("what a stop carries across a level is a crossing at that stop") {
  Story s;
  s.dry_out(0, 1.2);
  s.watch.after_stop(hour_s, s.x, s.held);
  s.t = hour_s;
  s.go(0, 37, 2 * hour_s);
  s.dry_out(0, -1.2);  // and back
  s.watch.after_stop(2 * hour_s, s.x, s.held);
  REQUIRE(s.watch.crossings().size() == 2);
  CHECK(s.watch.crossings()[0].time_s == hour_s);
  CHECK(s.watch.crossings()[1].time_s == 2 * hour_s);
  const auto fate = s.watch.fates(9 * hour_s)[0];
  CHECK(fate.able_until_s == hour_s);
  CHECK(fate.able_cause == system::Limit::able_water_deficit);
}

TEST_CASE("a death is dated by the lethal limit that is still passed when it is found") {
  Story s;
  const double lethal = Levels(s).lethal;
  s.go(0, lethal + 1, hour_s);
  s.go(0, lethal - 1, 2 * hour_s);
  s.go(0, lethal + 1, 3 * hour_s);  // and back before anybody looked: no death
  CHECK(!s.fate(0).alive_until_s);
  s.go(0, lethal - 1, 4 * hour_s);
  s.dies(0);
  CHECK(s.fate(0).alive_until_s.value_or(0) == Approx(3.5 * hour_s));
}

TEST_CASE("what somebody had of fat at the start is the whole of its margin") {
  // By hand: from 6 kg to a lethal level of 1 kg is 5 kg; at 2 kg a fifth of that is left, though a person of
  // no particular kind has 10 kg.
  const system::LimitRow& fat = system::row_of(system::Limit::lethal_fat);
  CHECK(system::margin_left(fat, 1.0, 6.0, 6.0) == 1);
  CHECK(system::margin_left(fat, 1.0, 6.0, 2.0) == Approx(0.2));
  // Of the core 37 degC is normal, whatever it was: half way from there to 33 degC.
  CHECK(system::margin_left(system::row_of(system::Limit::able_core_low), 33.0, 36.0, 35.0) == Approx(0.5));
}
