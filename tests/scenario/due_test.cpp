// Dates before departure: what is due, what they take from the stores, and how many signals work.
#include "bide/scenario/due.hpp"

#include <doctest/doctest.h>

#include "bide/scenario/resolve.hpp"
#include "scenario/support.hpp"

using namespace bide::scenario;
using nlohmann::json;

namespace {

// At the start of the smallest scenario, 2031-02-03.
ValidScenario with(const json& readiness) {
  json file = json::parse(test::text_of(test::source("tests/scenario/minimal.json")));
  file["raft"] = {{"kind", "solas_6"}};
  file["boarding"] = {{"kind", "dry"}};
  file["stores"] = {{"pack", "solas_a"}};
  if (!readiness.is_null()) file["readiness"] = readiness;
  return std::get<ValidScenario>(validate_text(file.dump(), "s.json", test::source("tests/scenario")));
}

std::optional<double> overdue(const json& readiness) {
  const ValidScenario s = with(readiness);
  return months_overdue(*s.scenario.readiness, s.start_unix_s);
}

double count(const std::vector<StockItem>& items, ItemRole role) {
  return quantity_of(items, role);
}

Due::State state_of(const ValidScenario& valid, const std::string& what) {
  for (const Due& each : readiness_list(valid))
    if (each.what == what) return each.state;
  FAIL("no such line: " << what);
  return Due::State::unknown;
}

}  // namespace

// To have at least 1, 2, 3, 4 and 6 good ones in 95 of 100 cases: binomial tails by hand, for a share that
// fails of 0.26 and of 0.06.
TEST_CASE("signals to carry so that enough of them work") {
  const int wanted[] = {1, 2, 3, 4, 6}, expired[] = {3, 5, 6, 8, 11}, in_date[] = {2, 3, 4, 5, 8};
  for (int i = 0; i < 5; ++i) {
    CAPTURE(wanted[i]);
    const auto least = [&](double fails) {
      int carried = wanted[i];
      while (signals_working(carried, fails, 0.05) < wanted[i]) ++carried;
      return carried;
    };
    CHECK(least(0.26) == expired[i]);
    CHECK(least(0.06) == in_date[i]);
  }
  // Three of which 26 % fail: at least one with a chance of 0.982, at least two with 0.832.
  CHECK(signals_working(3, 0.26, 0.017) == 0);
  CHECK(signals_working(3, 0.26, 0.018) == 1);
  CHECK(signals_working(3, 0.26, 0.167) == 1);
  CHECK(signals_working(3, 0.26, 0.169) == 2);
  CHECK(signals_working(3, 0.26, 1) == 3);
  CHECK(signals_working(0, 0.26, 0.5) == 0);
}

TEST_CASE("service falls due after its interval, and neglect grows with what is overdue") {
  CHECK(*overdue({{"raft_serviced", "2031-01-03"}}) == doctest::Approx(-11).epsilon(0.01));
  // 13 months ago, with 12 months to go.
  CHECK(*overdue({{"raft_serviced", "2030-01-03"}}) == doctest::Approx(1.05).epsilon(0.02));
  CHECK_FALSE(overdue({{"raft_made", "2025-01-03"}}).has_value());
  // 0.02 in date, certain after 60 months, halfway between at 30.
  CHECK(neglected_chance(-3) == doctest::Approx(0.02));
  CHECK(neglected_chance(30) == doctest::Approx(0.51));
  CHECK(neglected_chance(61) == doctest::Approx(1));
}

TEST_CASE("a date is good to the end of its day") {
  // 2031-02-03T00:00:00Z is 1,927,843,200 s after 1970 (22,313 days).
  constexpr double midnight_s = 22313 * 86400.0;
  REQUIRE(*date_unix_s("2031-02-03") == midnight_s);
  CHECK_FALSE(is_past("2031-02-03", midnight_s + 86399));
  CHECK(is_past("2031-02-03", midnight_s + 86400));
  CHECK_FALSE(is_past(std::nullopt, midnight_s));
  CHECK_FALSE(date_unix_s("2031-02-30").has_value());
  CHECK_FALSE(date_unix_s("3 Feb 2031").has_value());
}

TEST_CASE("what is past its date is taken out of the stores") {
  const ValidScenario plain = with(nullptr);
  const double water = count(plain.stock, ItemRole::water), flares = count(plain.stock, ItemRole::hand_flare);
  REQUIRE(water > 0);
  REQUIRE(flares == 6);  // of the long pack (LSA Code 4.1.5)
  const ValidScenario old_pack = with({{"pack_expires", "2030-12-31"}});
  CHECK(count(old_pack.stock, ItemRole::water) == 0);
  CHECK(count(old_pack.expired, ItemRole::water) == water);
  CHECK(count(old_pack.stock, ItemRole::seasick_medicine) > 0);
  CHECK(count(with({{"medicines_expire", "2030-12-31"}}).stock, ItemRole::seasick_medicine) == 0);
  // Six of which 26 % fail: at most 4 work with a chance of 0.489, at most 5 with 0.836; of which 6 % fail,
  // all six work with 0.690.
  const auto working = [&](const char* date, double position) {
    return count(with({{"signals_expire", date}, {"signals_position", position}}).stock,
                 ItemRole::hand_flare);
  };
  CHECK(working("2030-12-31", 0.48) == 4);
  CHECK(working("2030-12-31", 0.5) == 5);
  CHECK(working("2032-12-31", 0.5) == 6);
  CHECK(working("2032-12-31", 0.3) == 5);
  CHECK(count(with({{"raft_serviced", "2020-12-31"}}).stock, ItemRole::hand_flare) == flares);
}

TEST_CASE("the list says what is due, in order and not known") {
  const ValidScenario s = with({{"raft_made", "2019-05-01"},
                                {"raft_serviced", "2027-05-01"},
                                {"service_interval_months", 36},
                                {"signals_expire", "2031-12-31"},
                                {"no_extra_lashings", false},
                                {"painter_by_weak_link", true}});
  CHECK(state_of(s, "service of the raft") == Due::State::due);    // since May 2030
  CHECK(state_of(s, "tests of the raft") == Due::State::unknown);  // over 5 years, no date of a test
  CHECK(state_of(s, "pyrotechnics") == Due::State::in_order);
  CHECK(state_of(s, "water and food of the pack") == Due::State::unknown);
  CHECK(state_of(s, "no lashings but the release strap") == Due::State::due);
  CHECK(state_of(s, "painter fast to a strong point by the weak link") == Due::State::in_order);
  CHECK(state_of(s, "valise dry, nothing on top of it") == Due::State::unknown);
  CHECK(readiness_list(s).front().state == Due::State::due);
  CHECK(readiness_list(with(nullptr)).empty());
}
