#include "bide/stores/rationing.hpp"

#include <doctest/doctest.h>

#include <vector>

#include "support/lanes.hpp"

using namespace bide;
using namespace bide::stores;
using doctest::Approx;
using scenario::RationingRule;

namespace {

constexpr double water_L_per_day = 0.5, food_kJ_per_day = 3350;

RationPlan plan_of(RationingRule rule) {
  RationPlan plan;
  plan.rule = rule;
  plan.spread_days = 3;
  plan.issues_per_day = 3;
  return plan;
}

struct Log {
  std::vector<double> hours, given_each;
  double left = 0;
};

// Issues every 8 h from 0 to `end_h`, everybody alike.
Log hand_out(const RationPlan& plan, double stock, int persons, double end_h, double thirst = 0) {
  Log log;
  for (double h = 0; h <= end_h; h += 24.0 / plan.issues_per_day) {
    std::vector<double> asked(static_cast<std::size_t>(persons)), injured(asked.size(), 0.0),
        given(asked.size());
    for (double& a : asked)
      a = water_request_L(plan, water_L_per_day, h, thirst, 0.0, stock, static_cast<double>(persons));
    serve(asked.data(), injured.data(), persons, plan.injured_first, stock, given.data());
    if (given[0] > constants::nothing_left_L) {
      log.hours.push_back(h);
      log.given_each.push_back(given[0]);
    }
  }
  log.left = stock;
  return log;
}

}  // namespace

TEST_CASE("6 L for four at half a litre a day from hour 24 last to the end of day 4") {
  // 2 L a day from hour 24: three days. Issues at 24, 32, ... 88 h: nine of 1/6 L each; nothing at 96 h.
  const Log log = hand_out(plan_of(RationingRule::none_first_day), 6.0, 4, 120);
  REQUIRE(log.hours.size() == 9);
  CHECK(log.hours.front() == 24);
  CHECK(log.hours.back() == 88);
  for (const double each : log.given_each) CHECK(each == Approx(1.0 / 6));
  CHECK(log.left == Approx(0).epsilon(1e-9));
}

TEST_CASE("fixed per day starts at once: 6 L for four last three days") {
  const Log log = hand_out(plan_of(RationingRule::fixed_per_day), 6.0, 4, 120);
  REQUIRE(log.hours.size() == 9);
  CHECK(log.hours.front() == 0);
  CHECK(log.hours.back() == 64);
}

TEST_CASE("spread over three days gives every issue the same and ends with nothing left") {
  const Log log = hand_out(plan_of(RationingRule::spread), 6.0, 4, 120);
  REQUIRE(log.hours.size() == 9);
  CHECK(log.hours.back() == 64);
  for (const double each : log.given_each) CHECK(each == Approx(6.0 / 4 / 9));
  CHECK(log.left == Approx(0).epsilon(1e-9));
}

TEST_CASE("spread shares what is left among those still alive") {
  const RationPlan plan = plan_of(RationingRule::spread);
  // At hour 24 six issues are left: 4 L over 6 issues and 2 people.
  CHECK(water_request_L(plan, water_L_per_day, 24.0, 0.0, 0.0, 4.0, 2.0) == Approx(4.0 / 6 / 2));
  CHECK(water_request_L(plan, water_L_per_day, 64.0, 0.0, 0.0, 1.0, 2.0) == Approx(0.5));
  CHECK(water_request_L(plan, water_L_per_day, 200.0, 0.0, 0.0, 1.0, 2.0) ==
        Approx(0.5));  // rain caught after the plan's end
}

// The gut passes 0.8 to 1.0 L an hour.
TEST_CASE("by thirst: nothing without, what the gut passes in an hour at the most") {
  const RationPlan plan = plan_of(RationingRule::by_thirst);
  CHECK(water_request_L(plan, water_L_per_day, 0.0, 0.0, 0.0, 6.0, 4.0) == 0);
  CHECK(water_request_L(plan, water_L_per_day, 0.0, 0.4, 0.0, 6.0, 4.0) == Approx(0.36));
  CHECK(water_request_L(plan, water_L_per_day, 0.0, 3.0, 0.0, 6.0, 4.0) == 0.9);
  CHECK(hand_out(plan, 6.0, 4, 48, 1.0).hours.size() == 2);  // 3.6 L, then the 2.4 that are left
}

TEST_CASE("the injured drink on the first day, where they come first") {
  RationPlan plan = plan_of(RationingRule::none_first_day);
  CHECK(water_request_L(plan, water_L_per_day, 8.0, 0.0, 1.0, 6.0, 4.0) == Approx(1.0 / 6));
  CHECK(water_request_L(plan, water_L_per_day, 8.0, 0.0, 0.0, 6.0, 4.0) == 0);
  CHECK(water_request_L(plan, water_L_per_day, 24.0, 0.0, 0.0, 6.0, 4.0) == Approx(1.0 / 6));
  plan.injured_first = false;
  CHECK(water_request_L(plan, water_L_per_day, 8.0, 0.0, 1.0, 6.0, 4.0) == 0);
}

TEST_CASE("serving: injured in full, the rest an equal cut, never more than there is") {
  const double asked[]{0.5, 0.5, 0.5, 0.25}, injured[]{0, 1, 0, 0};
  double given[4], stock = 0.75;
  serve(asked, injured, 4, true, stock, given);
  CHECK(given[1] == Approx(0.5));
  // 0.25 L left for 1.25 L asked: a fifth.
  CHECK(given[0] == Approx(0.1));
  CHECK(given[2] == Approx(0.1));
  CHECK(given[3] == Approx(0.05));
  CHECK(stock == Approx(0));
  stock = 0.875;
  serve(asked, injured, 4, false, stock, given);  // half of 1.75 L
  for (int i = 0; i < 4; ++i) CHECK(given[i] == Approx(asked[i] / 2));
  stock = 10;
  serve(asked, injured, 4, true, stock, given);
  for (int i = 0; i < 4; ++i) CHECK(given[i] == Approx(asked[i]));
  CHECK(stock == Approx(10 - 1.75));
  stock = 0;
  serve(asked, injured, 4, true, stock, given);
  for (const double g : given) CHECK(g == 0);
}

TEST_CASE("the books of serving close: what leaves the stock is what is given") {
  const double asked[]{0.13, 0.31, 0.07}, injured[]{1, 0, 1};
  for (double stock = 0; stock < 0.7; stock += 0.013) {
    double left = stock, given[3];
    serve(asked, injured, 3, true, left, given);
    CHECK(stock - left == Approx(given[0] + given[1] + given[2]).epsilon(1e-12));
    CHECK(left >= 0);
  }
}

TEST_CASE("food only with water: 10,000 kJ at 3,350 kJ a day are gone in three days") {
  RationPlan plan = plan_of(RationingRule::none_first_day);
  CHECK(food_request_kJ(plan, food_kJ_per_day, 1.0) == Approx(3350.0 / 3));
  CHECK(food_request_kJ(plan, food_kJ_per_day, 0.0) == 0);
  CHECK(10000 / (3 * food_request_kJ(plan, food_kJ_per_day, 1.0)) ==
        Approx(3).epsilon(0.01));  // 46 CFR 160.046-9
  plan.food_only_with_water = false;
  CHECK(food_request_kJ(plan, food_kJ_per_day, 0.0) == Approx(3350.0 / 3));
}

TEST_CASE("rationing in lanes") {
  const test::Points thirst{0, 0.3, 0.9, 2}, left{0, 0.4, 2, 30}, injured{0, 1, 0, 1};
  for (const RationingRule rule : {RationingRule::fixed_per_day, RationingRule::none_first_day,
                                   RationingRule::spread, RationingRule::by_thirst}) {
    const RationPlan plan = plan_of(rule);
    test::check_lanes(
        "request",
        [&](auto t, auto i, auto w) {
          return water_request_L(plan, decltype(t)(water_L_per_day), 8.0, t, i, w, decltype(t)(3));
        },
        thirst, injured, left);
  }
  for (int who = 0; who < 2; ++who)
    test::check_lanes(
        "serve",
        [&](auto w, auto i) {
          using T = decltype(w);
          const T asked[]{T(0.5), T(0.3)}, hurt[]{i, T(0)};
          T given[2], stock = w;
          serve(asked, hurt, 2, true, stock, given);
          return given[who];
        },
        left, injured);
  test::check_lanes(
      "food",
      [&](auto w) {
        return food_request_kJ(plan_of(RationingRule::spread), decltype(w)(food_kJ_per_day), w);
      },
      injured);
}

TEST_CASE("too few doses are shared by all who want one") {
  CHECK(dose_share(6.0, 4.0) == 1);
  CHECK(dose_share(4.0, 4.0) == 1);
  CHECK(dose_share(3.0, 4.0) == 0.75);  // three tablets, four people: each has three chances in four
  CHECK(dose_share(0.0, 4.0) == 0);
  CHECK(dose_share(2.0, 0.0) == 1);  // nobody wants one: nobody multiplies by it
}
