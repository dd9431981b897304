#include "bide/outcome/compare.hpp"
#include "bide/core/units.hpp"

#include <doctest/doctest.h>

#include "support/synthetic_timeline.hpp"

using namespace bide;
using outcome::Ahead;

namespace {

std::optional<double> at_h(double hours) {
  return hours * hour_s;
}

}  // namespace

TEST_CASE("later is ahead; what is as near as 5 % or half an hour cannot be separated") {
  const double h = 100 * hour_s;
  CHECK(outcome::later(at_h(40), h, at_h(30), h) == Ahead::first);
  CHECK(outcome::later(at_h(30), h, at_h(40), h) == Ahead::second);
  CHECK(outcome::later(at_h(40), h, at_h(41), h) == Ahead::indistinguishable);
  CHECK(outcome::later(at_h(1), h, at_h(1.4), h) == Ahead::indistinguishable);
  CHECK(outcome::later(at_h(1), h, at_h(1.6), h) == Ahead::second);
}

TEST_CASE(
    "a time beyond the horizon is ahead of one well before it, never behind, never apart from another") {
  const double h = 100 * hour_s;
  CHECK(outcome::later({}, h, at_h(30), h) == Ahead::first);
  CHECK(outcome::later(at_h(30), h, {}, h) == Ahead::second);
  CHECK(outcome::later({}, h, at_h(98), h) == Ahead::indistinguishable);
  CHECK(outcome::later({}, h, {}, h) == Ahead::indistinguishable);
  CHECK(outcome::later({}, 50 * hour_s, at_h(80), h) == Ahead::indistinguishable);  // followed for less long
}

// By hand: excess 4 and 8 K, 400 W to the outside in both, so 100 and 50 W/K; canopy 75 and 40, openings 25
// and
// 10. One W/K is worth 400 / (100 x 50) = 0.08 K: 2.8 K by the canopy, 1.2 K by the openings, together the 4
// K.
TEST_CASE("why one cabin is warmer adds up to by how much") {
  const outcome::CabinHeat first{14, 10, 380, 0, 300, 0, 100}, second{18, 10, 380, 0, 320, 0, 80};
  const auto because = outcome::warmer_because(first, second);
  REQUIRE(because);
  CHECK(because->canopy_K == doctest::Approx(2.8));
  CHECK(because->air_K == doctest::Approx(1.2));
  CHECK(because->bodies_K == doctest::Approx(0));
  CHECK(because->rest_K == doctest::Approx(0));
  CHECK(because->canopy_W_K[0] == doctest::Approx(75));
  const auto turned = outcome::warmer_because(second, first);
  CHECK(turned->canopy_K == doctest::Approx(-2.8));
}

// 50 W/K in both, so each watt is worth 1/50 K: 100 W from bodies 2 K, 30 W less to the sea 0.6 K, the air
// outside 1 K.
TEST_CASE("heat brought and the air outside count as well") {
  const outcome::CabinHeat first{15, 10, 300, 0, 200, 50, 50}, second{18.6, 11, 400, 0, 304, 20, 76};
  const auto because = outcome::warmer_because(first, second);
  REQUIRE(because);
  CHECK(because->bodies_K == doctest::Approx(2));
  CHECK(because->sea_K == doctest::Approx(0.6));
  CHECK(because->outside_K == doctest::Approx(1));
  const double sum = because->outside_K + because->bodies_K + because->sun_K + because->sea_K +
                     because->rest_K + because->canopy_K + because->air_K;
  CHECK(sum == doctest::Approx(3.6));
}

TEST_CASE("a cabin as cold as the outside has no loss for each kelvin") {
  const outcome::CabinHeat cold{10.5, 10, 300, 0, 200, 0, 100}, warm{15, 10, 300, 0, 200, 0, 100};
  CHECK_FALSE(outcome::warmer_because(cold, warm));
  CHECK_FALSE(outcome::warmer_because(warm, cold));
}

// Inside 10 C + 0.1 K per h, so coldest in the first row, ten minutes after the start.
TEST_CASE("the coldest inside says whether it was dark") {
  for (const bool dark : {true, false}) {
    timeline::Timeline t = test::synthetic_timeline(1);
    t.irradiance_W_m2.assign(t.time_s.size(), 300);
    if (dark) t.irradiance_W_m2[1] = 0;
    const auto figures = outcome::figures_of(outcome::read_outcome(t, test::valid_scenario(1)), t);
    REQUIRE(figures.coldest_inside);
    CHECK(figures.coldest_inside->degC == doctest::Approx(10 + 0.1 / 6));
    CHECK(figures.coldest_inside->time_s == 600);
    CHECK(figures.coldest_inside->dark == dark);
  }
}

TEST_CASE("flows are compared from when all are aboard to the first death") {
  timeline::Timeline a = test::synthetic_timeline(2), b = test::synthetic_timeline(2);
  b.fates[0].alive_until_s.reset();
  b.boarded_s = 1200;
  const outcome::Window window = outcome::common_window(a, b);
  CHECK(window.from_s == 1200);
  CHECK(window.to_s == 60 * hour_s);
  a.cabin_from_bodies_W.assign(a.time_s.size(), 250);
  CHECK(outcome::cabin_heat(a, window).bodies_W == doctest::Approx(250));
  // 10 C + 0.1 K per h, in the middle of 1/3 and 60 h, a row standing for the time before it.
  CHECK(outcome::cabin_heat(a, window).inside_degC ==
        doctest::Approx(10 + 0.1 * (60 + 1.0 / 3) / 2).epsilon(0.001));
}

// Person A 6 %, Person B 2.4 % at 60 h; two persons drank 3 L and 1 L.
TEST_CASE("water is counted for each person in the mean") {
  timeline::Timeline t = test::synthetic_timeline(2);
  t.events = {{3600, 0, system::NoteKind::water_issued, "", 3, 3, "L"},
              {7200, 1, system::NoteKind::water_issued, "", 3, 1, "L"},
              {61 * hour_s, 1, system::NoteKind::water_issued, "", 9, 9, "L"}};
  const outcome::WaterFlows water = outcome::water_flows(t, {0, 60 * hour_s});
  CHECK(water.drunk_L == doctest::Approx(2));
  CHECK(water.deficit_pct == doctest::Approx(4.2));
  CHECK(water.sweat_L == doctest::Approx(60));  // 1 kg/h
}

TEST_CASE("of two rafts of one crew the worse of each figure stands") {
  using scenario::Limit;
  outcome::Figures one, other;
  one.able.first_s = at_h(10), one.able_limit = Limit::able_core_low;
  other.able.first_s = at_h(8), other.able_limit = Limit::able_water_deficit;
  one.alive.first_s = at_h(20),
  one.alive_limit = Limit::lethal_core_low;  // the other has none within the horizon
  one.next_limit = Limit::able_co2, one.next_margin_fraction = 0.4;
  other.next_limit = Limit::lethal_fat, other.next_margin_fraction = 0.3;
  one.coldest_inside = outcome::Coldest{4, 0, false};
  other.coldest_inside = outcome::Coldest{6, 0, true};
  one.lowest_core_degC = 33, other.lowest_core_degC = 34;
  one.highest_core_degC = 37.5, other.highest_core_degC = 37.2;
  one.worst_water_deficit_pct = 5, other.worst_water_deficit_pct = 8;
  one.foul_air_h = 0, other.foul_air_h = 3;
  one.highest_co2_ppm = 9000, other.highest_co2_ppm = 4000;
  // Whichever is named first.
  for (const outcome::Figures& both : {outcome::worse(one, other), outcome::worse(other, one)}) {
    CHECK(both.able_limit == Limit::able_water_deficit);
    CHECK(both.alive_limit == Limit::lethal_core_low);
    CHECK(both.next_limit == Limit::lethal_fat);
    CHECK(both.next_margin_fraction == 0.3);
    REQUIRE(both.coldest_inside);
    CHECK(both.coldest_inside->degC == 4);
    CHECK(both.lowest_core_degC == 33);
    CHECK(both.highest_core_degC == 37.5);
    CHECK(both.worst_water_deficit_pct == 8);
    CHECK(both.foul_air_h == 3);
    CHECK(both.highest_co2_ppm == 9000);
  }
}
