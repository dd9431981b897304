#include "bide/scenario/levers.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cctype>

#include "scenario/support.hpp"

using namespace bide::scenario;

namespace {

ValidScenario load(const std::string& path) {
  Validated validated = validate_file(BIDE_SOURCE_DIR + path);
  REQUIRE(std::holds_alternative<ValidScenario>(validated));
  return std::get<ValidScenario>(validated);
}

const Lever& lever(const std::string& key) {
  const auto at =
      std::find_if(levers().begin(), levers().end(), [&](const Lever& each) { return each.key == key; });
  REQUIRE(at != levers().end());
  return *at;
}

std::vector<ValidScenario> pulled(const std::string& key, const ValidScenario& scenario) {
  auto result = pull(lever(key), scenario);
  if (const auto* none = std::get_if<NotApplicable>(&result)) FAIL(none->reason);
  return std::move(std::get<std::vector<ValidScenario>>(result));
}

std::string reason(const std::string& key, const ValidScenario& scenario) {
  const auto result = pull(lever(key), scenario);
  const auto* none = std::get_if<NotApplicable>(&result);
  return none ? none->reason : "it makes sense";
}

const std::string cold = "/scenarios/cold_sea_wet_floor_flat.json";

}  // namespace

TEST_CASE("levers name items that exist, and never what must not be offered") {
  for (const Lever& each : levers()) {
    INFO(each.key);
    CHECK_FALSE(each.source.empty());
    CHECK_FALSE(each.gains_by.empty());
    CHECK_FALSE(each.loses_by.empty());
    for (const LeverItem& item : each.add) CHECK(find_item(item.kind) != nullptr);
    if (each.gloves) CHECK(find_gloves(*each.gloves) != nullptr);
    std::string title = each.title;
    std::transform(title.begin(), title.end(), title.begin(),
                   [](unsigned char c) { return std::tolower(c); });
    for (const char* word : {"urine", "drink sea", "withhold", "dose"})
      CHECK(title.find(word) == std::string::npos);
    for (const auto& [pointer, value] : each.set.entries) CHECK(pointer.rfind("/rationing", 0) != 0);
  }
}

// Four people: pads of 0.2 kg (items.json) and 2.4 L each; a litre each is 40 sachets of 0.11 kg and 0.12 L.
TEST_CASE("what a lever weighs follows from the crew and from what is aboard") {
  const ValidScenario scenario = load(cold);
  CHECK(burden_of(lever("foam_pads"), scenario).mass_kg == doctest::Approx(0.8));
  CHECK(burden_of(lever("foam_pads"), scenario).volume_L == doctest::Approx(9.6));
  CHECK(burden_of(lever("litre_each"), scenario).mass_kg == doctest::Approx(4.4));
  CHECK(burden_of(lever("litre_each"), scenario).volume_L == doctest::Approx(4.8));
  const ValidScenario with_pads = pulled("foam_pads", scenario).front();
  CHECK(burden_of(lever("foam_pads"), scenario).items == "4 x closed-cell foam pad to sit on");
  CHECK(burden_of(lever("foam_pads"), with_pads).mass_kg == 0);  // tops up
  CHECK(burden_of(lever("foam_pads"), with_pads).items.empty());
}

TEST_CASE("a lever sets its values for every person and goes through the ordinary validation") {
  const ValidScenario scenario = load(cold);
  const ValidScenario pads = pulled("foam_pads", scenario).front();
  for (const Person& person : pads.scenario.crew) CHECK(person.seat == Seat::foam_pad);
  const ValidScenario dry = pulled("dry_boarding", scenario).front();
  CHECK(dry.scenario.boarding.kind == BoardingKind::dry);
  CHECK(dry.scenario.boarding.minutes_in_water == 0);
  CHECK(pulled("pump_up_the_floor", scenario).front().scenario.routine.inflate_floor);
}

// Gloves of 0.2 kg and mittens of 0.3 kg a pair (gloves.json), 0.6 and 0.9 L.
TEST_CASE("gloves are for those alone whose hands neither clothing nor gloves cover") {
  nlohmann::json scenario = test::minimal();
  const nlohmann::json person = scenario["crew"][0];
  scenario["crew"] = {person, person, person};
  scenario["crew"][0]["clothing"] = scenario["crew"][1]["clothing"] = "indoor";
  scenario["crew"][1]["gloves"] = "gloves_thin";
  scenario["crew"][2]["clothing"] = "suit_insulated";
  const ValidScenario one_bare = test::valid(scenario);
  CHECK(burden_of(lever("gloves_each"), one_bare).mass_kg == doctest::Approx(0.2));
  CHECK(burden_of(lever("mittens_each"), one_bare).volume_L == doctest::Approx(0.9));
  CHECK(burden_of(lever("gloves_each"), one_bare).items == "1 x insulated gloves");
  const ValidScenario gloved = pulled("gloves_each", one_bare).front();
  CHECK(gloved.scenario.crew[0].gloves == "gloves_insulated");
  CHECK(gloved.scenario.crew[1].gloves == "gloves_thin");
  CHECK(gloved.scenario.crew[2].gloves == "none");
  CHECK(reason("gloves_each", gloved) == "nobody has bare hands");
  CHECK(reason("mittens_each", gloved) == "nobody has bare hands");
  CHECK(burden_of(lever("mittens_each"), gloved).items.empty());
}

TEST_CASE("what is done already, or cannot be, does not apply") {
  const ValidScenario scenario = load(cold);
  CHECK(reason("wring_clothes", scenario) == "already done");
  CHECK(reason("foam_pads", pulled("foam_pads", scenario).front()) == "already done");
  const ValidScenario right = load("/scenarios/four_in_a_right_sized_raft.json");
  CHECK(reason("fitting_raft", right) == "already done");
  CHECK(reason("dry_boarding", right) == "already done");
  const ValidScenario immersed = load("/scenarios/immersion_only.json");
  CHECK(reason("two_rafts", immersed) == "there is no raft");
  CHECK(reason("dry_boarding", immersed).find("/raft") == 0);
}

TEST_CASE("a raft that fits is the smallest of its kind; two rafts part the crew") {
  const ValidScenario wide = load("/scenarios/four_in_an_oversized_raft.json");
  CHECK(pulled("fitting_raft", wide).front().scenario.raft->kind == "offshore_4");
  const auto parts = pulled("two_rafts", wide);
  REQUIRE(parts.size() == 2);
  CHECK(parts[0].scenario.crew.size() == 2);
  CHECK(parts[0].scenario.crew[1].mass_kg == 73);  // first and third
  CHECK(parts[1].scenario.crew[1].mass_kg == 62);  // second and fourth
  CHECK(parts[1].stock.size() == wide.stock.size());
}

TEST_CASE("catching rain does not apply where no rain falls") {
  nlohmann::json scenario = test::minimal();
  scenario["weather"]["rain_mm_h"] = 0;
  scenario["routine"]["catch_rain"] = false;
  const auto dry = pull(lever("catch_rain"), test::valid(scenario));
  REQUIRE(std::holds_alternative<NotApplicable>(dry));
  CHECK(std::get<NotApplicable>(dry).reason == "no rain is in the weather");
  scenario["weather"]["rain_mm_h"] = 2;
  CHECK(std::holds_alternative<std::vector<ValidScenario>>(pull(lever("catch_rain"), test::valid(scenario))));
}
