// A raft's failures and its launch: shares of the trial, the cases that follow from release, painter, weak
// link and lift, and futures that keep their numbers.
#include "bide/study/sampling/raft_draw.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "bide/core/random.hpp"

using namespace bide;
using scenario::FailureKind;
using scenario::LaunchWay;
using scenario::Sex;
using study::LostBy;
using study::RaftBefore;
using study::RaftDrawn;
using study::Reached;

namespace {

// A launch in which every step that has no published count goes well.
scenario::Uncertain launch(LaunchWay way) {
  scenario::Uncertain out;
  out.launch.emplace();
  out.launch->way = way;
  out.launch->painter_length_m = 15;
  return out;
}

RaftBefore four(const scenario::Uncertain& uncertain) {
  return {uncertain, nullptr, 0, false, 4, 15, {{Sex::male, 75, false}}};
}

RaftDrawn draw(const RaftBefore& before, std::uint64_t k) {
  return study::draw_raft(
      before, [k](const std::string& name, study::FactorKind) { return uniform(7, k, stream_of(name), 0); });
}

template <class Is>
double share(const RaftBefore& before, Is is, int n = 4000) {
  int count = 0;
  for (int k = 0; k < n; ++k) count += is(draw(before, static_cast<std::uint64_t>(k))) ? 1 : 0;
  return static_cast<double>(count) / n;
}

bool lost_by(const RaftDrawn& drawn, LostBy what) {
  return drawn.launch->lost_by == what;
}
bool wet(const RaftDrawn& drawn) {
  return drawn.launch->reached == Reached::wet;
}
bool has(const RaftDrawn& drawn, FailureKind kind) {
  return std::find(drawn.failures.begin(), drawn.failures.end(), kind) != drawn.failures.end();
}

// Five standard errors of a share of n.
double bound(double share, int n = 4000) {
  return 5 * std::sqrt(share * (1 - share) / n);
}

}  // namespace

// 22 of 24 men and 17 of 24 women got aboard. Of x in n the mean of the interval is (x + 1/2) / (n + 1):
// 0.900 and 0.700.
TEST_CASE("alone in the water, people get aboard as in the trial") {
  scenario::Uncertain by_hand = launch(LaunchWay::by_hand);
  RaftBefore before = four(by_hand);
  CHECK(std::abs(share(before, wet) - 0.900) < bound(0.9));
  before.crew = {{Sex::female, 60, false}};
  CHECK(std::abs(share(before, wet) - 0.700) < bound(0.7));
  CHECK(share(before, [](const RaftDrawn& d) { return lost_by(d, LostBy::nobody_climbed_in); }) ==
        doctest::Approx(1 - share(before, wet)));
  // Whoever is aboard helps the others: nobody climbs in only if none of them does, 0.3 x 0.3 x 0.1 and a
  // little for shares that are drawn together.
  before.crew = {{Sex::female, 60, false}, {Sex::female, 60, false}, {Sex::male, 75, false}};
  const double never = share(before, [](const RaftDrawn& d) { return d.no_raft; });
  CHECK(never > 0.004);
  CHECK(never < 0.02);
}

// 4.3 kg are 7.17 % of 60 kg; reserves of 2 to 23 % lie above that in 15.83 of 21 parts, 0.754.
TEST_CASE("soaked clothes take up the reserve") {
  CHECK(study::climbs_in(1, {Sex::female, 60, true}) == doctest::Approx(0.754).epsilon(0.001));
  CHECK(study::climbs_in(0.7, {Sex::female, 60, true}) == doctest::Approx(0.528).epsilon(0.001));
  CHECK(study::climbs_in(0.7, {Sex::female, 60, false}) == 0.7);
  CHECK(study::climbs_in(1, {Sex::male, 15, true}) == 0);  // 29 % of a small child
}

TEST_CASE("inflation takes one minute at 18 and three at -30 degC") {
  CHECK(study::inflation_minutes(25) == 1);
  CHECK(study::inflation_minutes(18) == 1);
  CHECK(study::inflation_minutes(-6) == doctest::Approx(2));  // halfway
  CHECK(study::inflation_minutes(-30) == 3);
  CHECK(study::inflation_minutes(-40) == 3);
}

TEST_CASE("ten metres of water do not pull a painter of fifteen") {
  scenario::Uncertain free = launch(LaunchWay::float_free);
  free.launch->water_depth_m = 10;
  CHECK(share(
            four(free), [](const RaftDrawn& d) { return lost_by(d, LostBy::too_shallow); }, 200) == 1);
  free.launch->water_depth_m = 16;
  CHECK(share(
            four(free), [](const RaftDrawn& d) { return lost_by(d, LostBy::too_shallow); }, 200) == 0);
  // A ship on the bottom holds a raft 2 m above its keel in 14 m of the 16.
  free.launch->stowage_height_m = 2;
  CHECK(share(
            four(free), [](const RaftDrawn& d) { return lost_by(d, LostBy::too_shallow); }, 200) == 1);
  free.launch->stowage_height_m = 0;
  // With a painter of 1 m the release decides: 2 to 4 m, so 3 m are too shallow in one of two cases; past
  // its date 2 to 7.6 m, 4.6 of 5.6.
  free.launch->painter_length_m = 1, free.launch->water_depth_m = 3;
  RaftBefore before = four(free);
  const auto shallow = [](const RaftDrawn& d) { return lost_by(d, LostBy::too_shallow); };
  CHECK(std::abs(share(before, shallow) - 0.5) < bound(0.5));
  before.release_past_date = true;
  CHECK(std::abs(share(before, shallow) - 4.6 / 5.6) < bound(0.8));
}

// Lift of one chamber: 0.096 x 4 x 10.06 / 2 = 1.93 kN against a link of 1.8 to 2.6: not parted in 0.67 of
// 0.8.
TEST_CASE("a raft for four with one chamber is pulled under, one for six is not") {
  scenario::Uncertain free = launch(LaunchWay::float_free);
  free.launch->one_chamber = 1;
  RaftBefore before = four(free);
  const auto under = [](const RaftDrawn& d) { return lost_by(d, LostBy::pulled_under); };
  CHECK(std::abs(share(before, under) - 0.668 / 0.8) < bound(0.835));
  before.capacity_persons = 6;  // 2.90 kN
  CHECK(share(before, under, 500) == 0);
  before.capacity_persons = 8;  // 3.86 kN
  CHECK(share(before, under, 500) == 0);
  CHECK(has(draw(before, 1), FailureKind::tube_leaking) == !draw(before, 1).no_raft);
  free.launch->one_chamber = 0;
  before.capacity_persons = 4;  // 3.86 kN
  CHECK(share(before, under, 500) == 0);
}

TEST_CASE("a raft fires only if its lift is more than the pull") {
  scenario::Uncertain free = launch(LaunchWay::float_free);
  free.readiness.emplace().neglected = 0;
  const auto too_small = [](const RaftDrawn& d) { return lost_by(d, LostBy::lift_too_small); };
  free.launch->packed_buoyancy_N = 149;
  CHECK(share(four(free), too_small, 100) == 1);
  free.launch->packed_buoyancy_N = 200;  // more than 150 N, the most allowed
  CHECK(share(four(free), too_small, 100) == 0);
  free.readiness->neglected = 1;  // 247 N were found
  CHECK(share(four(free), too_small, 100) == 1);
}

TEST_CASE("lashings and a painter without its weak link hold a raft down, but not by hand") {
  scenario::Readiness lashed;
  lashed.no_extra_lashings = false;
  for (const LaunchWay way : {LaunchWay::float_free, LaunchWay::by_hand}) {
    const scenario::Uncertain uncertain = launch(way);
    RaftBefore before = four(uncertain);
    before.readiness = &lashed;
    CHECK(share(
              before, [](const RaftDrawn& d) { return lost_by(d, LostBy::held_down); }, 100) ==
          (way == LaunchWay::float_free ? 1 : 0));
  }
}

TEST_CASE("a second raft is a second chance") {
  scenario::Uncertain by_hand = launch(LaunchWay::by_hand);
  by_hand.launch->steps_across = 1;
  by_hand.launch->swept_off = 0.5;
  const auto never = [](const RaftDrawn& d) { return d.no_raft; };
  CHECK(std::abs(share(four(by_hand), never) - 0.5) < bound(0.5));
  by_hand.launch->rafts = 2;
  CHECK(std::abs(share(four(by_hand), never) - 0.25) < bound(0.25));
}

// Made ready in 1 to 5 min and inflated in 1: a deck that is gone after 4 min is left dry in 2 of 4 cases.
TEST_CASE("who is not off the deck in time swims") {
  scenario::Uncertain by_hand = launch(LaunchWay::by_hand);
  by_hand.launch->steps_across = 1;
  scenario::Distribution& gone = by_hand.launch->sinks_after_min.emplace();
  gone.kind = scenario::DistributionKind::uniform;
  gone.low = 3.999, gone.high = 4.001;
  RaftBefore before = four(by_hand);
  before.air_degC = 20;
  CHECK(std::abs(share(before, [](const RaftDrawn& d) { return d.launch->reached == Reached::dry; }) - 0.5) <
        bound(0.5));
  CHECK(share(
            before, [](const RaftDrawn& d) { return wet(d) && !(d.launch->minutes >= 5); }, 500) == 0);
}

TEST_CASE("failures hang on one raft: none without neglect, together with it") {
  scenario::Uncertain uncertain;
  scenario::RaftChances& chances = uncertain.readiness.emplace();
  chances = {0, 1, 1, 1, 1, 1};
  const auto any = [](const RaftDrawn& d) { return d.no_raft || !d.failures.empty(); };
  CHECK(share(four(uncertain), any, 300) == 0);
  chances.neglected = 1;
  CHECK(share(
            four(uncertain), [](const RaftDrawn& d) { return d.no_raft; }, 300) == 1);
  // Half of the rafts are neglected, half of whose floors and lamps fail: both in an eighth, not a sixteenth.
  chances = {0.5, 0, 0, 0, 0.5, 0.5};
  const auto floor = [](const RaftDrawn& d) { return has(d, FailureKind::floor_not_inflated); };
  const auto lamp = [](const RaftDrawn& d) { return has(d, FailureKind::lamp_dead); };
  CHECK(std::abs(share(four(uncertain), floor) - 0.25) < bound(0.25));
  CHECK(std::abs(share(four(uncertain), [&](const RaftDrawn& d) { return floor(d) && lamp(d); }) - 0.125) <
        bound(0.125));
}

// 2 of 5 rafts past their service did not inflate: mean of the interval 2.5 / 6. In date 2 % are neglected.
TEST_CASE("a date changes the chances, and a future keeps its numbers") {
  scenario::Uncertain uncertain;
  uncertain.readiness.emplace();
  RaftBefore in_date = four(uncertain), overdue = four(uncertain);
  overdue.months_overdue = 60;
  const auto flat = [](const RaftDrawn& d) { return d.no_raft; };
  CHECK(std::abs(share(overdue, flat) - 2.5 / 6) < bound(2.5 / 6));
  CHECK(std::abs(share(in_date, flat) - 0.02 * 2.5 / 6) < bound(0.02 * 2.5 / 6));
  for (std::uint64_t k = 0; k < 2000; ++k) {
    CAPTURE(k);
    const RaftDrawn before = draw(in_date, k), after = draw(overdue, k);
    CHECK((!before.no_raft || after.no_raft));
    if (after.no_raft) continue;
    for (const FailureKind kind : before.failures) CHECK(has(after, kind));
  }
}

// Off the deck: made ready in 1 to 5 min and inflated in 1 min at 18 degC, so 2 to 6. Out of the water: some
// minutes of swimming more.
TEST_CASE("the minutes until people are aboard count from the order to launch") {
  scenario::Uncertain by_hand = launch(LaunchWay::by_hand);
  by_hand.launch->steps_across = 1;
  RaftBefore before = four(by_hand);
  before.air_degC = 18;
  const auto within = [](double min) {
    return [min](const RaftDrawn& d) { return d.launch->aboard_min <= min; };
  };
  CHECK(share(before, within(1.99), 500) == 0);
  CHECK(std::abs(share(before, within(4)) - 0.5) < bound(0.5));
  CHECK(share(before, within(6.01), 500) == 1);
  by_hand.launch->steps_across = 0;
  before.crew.assign(8, {Sex::male, 75, false});
  for (std::uint64_t k = 0; k < 100; ++k) {
    const RaftDrawn drawn = draw(before, k);
    if (!drawn.no_raft) CHECK(drawn.launch->aboard_min > 2);
  }
}
