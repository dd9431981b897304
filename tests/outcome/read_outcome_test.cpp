#include <doctest/doctest.h>

#include <stdexcept>

#include "bide/outcome/outcome.hpp"
#include "support/synthetic_timeline.hpp"

using namespace bide;
using outcome::Grade;
using outcome::StoreState;

namespace {

const outcome::StoreOutcome& store(const outcome::Outcome& o, const std::string& name) {
  for (const auto& each : o.stores) {
    if (each.name == name) return each;
  }
  FAIL("no such store");
  return o.stores.front();
}

}  // namespace

TEST_CASE("an outcome is read off a timeline of straight lines") {
  const auto scenario = test::valid_scenario(2);
  const auto timeline = test::synthetic_timeline(2);
  const auto o = outcome::read_outcome(timeline, scenario);

  CHECK(*o.able.first_s == 40 * 3600);
  CHECK(*o.able.half_s == 40 * 3600);  // one of two is half the crew
  CHECK_FALSE(o.able.last_s);
  CHECK(*o.alive.first_s == 60 * 3600);
  CHECK(o.watched_s == 120 * 3600);

  const auto& a = o.persons[0];
  CHECK(a.able.limit == system::Limit::able_core_low);
  CHECK(a.able_h == doctest::Approx(40));
  CHECK(a.hands_h == doctest::Approx(40));           // ability falls to one half at 40 h
  CHECK(a.lowest_core_degC == doctest::Approx(31));  // 37 - 0.1 x 60, at death; the column goes on to 25
  CHECK(a.worst_water_deficit_pct == doctest::Approx(6));
  CHECK(a.able.evidence.grade == Grade::extrapolated);

  const auto& b = o.persons[1];
  CHECK_FALSE(b.able.at_s);
  CHECK(b.able.limit == system::Limit::none);
  CHECK(b.able_h == doctest::Approx(120));
  CHECK(b.hands_h == doctest::Approx(40));
  CHECK(b.next_limit == system::Limit::able_water_deficit);
  CHECK(b.worst_water_deficit_pct == doctest::Approx(4.8));  // 0.04 x 120
  CHECK(o.driest_person == 0);

  CHECK(o.cabin.coldest_inside_degC->value == doctest::Approx(10 + 0.1 / 6));  // ten minutes aboard
  CHECK(o.cabin.warmest_inside_degC->value == doctest::Approx(22));
  CHECK(o.cabin.co2_above_5000_ppm_h == doctest::Approx(110));  // from 10 h on
  CHECK(o.cabin.co2_above_15000_ppm_h == doctest::Approx(90));  // from 30 h on
  CHECK(o.cabin.co2_above_30000_ppm_h == doctest::Approx(60));  // from 60 h on
  CHECK(*o.cabin.condensate_L_day == doctest::Approx(1.2));     // 0.05 x 24
  CHECK(o.cabin.condensate_evidence.grade == Grade::no_data);

  CHECK(store(o, "water").state == StoreState::runs_out);
  CHECK(store(o, "water").at_s == 60 * 3600);
  CHECK(store(o, "food").state == StoreState::none_aboard);
  CHECK(store(o, "flares").state == StoreState::lasts);
  CHECK(o.signals.flares == 3);
}

TEST_CASE("the cabin is watched until the last person dies, hands while able") {
  const auto scenario = test::valid_scenario(1);
  auto timeline = test::synthetic_timeline(1);
  timeline.fates[0].able_until_s = 20 * 3600.0;
  const auto o = outcome::read_outcome(timeline, scenario);
  CHECK(o.watched_s == 60 * 3600);
  CHECK(o.persons[0].hands_h == doctest::Approx(20));
  CHECK(o.cabin.warmest_inside_degC->value == doctest::Approx(16));  // 10 + 0.1 x 60
  CHECK(o.cabin.co2_above_30000_ppm_h == 0);
  CHECK(*o.able.last_s == 20 * 3600);
}

TEST_CASE("a store that is refilled runs out when it first is empty, one that is found later lasts") {
  const outcome::Column time_s{0, 10, 20, 30, 40};
  const auto twice = outcome::store_figures(time_s, {2, 1, 0, 1, 0});
  CHECK(twice.state == StoreState::runs_out);
  CHECK(twice.at_s == 20);
  const auto found = outcome::store_figures(time_s, {0, 0, 3, 2, 1});
  CHECK(found.state == StoreState::lasts);
  CHECK(found.left == 1);
  CHECK(outcome::store_figures(time_s, {0, 0, 0, 0, 0}).state == StoreState::none_aboard);
}

// Inside 10 C + 0.1 K per h: before 5 h nobody is aboard, and at 5 h the air inside is that outside.
TEST_CASE("the inside counts after boarding") {
  const auto scenario = test::valid_scenario(1);
  auto timeline = test::synthetic_timeline(1);
  timeline.boarded_s = 5 * 3600;
  const auto cabin = outcome::read_outcome(timeline, scenario).cabin;
  CHECK(cabin.coldest_inside_degC->value == doctest::Approx(10.5 + 0.1 / 6));
  CHECK(cabin.coldest_inside_degC->time_s == 5 * 3600 + 600);
}

TEST_CASE("no raft: no cabin") {
  const auto scenario = test::valid_scenario(1, false);
  const auto o = outcome::read_outcome(test::synthetic_timeline(1, false), scenario);
  CHECK_FALSE(o.cabin.coldest_inside_degC);
  CHECK_FALSE(o.cabin.condensate_L_day);
}

TEST_CASE("a timeline of another crew is refused") {
  const auto scenario = test::valid_scenario(1);
  CHECK_THROWS_AS(outcome::read_outcome(test::synthetic_timeline(2), scenario), std::logic_error);
}
