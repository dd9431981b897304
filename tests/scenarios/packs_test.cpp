// What a pack is worth. The arithmetic: the pack for more than 24 h holds 1.5 L a head (15 sachets of 100
// mL). Nobody drinks on the first day; then 0.5 L a day in three issues, the first at hour 24. 1.5 L is nine
// issues of 1/6 L, at hours 24, 32, ..., 88: the last at 24 + 8 x 8 = 88 h. The pack for less than 24 h holds
// no water.
#include <cmath>

#include "bide/core/units.hpp"
#include "bide/outcome/figures.hpp"
#include "scenarios/shipped.hpp"

using namespace bide;

namespace {

struct Issued {
  double first_h = -1, last_h = -1, total_L = 0;
};

Issued water_issued(const timeline::Timeline& run) {
  Issued out;
  for (const auto& event : run.events) {
    if (event.kind != system::NoteKind::water_issued || event.given <= 0) continue;
    if (out.first_h < 0) out.first_h = event.time_s / hour_s;
    out.last_h = event.time_s / hour_s;
    out.total_L += event.given;
  }
  return out;
}

double worst_deficit_pct(const timeline::Timeline& run, double at_h) {
  double worst = 0;
  for (const auto& person : run.persons)
    worst = std::max(worst, person.water_deficit_pct[test::row_at(run, at_h)]);
  return worst;
}

}  // namespace

TEST_CASE("the longer pack's water runs out when the arithmetic says") {
  const auto run = test::simulated(test::shipped("long_pack_far_offshore"));
  const Issued issued = water_issued(run);
  CHECK(issued.first_h == doctest::Approx(24).epsilon(1e-9));
  CHECK(issued.last_h == doctest::Approx(88).epsilon(1e-9));
  CHECK(issued.total_L == doctest::Approx(4 * 1.5).epsilon(1e-9));
  CHECK(run.water_L.front() == doctest::Approx(6).epsilon(1e-9));
  CHECK(run.water_L[test::row_at(run, 80)] > 0.5);
  CHECK(run.water_L[test::row_at(run, 90)] < 1e-9);
  const auto water = outcome::store_figures(run.time_s, run.water_L);
  CHECK(water.state == outcome::StoreState::runs_out);
  CHECK(water.at_s / hour_s == doctest::Approx(88).epsilon(1e-9));
}

TEST_CASE("without water the shorter pack's crew dries out sooner") {
  const auto brief = test::simulated(test::shipped("short_pack_far_offshore"));
  const auto longer = test::simulated(test::shipped("long_pack_far_offshore"));
  CHECK(water_issued(brief).total_L == 0);
  // The same until the first issue.
  CHECK(worst_deficit_pct(brief, 24) == doctest::Approx(worst_deficit_pct(longer, 24)).epsilon(0.02));
  // 1.5 L is 1.8 to 2.4 % of 84 to 62 kg; part of it is passed again, and food takes water: at least a
  // quarter of the least of these is left as a difference, and not more than the whole of the largest and
  // half as much again.
  const double difference_pct = worst_deficit_pct(brief, 90) - worst_deficit_pct(longer, 90);
  MESSAGE("worst water deficit at 90 h: " << worst_deficit_pct(brief, 90) << " % without, "
                                          << worst_deficit_pct(longer, 90) << " % with the longer pack");
  CHECK(difference_pct > 0.45);
  CHECK(difference_pct < 3.6);
  for (std::size_t p = 0; p < brief.fates.size(); ++p) {
    CAPTURE(p);
    REQUIRE(brief.fates[p].able_until_s);
    CHECK(brief.fates[p].able_cause == system::Limit::able_water_deficit);
    CHECK(longer.fates[p].able_until_s.value_or(longer.horizon_s) > *brief.fates[p].able_until_s);
  }
}
