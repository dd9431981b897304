#include "bide/study/questions/levers.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "bide/core/units.hpp"
#include "bide/scenario/patch.hpp"

using namespace bide;
using study::LeverTried;

namespace {

using Changes = std::vector<std::pair<const char*, scenario::Value>>;

study::LeversTried tried(const std::string& name, const Changes& changes = {}) {
  const std::string folder = BIDE_SOURCE_DIR "/scenarios";
  scenario::Validated validated = scenario::validate_file(folder + "/" + name);
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(validated));
  scenario::Node document = *std::get<scenario::ValidScenario>(validated).document;
  for (const auto& [pointer, value] : changes) REQUIRE(scenario::put(document, pointer, value));
  validated = scenario::validate_document(document, name, folder);
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(validated));
  auto result = study::try_levers(std::get<scenario::ValidScenario>(validated));
  REQUIRE(std::holds_alternative<study::LeversTried>(result));
  return std::get<study::LeversTried>(result);
}

const LeverTried& of(const study::LeversTried& levers, const std::string& key) {
  const auto at = std::find_if(levers.tried.begin(), levers.tried.end(),
                               [&](const LeverTried& each) { return each.lever->key == key; });
  REQUIRE(at != levers.tried.end());
  return *at;
}

// Twelve people in a calm with the entrance a third open, who do not open it further for air.
const Changes calm = {{"/weather/wind_speed_m_s", 0.2},
                      {"/weather/air_temperature_degC", 14.0},
                      {"/weather/water_temperature_degC", 15.0},
                      {"/routine/open_above_co2_ppm", 100000.0},
                      {"/routine/opening_fraction_day", 0.3},
                      {"/routine/opening_fraction_night", 0.3},
                      {"/weather/wave_height_m", {}},
                      {"/weather/rain_mm_h", {}},
                      {"/raft/leakage_position", {}}};

}  // namespace

TEST_CASE("a gain is the hours between two times, and a bound where one is beyond the horizon") {
  const double h = 100 * hour_s;
  const study::Gain both = study::gain_of(30 * hour_s, 50 * hour_s, h);
  CHECK(both.hours == doctest::Approx(20));
  CHECK_FALSE(both.at_least);
  CHECK(both.distinguishable);
  const study::Gain beyond = study::gain_of(30 * hour_s, {}, h);
  CHECK(beyond.hours == doctest::Approx(70));
  CHECK(beyond.at_least);
  CHECK(study::gain_of({}, 30 * hour_s, h).hours == doctest::Approx(-70));
  CHECK(study::gain_of({}, {}, h).unreached);
  CHECK_FALSE(study::gain_of(50 * hour_s, 51 * hour_s, h).distinguishable);
}

// Frost, entrances open, and shivering that gives out: cold ends it within a day.
const Changes bitter = {{"/model/shivering_endurance", std::string("gives_out")},
                        {"/weather/air_temperature_degC", -5.0},
                        {"/weather/water_temperature_degC", 0.0},
                        {"/routine/opening_fraction_day", 1.0},
                        {"/routine/opening_fraction_night", 1.0}};

// More of the same lever gains no less, and the pair no less than its parts. A bucket holds ten litres more
// of a rain that the canopy alone cannot keep.
TEST_CASE("doses and pairs of water") {
  const auto wet = tried("tropics_little_water.json", {{"/weather/rain_mm_h", 0.5}});
  const auto margin = [&](const char* key) {
    const LeverTried& each = of(wet, key);
    REQUIRE(each.state == LeverTried::State::tried);
    return each.figures.worst_water_deficit_pct;
  };
  CHECK(margin("litres_2_each") <= margin("litre_each"));
  CHECK(margin("litres_4_each") <= margin("litres_2_each"));
  CHECK(margin("litres_4_each_and_rain_bucket") <= margin("litres_4_each"));
  CHECK(margin("litres_4_each_and_rain_bucket") <= margin("rain_bucket"));
  CHECK(of(wet, "rain_bucket").burden.items == "1 x bucket, 10 L, with a lid");
  CHECK(of(tried("tropics_little_water.json", {{"/weather/rain_mm_h", 0.0}}), "rain_bucket").reason ==
        "no rain is in the weather");
}

TEST_CASE("a lever that helps in the cold and harms in the heat is shown to") {
  const LeverTried cold = of(tried("cold_sea_wet_floor_flat.json", bitter), "protective_aids");
  CHECK(study::direction(cold) == 1);
  // Two kelvin more than the scenario has: water loss ends ability within the time followed.
  const auto heat = tried("tropics_little_water.json", {{"/weather/air_temperature_degC", 29.5}});
  CHECK(study::direction(of(heat, "protective_aids")) == -1);
  CHECK(of(heat, "protective_aids").gained.able.at_least);
  CHECK(of(heat, "damp_clothes_in_heat").reason == "already done");
}

TEST_CASE("levers stand by what they gain, the withheld and the senseless behind") {
  const auto levers = tried("tropics_little_water.json");
  REQUIRE(levers.tried.size() == scenario::levers().size());
  for (std::size_t i = 1; i < levers.tried.size(); ++i) {
    const LeverTried &a = levers.tried[i - 1], &b = levers.tried[i];
    CHECK(a.state >= b.state);
    if (b.state == LeverTried::State::tried && a.gained.able.distinguishable && b.gained.able.distinguishable)
      CHECK(a.gained.able.hours >= b.gained.able.hours);
  }
  // Twelve litres or more, against two litres in all.
  const std::string& first = levers.tried.front().lever->key;
  CHECK_MESSAGE((first == "desalinator" || first == "litres_4_each"), first);
}

TEST_CASE("a lever whose carbon dioxide may pass the limit is withheld, with the range") {
  const auto levers = tried("twelve_in_a_gale.json", calm);
  const LeverTried& shut = of(levers, "entrance_nearly_shut_at_night");
  CHECK(shut.state == LeverTried::State::withheld);
  CHECK(shut.co2_high_ppm > 40000);  // the limit of being able, constants/limits.hpp
  CHECK(shut.co2_low_ppm < shut.co2_high_ppm);
  CHECK(levers.base_co2_high_ppm < 40000);
  CHECK(shut.reason.find("carbon dioxide reaches") != std::string::npos);
  // In wind it is not.
  const LeverTried windy = of(tried("four_in_an_oversized_raft.json"), "entrance_nearly_shut_at_night");
  CHECK(windy.state == LeverTried::State::tried);
}

TEST_CASE("at an end of the unmeasured ranges both sides of a gain stand at that end") {
  const auto open = tried("four_in_an_oversized_raft.json", {{"/duration_h", 24.0}});
  for (const double position : {0.0, 1.0}) {
    // Three errors of the model together at their end: each at 0.171 of its range, and heat made against
    // them.
    const double part = position == 0 ? 0.171 : 1 - 0.171;
    const auto there =
        tried("four_in_an_oversized_raft.json", {{"/duration_h", 24.0},
                                                 {"/raft/canopy_heat_loss_position", position},
                                                 {"/raft/leakage_position", position},
                                                 {"/model/heat_made_position", 1 - part},
                                                 {"/model/tissue_conductance_position", part},
                                                 {"/model/clothing_conductance_position", part}});
    for (const char* key : {"protective_aids", "foam_pads"}) {
      const LeverTried &at_end = of(open, key), &as_stated = of(there, key);
      REQUIRE(at_end.ends.size() == 2);
      CHECK(at_end.ends[position == 0 ? 0 : 1].margin == doctest::Approx(as_stated.gained.margin));
      CHECK(at_end.ends[position == 0 ? 0 : 1].able.hours == doctest::Approx(as_stated.gained.able.hours));
      // With the most heat lost a limit is reached within the day, and the gain is in hours.
      CHECK((as_stated.gained.margin != 0 || as_stated.gained.able.hours != 0));
      // What is stated is not moved: nothing is left to be unsure of.
      for (const study::Gains& end : as_stated.ends) CHECK(end.margin == as_stated.gained.margin);
    }
    CHECK(of(open, "protective_aids").gained.margin != of(there, "protective_aids").gained.margin);
  }
  // In the water there is no canopy, but the model errs there too.
  for (const LeverTried& each : tried("immersion_only.json").tried)
    if (each.state == LeverTried::State::tried) CHECK(each.ends.size() == 2);
}
