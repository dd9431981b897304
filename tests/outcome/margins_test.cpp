#include "bide/outcome/margins.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "support/synthetic_timeline.hpp"

using namespace bide;

namespace {

double used(const std::vector<outcome::Margin>& all, system::Limit limit, std::size_t person) {
  const auto at =
      std::find_if(all.begin(), all.end(), [&](const outcome::Margin& each) { return each.limit == limit; });
  REQUIRE(at != all.end());
  return at->used_fraction.at(person);
}

}  // namespace

TEST_CASE("a margin is the most of the way from a well person to the limit, while alive") {
  const scenario::ValidScenario scenario = test::valid_scenario(1, true);
  timeline::Timeline timeline = test::synthetic_timeline(1, true);
  outcome::Outcome outcome = outcome::read_outcome(timeline, scenario);
  const scenario::Limits& limits = scenario.scenario.limits;
  auto& person = timeline.persons[0];
  const std::size_t n = timeline.time_s.size();
  outcome.persons[0].alive.at_s = timeline.time_s[n / 2];

  person.core_degC.assign(n, 37);
  person.core_degC[3] = 37 - (37 - limits.able_core_low_degC) / 4;  // a quarter of the way down
  person.core_degC[n - 1] = 20;                                     // after death: not counted
  person.water_deficit_pct.assign(n, 0);
  person.water_deficit_pct[5] = 1.5 * limits.able_water_deficit_pct;  // past it
  const auto all = outcome::margins(timeline, outcome, scenario);
  CHECK(used(all, system::Limit::able_core_low, 0) == doctest::Approx(0.25));
  CHECK(used(all, system::Limit::able_core_high, 0) == 0);
  CHECK(used(all, system::Limit::able_water_deficit, 0) == doctest::Approx(1.5));
}

TEST_CASE("margins of hunger go from what the person had at the start") {
  const scenario::ValidScenario scenario = test::valid_scenario(1, true);
  timeline::Timeline timeline = test::synthetic_timeline(1, true);
  auto& person = timeline.persons[0];
  const std::size_t n = timeline.time_s.size();
  // From 21 kg of fat to 6: 15 of the 20 kg to the limit of 1 kg (constants/fuel.hpp).
  person.fat_kg.assign(n, 21);
  person.fat_kg[2] = 6;
  // From 10 kg of protein to 9: 10 % of it is used.
  person.protein_kg.assign(n, 10);
  person.protein_kg[2] = 9;
  const auto all = outcome::margins(timeline, outcome::read_outcome(timeline, scenario), scenario);
  CHECK(used(all, system::Limit::lethal_fat, 0) == doctest::Approx(0.75));
  CHECK(used(all, system::Limit::lethal_protein, 0) ==
        doctest::Approx(10 / constants::lethal_protein_loss_pct.value));
}

TEST_CASE("without a cabin there is no margin of its air") {
  const scenario::ValidScenario scenario = test::valid_scenario(1, false);
  timeline::Timeline timeline = test::synthetic_timeline(1, false);
  timeline.co2_ppm.clear();
  const auto all = outcome::margins(timeline, outcome::read_outcome(timeline, scenario), scenario);
  CHECK(std::none_of(all.begin(), all.end(),
                     [](const auto& each) { return each.limit == system::Limit::able_co2; }));
}
