#include "bide/study/questions/provision.hpp"

#include <doctest/doctest.h>

#include "bide/scenario/patch.hpp"

using namespace bide;
using study::Provision;

namespace {

using Changes = std::vector<std::pair<const char*, scenario::Value>>;

scenario::ValidScenario shipped(const char* name, const Changes& changes = {}) {
  const std::string folder = BIDE_SOURCE_DIR "/scenarios";
  scenario::Validated read = scenario::validate_file(folder + "/" + name);
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(read));
  scenario::Node document = *std::get<scenario::ValidScenario>(read).document;
  for (const auto& [pointer, value] : changes) REQUIRE(scenario::put(document, pointer, value));
  read = scenario::validate_document(document, name, folder);
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(read));
  return std::get<scenario::ValidScenario>(read);
}

study::ProvisionQuestion question(double until_h) {
  study::ProvisionQuestion out;
  out.until_h = until_h;
  out.futures = 64, out.fresh_futures = 128;
  return out;
}

Provision answer(const scenario::ValidScenario& scenario, const study::ProvisionQuestion& q) {
  auto out = study::provision(scenario, q);
  REQUIRE(std::holds_alternative<Provision>(out));
  return std::get<Provision>(std::move(out));
}

}  // namespace

// Three people under a tropical sun lack about a litre a day each. A small hand desalinator, 1.2 kg, makes
// two litres a day in two hours; bought as water that is 14 L and 15 kg in seven days. So the least kit by
// weight cannot be heavier than the desalinator, as long as that is enough by itself.
TEST_CASE(
    "little water in the tropics: the least kit is no heavier than a desalinator, and a dose less fails") {
  study::ProvisionQuestion q = question(168);
  q.confidence = 0.8;
  const Provision out = answer(shipped("tropics_little_water.json"), q);
  REQUIRE(out.least);
  REQUIRE(out.least_fresh);
  CHECK(out.spread_water);
  CHECK(out.made_uncertain);
  CHECK(out.least_fresh->at_least >= 0.8);
  CHECK(out.least->met > out.without.met);
  CHECK(out.least->cost.mass_kg > 0);
  CHECK(out.least->cost.mass_kg <= 1.2 + 1e-9);
  // With any dose less it is lighter, and so was refused.
  REQUIRE_FALSE(out.one_less.empty());
  for (const study::DoseChanged& each : out.one_less) CHECK(each.tried.met < out.least->met);
  // The other kits are heavier, and each lacks something that those before it have.
  for (const study::KitTried& other : out.others) CHECK(other.cost.mass_kg > out.least->cost.mass_kg);
  CHECK(out.scenario_text.find("\"extra\"") != std::string::npos);
}

TEST_CASE("the answer repeats, whatever the threads") {
  study::ProvisionQuestion q = question(72);
  q.confidence = 0.8;
  q.threads = 1;
  const Provision one = answer(shipped("tropics_little_water.json"), q);
  q.threads = 2;
  const Provision two = answer(shipped("tropics_little_water.json"), q);
  REQUIRE(one.least.has_value() == two.least.has_value());
  CHECK(one.scenario_text == two.scenario_text);
  CHECK(one.kits_run == two.kits_run);
}

TEST_CASE("a target that nothing meets says so, and by what it ends") {
  study::ProvisionQuestion q = question(24);
  q.limits.mass_kg = 0.5;
  const Provision out = answer(
      shipped("cold_sea_wet_floor_flat.json", {{"/weather/air_temperature_degC", -15.0},
                                               {"/model/shivering_endurance", std::string("gives_out")}}),
      q);
  CHECK_FALSE(out.least);
  CHECK_FALSE(out.without.ended.empty());
}

TEST_CASE("what cannot be asked is refused") {
  study::ProvisionQuestion q = question(24);
  q.futures = 20;  // 0.9 with 95 % confidence takes 29 futures without a miss
  CHECK(std::holds_alternative<study::Refusal>(study::provision(shipped("tropics_little_water.json"), q)));
  CHECK(
      std::holds_alternative<study::Refusal>(study::provision(shipped("immersion_only.json"), question(24))));
}
