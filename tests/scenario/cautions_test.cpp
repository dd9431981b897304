// Cautions: each is given when it should be, and only then.
#include <doctest/doctest.h>

#include "scenario/support.hpp"

using namespace bide::scenario;
using nlohmann::json;

namespace {

json calm_case() {
  json scenario = test::minimal();
  scenario["stores"]["pack"] = "iso_9650_more_than_24_h";
  return scenario;
}

// Where the cautions of a scenario point.
std::vector<std::string> places(const json& scenario) {
  std::vector<std::string> out;
  for (const Diagnostic& each : test::valid(scenario).cautions) out.push_back(each.pointer);
  return out;
}
using Places = std::vector<std::string>;

}  // namespace

TEST_CASE("an ordinary scenario has no caution") {
  CHECK(places(calm_case()).empty());
}

TEST_CASE(
    "entrances left by default as open as in mild weather are named in the cold, with what new scenarios "
    "take") {
  const auto at = [](double air_degC) {
    json scenario = calm_case();
    scenario["weather"]["air_temperature_degC"] = air_degC;
    return scenario;
  };
  const Places opening{"/routine/opening_fraction_day"};
  CHECK(places(at(4)) == opening);
  CHECK(places(at(9.9)) == opening);
  CHECK(places(at(10)).empty());
  json stated = at(4);
  stated["routine"]["opening_fraction_day"] = 0.3;  // then somebody has decided so
  CHECK(places(stated).empty());
  const Diagnostic said = test::valid(at(4)).cautions.front();
  // A twentieth at 10 degC and below, as at night: common practice, no source.
  CHECK(said.message.find("0.3 of the entrances") != std::string::npos);
  CHECK(said.message.find("new scenarios take 0.05") != std::string::npos);
  CHECK(said.message.find("carbon dioxide is higher") != std::string::npos);  // never without its price
}

TEST_CASE("overload, odd packs, no water") {
  json scenario = calm_case();
  scenario["crew"] = std::vector<json>(5, scenario["crew"][0]);
  CHECK(places(scenario) == Places{"/crew"});
  scenario = calm_case();
  scenario["stores"]["pack"] = "solas_a";  // carried from 6 persons on (LSA Code 4.1.2.1)
  CHECK(places(scenario) == Places{"/stores/pack"});
  scenario["stores"]["pack"] = "none";
  CHECK(places(scenario) == Places{"/stores/pack", "/stores"});
  scenario["stores"]["extra"] = {{{"kind", "water_L"}}};
  CHECK(places(scenario) == Places{"/stores/pack"});
  scenario = calm_case();
  scenario["stores"]["extra"] = {{{"kind", "water_L"}, {"expired", true}}};
  CHECK(places(scenario) == Places{"/stores/extra"});
}

TEST_CASE("people outside what was measured") {
  const auto with = [](const char* key, const json& value) {
    json scenario = calm_case();
    scenario["crew"][0][key] = value;
    return places(scenario);
  };
  CHECK(with("age_years", 17) == Places{"/crew/0/age_years"});
  CHECK(with("age_years", 18).empty());
  CHECK(with("age_years", 60).empty());
  CHECK(with("age_years", 61) == Places{"/crew/0/age_years"});
  CHECK(with("injured", true) == Places{"/crew/0/injured"});
  CHECK(with("blood_loss_pct", 20) == Places{"/crew/0/injured", "/crew/0/blood_loss_pct"});
  CHECK(with("burned_pct", 5) == Places{"/crew/0/injured", "/crew/0/burned_pct"});
  CHECK(with("hands", "useless") == Places{"/crew/0/injured", "/crew/0/hands"});
  CHECK(with("fit_for_work", false) == Places{"/crew/0/injured", "/crew/0/fit_for_work"});
  CHECK(with("fever_K", 1) == Places{"/crew/0/fever_K"});
  CHECK(with("body_fat_pct", 5) == Places{"/crew/0/body_fat_pct"});
  CHECK(with("body_fat_pct", 50) == Places{"/crew/0/body_fat_pct"});
  CHECK(with("blood_alcohol_mg_dL", 50) == Places{"/crew/0/blood_alcohol_mg_dL"});
}

TEST_CASE("body fat that leaves a lean mass nobody has is doubted where it is stated") {
  const auto with = [](double age_years, double mass_kg, const json& fat_pct) {
    json scenario = calm_case();
    json& person = scenario["crew"][0];
    person["age_years"] = age_years;
    person["height_m"] = 1.75, person["mass_kg"] = mass_kg;
    if (!fat_pct.is_null()) person["body_fat_pct"] = fat_pct;
    std::vector<std::string> out;
    for (const Diagnostic& each : test::valid(scenario).cautions)
      if (each.message.find("is not fat") != std::string::npos) out.push_back(each.pointer);
    return out;
  };
  const Places here{"/crew/0/body_fat_pct"};
  // 3.0625 m2: 122.5 kg is 40 kg/m2, of which 97 % are 38.8 and 79.9 % are 31.96.
  CHECK(with(35, 122.5, 3) == here);
  CHECK(with(35, 122.5, 20.1).empty());
  // 52.1 kg is 17.01 kg/m2, of which 58 % are 9.87; without a stated fat it follows from mass and height.
  CHECK(with(35, 52.1, 42) == here);
  CHECK(with(35, 52.1, 41).empty());
  CHECK(with(35, 122.5, nullptr).empty());
  CHECK(with(12, 52.1, 42).empty());  // recalled of adults only
}

TEST_CASE("weather beyond what rafts are made for, and shut openings") {
  const auto with = [](const char* group, const char* key, double value) {
    json scenario = calm_case();
    scenario[group][key] = value;
    return places(scenario);
  };
  CHECK(with("weather", "water_temperature_degC", -1.5) == Places{"/weather/water_temperature_degC"});
  CHECK(with("weather", "water_temperature_degC", 31) == Places{"/weather/water_temperature_degC"});
  CHECK(with("weather", "air_temperature_degC", -31) ==
        Places{"/weather/air_temperature_degC", "/routine/opening_fraction_day"});
  CHECK(with("routine", "minimum_opening_m2", 0) == Places{"/routine/minimum_opening_m2"});
  CHECK(with("routine", "minimum_opening_m2", 0.6) == Places{"/routine/minimum_opening_m2"});
}

TEST_CASE("losses in the first minutes are doubted in warm water, and where nobody comes into it") {
  const auto with = [](const char* boarding, double sea_degC) {
    json scenario = calm_case();
    scenario["boarding"]["kind"] = boarding;
    scenario["weather"]["water_temperature_degC"] = sea_degC;
    scenario["uncertain"]["lost_in_first_minutes"] = {{"low", 0.05}, {"high", 0.2}};
    return scenario;
  };
  const Places plain{"/uncertain"}, doubted{"/uncertain", "/uncertain/lost_in_first_minutes"};
  CHECK(places(with("swim", 12)) == plain);
  CHECK(places(with("swim", 24.9)) == plain);
  CHECK(places(with("swim", 25)) == doubted);
  CHECK(places(with("dry", 12)) == doubted);
  json drawn = with("dry", 12);
  drawn["uncertain"]["launch"] = {{"way", "by_hand"}};
  CHECK(places(drawn) == plain);
  json lost = calm_case();
  lost["boarding"]["kind"] = "swim";
  lost["crew"][0]["lost_in_first_minutes"] = true;
  CHECK(places(lost) == Places{"/crew/0/lost_in_first_minutes"});
}

TEST_CASE("the pack of a raft that is drawn") {
  // Usual packs: scenarios/catalogue/rafts.json.
  const auto words = [](const char* pack, const json& uncertain) {
    json scenario = test::minimal();
    scenario["stores"]["pack"] = pack;
    scenario["uncertain"] = uncertain;
    std::vector<std::string> out;
    for (const Diagnostic& each : test::valid(scenario).cautions)
      if (each.message.rfind("another raft", 0) == 0) out.push_back(each.message);
    return out;
  };
  using Words = std::vector<std::string>;
  const auto drawn = [](json kinds) {
    return json{{"inputs", {{"/raft/kind", {{"kind", "discrete"}, {"values", std::move(kinds)}}}}}};
  };
  const char* usual = "iso_9650_more_than_24_h";
  CHECK(words(usual, drawn({"offshore_4", "offshore_8"})).empty());
  CHECK(words(usual, drawn({"offshore_4", "solas_6", "solas_8"})) ==
        Words{"another raft carries its own pack: solas_a in place of iso_9650_more_than_24_h"});
  CHECK(
      words("solas_b", drawn({"offshore_4", "offshore_8"})) ==
      Words{"another raft keeps solas_b, which is not what offshore_4 usually carries, in place of its own, "
            "iso_9650_more_than_24_h"});
  json both = drawn({"offshore_4", "solas_6"});
  both["inputs"]["/stores/pack"] = {{"kind", "discrete"}, {"values", {"solas_b", "none"}}};
  CHECK(words(usual, both).empty());
  const auto situation = [](const json& set) {
    return json{{"alternatives", {{{"name", "a"}, {"weight", 1}, {"set", set}}}}};
  };
  CHECK(words(usual, situation({{"/raft/kind", "solas_6"}})).size() == 1);
  CHECK(words(usual, situation({{"/raft/kind", "solas_6"}, {"/stores/pack", "solas_b"}})).empty());
}

TEST_CASE("people are lettered, never named") {
  json scenario = calm_case();
  scenario["raft"]["kind"] = "offshore_4";
  scenario["crew"] = std::vector<json>(2, scenario["crew"][0]);
  scenario["crew"][1]["injured"] = true;
  CHECK(test::valid(scenario).cautions.front().message.rfind("Person B ", 0) == 0);
}

TEST_CASE("a number outside a range is not printed as one inside it") {
  // 48.95 kg at 1.75 m: 48.95 / 3.0625 = 15.984 kg/m2.
  json scenario = calm_case();
  scenario["crew"][0]["height_m"] = 1.75;
  scenario["crew"][0]["mass_kg"] = 48.95;
  std::string words;
  for (const Diagnostic& each : test::valid(scenario).cautions)
    if (each.pointer == "/crew/0/mass_kg") words = each.message;
  CHECK(words == "Person A has a body mass index of 15.98 kg/m²: outside 16 to 40");
}
