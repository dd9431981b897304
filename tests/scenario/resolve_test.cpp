// Defaults: each against a hand calculation or the published number it stands for.
#include <doctest/doctest.h>

#include <algorithm>

#include "bide/scenario/resolve.hpp"
#include "scenario/support.hpp"

using namespace bide::scenario;
using doctest::Approx;
using nlohmann::json;

namespace {
bool was_filled(const ValidScenario& valid, const std::string& pointer) {
  return std::find(valid.defaults.begin(), valid.defaults.end(), pointer) != valid.defaults.end();
}
}  // namespace

TEST_CASE("body fat from mass, height, sex and age") {
  // By hand: BMI = 75/1.75^2 = 24.4898; 61.93 - 680.06/24.4898 - 12.05 + 0.08*35
  //        = 61.93 - 27.7691 - 12.05 + 2.8 = 24.911 %
  CHECK(default_body_fat_pct(Sex::male, 35, 1.75, 75) == Approx(24.911).epsilon(1e-4));
  CHECK(default_body_fat_pct(Sex::female, 35, 1.75, 75) == Approx(36.961).epsilon(1e-4));
  // BMI 11: 61.93 - 61.82 - 12.05 + 1.6 < 0, held to 4
  CHECK(default_body_fat_pct(Sex::male, 20, 2.0, 44) == 4);
  // BMI 250/1.44 = 173.6: 61.93 - 3.92 + 0.08*80 = 64.4, held to 60
  CHECK(default_body_fat_pct(Sex::female, 80, 1.2, 250) == 60);
}

TEST_CASE("aerobic capacity from sex and age") {
  // Registry medians, 20-29 and 70-79 (Kaminsky 2015).
  CHECK(default_vo2max_mL_kg_min(Sex::male, 25) == Approx(48.0));
  CHECK(default_vo2max_mL_kg_min(Sex::male, 75) == Approx(24.4));
  CHECK(default_vo2max_mL_kg_min(Sex::female, 25) == Approx(37.6));
  CHECK(default_vo2max_mL_kg_min(Sex::female, 75) == Approx(18.3));
  // Half way, 50 years: (48.0 + 24.4)/2
  CHECK(default_vo2max_mL_kg_min(Sex::male, 50) == Approx(36.2));
  // Held below 20: 48 + 5*0.472 = 50.36, and above 80: 24.4 - 5*0.472 = 22.04
  CHECK(default_vo2max_mL_kg_min(Sex::male, 19) == Approx(50.36));
  CHECK(default_vo2max_mL_kg_min(Sex::male, 95) == Approx(22.04));
  // French children (PMID 11887767, abstract): boys 47, girls 40; the same for the kilogram at every age.
  CHECK(default_vo2max_mL_kg_min(Sex::male, 8) == Approx(47));
  CHECK(default_vo2max_mL_kg_min(Sex::female, 15) == Approx(40));
}

TEST_CASE("float-free release: rise, inflation and swim") {
  // 3 m at 1 m/s is 0.05 min; inflation 1 min (LSA Code 4.2.2); swim 10 min
  CHECK(float_free_minutes(3, 1, 10) == Approx(11.05));
}

TEST_CASE("boarding defaults follow the kind") {
  json scenario = test::minimal();
  CHECK(test::valid(scenario).scenario.boarding.minutes_in_water == 0);
  CHECK(test::valid(scenario).scenario.boarding.wet_fraction == 0);
  scenario["boarding"]["kind"] = "swim";
  CHECK(test::valid(scenario).scenario.boarding.minutes_in_water == 10);
  CHECK(test::valid(scenario).scenario.boarding.wet_fraction == 1);
  scenario["boarding"]["kind"] = "float_free";
  CHECK(test::valid(scenario).scenario.boarding.release_depth_m == 3.0);
  CHECK(test::valid(scenario).scenario.boarding.minutes_in_water == Approx(11.05));
  scenario["boarding"]["kind"] = "none";
  scenario.erase("raft");
  const ValidScenario none = test::valid(scenario);
  CHECK(none.scenario.boarding.minutes_in_water == 24 * 60);
  CHECK(none.raft_kind == nullptr);
}

TEST_CASE("raft sizes come from the catalogue, and from 0.372 m2 a person when the capacity is changed") {
  json scenario = test::minimal();
  const ValidScenario four = test::valid(scenario);
  CHECK(four.scenario.raft->floor_area_m2 == Approx(4 * 0.372));
  CHECK(four.scenario.raft->floor == FloorKind::inflated);
  scenario["raft"]["capacity_persons"] = 5;
  CHECK(test::valid(scenario).scenario.raft->floor_area_m2 == Approx(5 * 0.372));
  scenario["raft"]["floor_area_m2"] = 2.5;
  const ValidScenario stated = test::valid(scenario);
  CHECK(stated.scenario.raft->floor_area_m2 == 2.5);
  CHECK_FALSE(was_filled(stated, "/raft/floor_area_m2"));
  scenario["raft"]["canopy"] = "none";
  CHECK(test::valid(scenario).scenario.raft->canopy_height_m == 0);
  CHECK(test::valid(scenario).scenario.raft->rain_catch_area_m2 == 0);
}

TEST_CASE("exactly what was left out is marked as default") {
  json scenario = test::minimal();
  CHECK(was_filled(test::valid(scenario), "/weather/rain_mm_h"));
  CHECK(was_filled(test::valid(scenario), "/crew/0/clothing"));
  CHECK(was_filled(test::valid(scenario), "/limits/able_core_low_degC"));
  CHECK_FALSE(was_filled(test::valid(scenario), "/crew/0/mass_kg"));
  scenario["weather"]["rain_mm_h"] = 0;
  scenario["limits"]["able_core_low_degC"] = 33;
  CHECK_FALSE(was_filled(test::valid(scenario), "/weather/rain_mm_h"));
  CHECK_FALSE(was_filled(test::valid(scenario), "/limits/able_core_low_degC"));
}

TEST_CASE("limits left out take the sourced values") {
  const Limits limits = test::valid(test::minimal()).scenario.limits;
  CHECK(limits.able_core_low_degC == 33.0);          // between stages, judgement
  CHECK(limits.unconscious_core_degC == 30.0);       // Hayward 1975, second hand
  CHECK(limits.lethal_core_low_degC == 24.0);        // Swiss stage IV
  CHECK(limits.able_water_deficit_pct == 10.0);      // Adolph
  CHECK(limits.lethal_water_deficit_pct == 15.0);    // Adolph, hot air
  CHECK(limits.lethal_osmolality_mOsm_kg == 430.0);  // from memory
  // Plasma sodium of 120 and 110 mmol/L: osmolality is twice that and 10 of glucose and urea.
  CHECK(limits.able_osmolality_low_mOsm_kg == 250.0);
  CHECK(limits.lethal_osmolality_low_mOsm_kg == 230.0);
  CHECK(limits.able_co2_ppm == 40000.0);     // NIOSH IDLH
  CHECK(limits.lethal_co2_ppm == 100000.0);  // NIOSH
}

TEST_CASE("the desalinator is worked two hours a day if one is aboard") {
  json scenario = test::minimal();
  CHECK(test::valid(scenario).scenario.routine.desalinator_h_per_day == 0);
  scenario["stores"]["extra"] = {{{"kind", "hand_desalinator_small"}}};
  CHECK(test::valid(scenario).scenario.routine.desalinator_h_per_day == 2);
  scenario["stores"]["extra"][0]["expired"] = true;
  CHECK(test::valid(scenario).scenario.routine.desalinator_h_per_day == 0);
}

TEST_CASE("weather from a file keeps its own quantities") {
  json scenario = test::minimal();
  scenario["weather"] = {{"kind", "csv"}, {"file", "minimal.json"}};  // only its existence is looked at here
  const auto weather = [&] { return std::get<FileWeather>(test::valid(scenario).weather); };
  CHECK(weather().kind == WeatherKind::csv);
  CHECK(weather().file == "minimal.json");
  CHECK(weather().longest_gap_h == 3);
  CHECK(weather().anemometer_height_m == 10);
  CHECK(weather().fallback == WeatherFallback{});
  scenario["weather"]["kind"] = "ndbc";
  CHECK(weather().anemometer_height_m == 5);
}

TEST_CASE("steady weather and a daily cycle hold what they need") {
  json scenario = test::minimal();
  scenario["weather"] = {{"kind", "constant"},
                         {"air_temperature_degC", 9},
                         {"water_temperature_degC", 11},
                         {"wind_speed_m_s", 7},
                         {"wave_height_m", 2}};
  const auto steady = std::get<SteadyWeather>(test::valid(scenario).weather);
  CHECK(steady == SteadyWeather{9, 11, 80, 7, 0.7, 0, 1013.25, 2, std::nullopt});
  scenario["weather"]["kind"] = "daily_cycle";
  scenario["weather"]["air_temperature_swing_K"] = 1.5;
  CHECK(std::get<DailyWeather>(test::valid(scenario).weather) == DailyWeather{steady, 1.5, 14});
}

TEST_CASE("defaults are in force before the rules are checked") {
  json scenario = test::minimal();
  scenario["raft"] = {{"kind", "open_1"}, {"canopy", "one_skin"}};  // of a kind that has no height
  CHECK(test::complaints(scenario) ==
        std::vector<std::string>{"/raft/canopy_height_m: found 0 m; allowed at least 0.4 m with a canopy"});
  scenario = test::minimal();
  scenario["boarding"]["kind"] = "swim";
  scenario["duration_h"] = 0.1;
  scenario["output_interval_min"] = 1;
  CHECK(test::complaints(scenario) ==
        std::vector<std::string>{"/boarding/minutes_in_water: found 10 min, longer than the duration of 0.1 "
                                 "h; allowed at most 6"});
}

TEST_CASE("start time in seconds since 1970") {
  // 2031-02-03T18:00:00Z: 61 years with 15 leap days (1972..2028) = 22280 d; + 31 + 2 = 22313 d; x 86400 +
  // 64800
  CHECK(test::valid(test::minimal()).start_unix_s == 22313.0 * 86400 + 64800);
}
