// What the size of the raft does to the same people: warmth, and whose water lasts.
#include <cmath>
#include <string>

#include "bide/core/units.hpp"
#include "scenarios/shipped.hpp"

using namespace bide;

namespace {

test::Json night_in(const std::string& raft, double canopy, double leakage) {
  auto json = test::shipped("four_in_a_right_sized_raft_equal_stores");
  json["duration_h"] = 10;
  json["weather"]["wind_speed_m_s"] = 0.5;
  json["raft"] = {{"kind", raft}, {"canopy_heat_loss_position", canopy}, {"leakage_position", leakage}};
  return json;
}

// Means over hours 6.5 to 9.5: settled after the hour at which people fall asleep, and dark to the end.
struct Night {
  double inside_degC = 0, outside_degC = 0, in_W = 0, canopy_W = 0, out_W = 0;
  double canopy_W_K() const { return canopy_W / (inside_degC - outside_degC); }
};

Night night(const test::Json& json) {
  const auto run = test::simulated(json);
  const auto mean = [&](const std::vector<double>& column) { return test::mean_of(run, column, 6.5, 9.5); };
  CHECK(mean(run.irradiance_W_m2) == 0);
  Night n;
  n.inside_degC = mean(run.inside_air_degC);
  n.outside_degC = mean(run.outside_air_degC);
  // Vapour that condenses on the canopy gives up 2.47 MJ/kg there (steam tables, at 15 C).
  constexpr double latent_J_kg = 2.47e6, span_s = 3 * hour_s;
  const double condensed_kg =
      run.condensate_L_total[test::row_at(run, 9.5)] - run.condensate_L_total[test::row_at(run, 6.5)];
  n.in_W = mean(run.cabin_from_bodies_W) + mean(run.cabin_from_sun_W) + condensed_kg * latent_J_kg / span_s;
  n.canopy_W = mean(run.cabin_to_outside_through_canopy_W);
  n.out_W = n.canopy_W + mean(run.cabin_to_sea_W) + mean(run.cabin_to_outside_by_air_W);
  return n;
}

// Crew's mean of what each is last seen able; the horizon where that was not reached.
double mean_able_h(const timeline::Timeline& run) {
  double sum = 0;
  for (const auto& fate : run.fates) sum += fate.able_until_s.value_or(run.horizon_s) / hour_s;
  return sum / static_cast<double>(run.fates.size());
}

}  // namespace

TEST_CASE("four people on a calm 10 C night are warmer in a four- than in an eight-person raft") {
  double least_K = 100, most_K = -100;
  for (const double canopy : {0.0, 0.5, 1.0})
    for (const double leakage : {0.0, 0.5, 1.0}) {
      CAPTURE(canopy);
      CAPTURE(leakage);
      const Night four = night(night_in("offshore_4", canopy, leakage));
      const Night eight = night(night_in("offshore_8", canopy, leakage));
      const double warmer_K = four.inside_degC - eight.inside_degC;
      CHECK(warmer_K > 0);
      // More canopy, more watts per kelvin: the floor is twice as large, so the canopy is larger.
      CHECK(eight.canopy_W_K() > four.canopy_W_K());
      // What comes in goes out: nothing stores much over these hours.
      for (const Night& n : {four, eight}) CHECK(std::abs(n.in_W - n.out_W) < 0.05 * n.in_W);
      least_K = std::min(least_K, warmer_K);
      most_K = std::max(most_K, warmer_K);
    }
  MESSAGE("warmer in the right-sized raft by " << least_K << " to " << most_K
                                               << " K over the unmeasured ranges of canopy and leakage");
}

// The trial: 16-person raft, 135 min, "no difference in responses between 2 and 6 occupants"; standard
// deviations of skin temperature 0.7, 1.0, 0.8 and 1.1 C in its four conditions, of the fall in rectal
// temperature 0.3 to 0.5 C, of metabolic rate 8.4 to 9.6 W (abstract, Environmental Ergonomics XII, 2007).
// Sea 16 C and air 19 C are from memory; how far the entrances stood open, how leaky the raft was and how
// many took part is not known. "No difference" means less than a trial could tell: with eight people a group
// (as in a sister trial; an assumption) and the root mean square of those deviations, 0.91 K and 9 W, the
// least significant difference is 2.14 x s x sqrt(2/8) = 0.97 K and 9.6 W (t of 14 degrees of freedom, 5 %,
// two-sided). The model misses the null finding: 1.8 K and 16 W for the raft as it comes, 1.2 K and 10 W at
// the open and leaky end of what is not known, and validation/raft_people keeps the misses. What is held to
// here is that opening and leakage account for part of it, and that core temperature, which the trial
// measured best, differs by less than it could tell.
TEST_CASE("two or six people in a sixteen-person raft: openings and leaks bring them nearer to each other") {
  struct Difference {
    double skin_K, core_K, metabolic_W;
  };
  const auto trial = [](std::size_t persons, double leakage, double open) {
    auto json = test::shipped("four_in_a_right_sized_raft_equal_stores");
    json["duration_h"] = 2.25;
    json["output_interval_min"] = 5;
    json["weather"] = {{"kind", "constant"},    {"air_temperature_degC", 19}, {"water_temperature_degC", 16},
                       {"wind_speed_m_s", 0.3}, {"cloud_cover_fraction", 1},  {"wave_height_m", 0}};
    json["raft"] = {{"kind", "solas_16"}, {"leakage_position", leakage}};
    json["routine"] = {{"opening_fraction_day", open}, {"opening_fraction_night", open}};
    const test::Json person = {{"sex", "male"},
                               {"age_years", 30},
                               {"height_m", 1.78},
                               {"mass_kg", 80},
                               {"clothing", "temperate_sailing"}};
    json["crew"] = test::Json::array();
    for (std::size_t i = 0; i < persons; ++i) json["crew"].push_back(person);
    return test::simulated(json);
  };
  const auto differs = [&](double leakage, double open) {
    const auto two = trial(2, leakage, open), six = trial(6, leakage, open);
    const auto last = [&](auto column) {
      return std::abs((six.persons[0].*column).back() - (two.persons[0].*column).back());
    };
    return Difference{last(&timeline::PersonSeries::mean_skin_degC), last(&timeline::PersonSeries::core_degC),
                      std::abs(test::mean_of(six, six.persons[0].metabolic_W, 0, 2.25) -
                               test::mean_of(two, two.persons[0].metabolic_W, 0, 2.25))};
  };
  const Difference shut = differs(0.5, 0.05), open = differs(1, 1);
  MESSAGE("six less two, shut and middling: skin "
          << shut.skin_K << " K, core " << shut.core_K << " K, metabolic rate " << shut.metabolic_W
          << " W; open and leaky: " << open.skin_K << ", " << open.core_K << ", " << open.metabolic_W);
  CHECK(open.core_K < 0.3);
  CHECK(open.skin_K < shut.skin_K);
  // No difference was found: the least printed spread is 8.4 W.
  CHECK(open.metabolic_W < 8.4);
  CHECK(shut.metabolic_W < 8.4);
}

// Each raft with its own pack of 1.5 L a person of capacity: four people have 1.5 L each in a raft for four,
// 8 x 1.5 / 4 = 3 L each in a raft for eight.
TEST_CASE("in the warm the oversized raft's water keeps people able longer") {
  const auto warm = [](const std::string& raft) {
    auto json = test::shipped("long_pack_far_offshore");
    json["duration_h"] = 336;
    json["output_interval_min"] = 60;
    json["weather"]["air_temperature_degC"] = 24;
    json["weather"]["water_temperature_degC"] = 24;
    json["raft"] = {{"kind", raft}};
    return test::simulated(json);
  };
  const auto four = warm("offshore_4"), eight = warm("offshore_8");
  CHECK(four.water_L.front() / 4 == doctest::Approx(1.5).epsilon(1e-9));
  CHECK(eight.water_L.front() / 4 == doctest::Approx(3).epsilon(1e-9));
  MESSAGE("able on average until " << mean_able_h(four) << " h in the four-, " << mean_able_h(eight)
                                   << " h in the eight-person raft");
  for (const auto& fate : four.fates) {
    REQUIRE(fate.able_until_s);
    CHECK(fate.able_cause == system::Limit::able_water_deficit);
  }
  CHECK(mean_able_h(eight) > mean_able_h(four));
}

TEST_CASE("in the cold the right-sized raft keeps people able longer") {
  const auto cold = [](const std::string& raft) {
    auto json = test::shipped("cold_sea_wet_floor_flat");
    json["duration_h"] = 72;
    json["weather"]["air_temperature_degC"] = -6;
    json["weather"]["water_temperature_degC"] = 1;
    json["weather"]["wind_speed_m_s"] = 12;
    json["raft"] = {{"kind", raft}};
    json["stores"] = {{"pack", "iso_9650_more_than_24_h"}};
    for (auto& person : json["crew"]) person["clothing"] = "shorts", person["thermal_protective_aid"] = false;
    return test::simulated(json);
  };
  const auto four = cold("offshore_4"), eight = cold("offshore_8");
  MESSAGE("able on average until " << mean_able_h(four) << " h in the four-, " << mean_able_h(eight)
                                   << " h in the eight-person raft");
  for (const auto& fate : eight.fates) {
    REQUIRE(fate.able_until_s);
    CHECK(fate.able_cause == system::Limit::able_core_low);
  }
  CHECK(mean_able_h(four) > mean_able_h(eight));
}
