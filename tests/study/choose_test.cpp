#include "bide/study/questions/choose.hpp"

#include <doctest/doctest.h>

#include "bide/scenario/patch.hpp"

using namespace bide;
using study::Chosen;

namespace {

scenario::ValidScenario shipped(const std::string& name) {
  auto read = scenario::validate_file(BIDE_SOURCE_DIR "/scenarios/" + name);
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(read));
  return std::get<scenario::ValidScenario>(std::move(read));
}

study::ChooseQuestion question() {
  study::ChooseQuestion out;
  out.rafts = {{"offshore_4", false}};
  out.help_h = {24};
  out.futures = 16;
  return out;
}

Chosen answer(const std::string& name, const study::ChooseQuestion& q) {
  auto out = study::choose({shipped(name)}, q);
  REQUIRE(std::holds_alternative<Chosen>(out));
  return std::get<Chosen>(std::move(out));
}

bool refused(const std::string& name, const study::ChooseQuestion& q) {
  return std::holds_alternative<study::Refusal>(study::choose({shipped(name)}, q));
}

}  // namespace

// All of n one way: 2 / 2^n. 8 against 2: 2 (1 + 10 + 45) / 1024.
TEST_CASE("the exact sign test") {
  CHECK(study::sign_test(0, 0) == 1);
  CHECK(study::sign_test(5, 0) == doctest::Approx(0.0625));
  CHECK(study::sign_test(0, 6) == doctest::Approx(0.03125));
  CHECK(study::sign_test(8, 2) == doctest::Approx(0.109375));
  CHECK(study::sign_test(3, 3) == 1);
}

// The pack for less than 24 h holds no water; the other 1.5 L each, of which nobody is given any on the first
// day. So a day's futures are the same, and after a week in a warm sea the longer pack is never behind.
TEST_CASE("a short pack is as good for a day and worse for a week") {
  study::ChooseQuestion q = question();
  q.futures = 48;
  q.packs = {"iso_9650_less_than_24_h", "iso_9650_more_than_24_h"};
  q.help_h = {24, 168};
  scenario::Node document = *shipped("short_pack_far_offshore.json").document;
  for (const char* pointer : {"/weather/air_temperature_degC", "/weather/water_temperature_degC"})
    scenario::put(document, pointer, 28.0);
  const auto warm = scenario::validate_document(document, "warm", BIDE_SOURCE_DIR "/scenarios");
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(warm));
  const auto asked = study::choose({std::get<scenario::ValidScenario>(warm)}, q);
  REQUIRE(std::holds_alternative<Chosen>(asked));
  const Chosen& out = std::get<Chosen>(asked);
  const auto& choices = out.waters.front().choices;
  REQUIRE(choices.size() == 2);
  CHECK(out.waters.front().futures == q.futures);
  CHECK(choices[0].able[0].chance.count == choices[1].able[0].chance.count);
  CHECK(choices[1].able[0].against_first.more == 0);
  CHECK(choices[1].able[1].against_first.more > 0);
  CHECK(choices[1].able[1].against_first.fewer == 0);
  CHECK(choices[0].able[1].ended_by.limit == system::Limit::able_water_deficit);
  // Help later never finds more people able, and whoever is able is alive.
  for (const study::Choice& each : choices) {
    CHECK(each.able[1].chance.count <= each.able[0].chance.count);
    CHECK(each.able[1].chance.count <= each.alive[1].chance.count);
  }
}

TEST_CASE("of two rafts with one lost the crew is in the other, crowded if need be") {
  study::ChooseQuestion q = question();
  q.rafts = {{"offshore_4", false}, {"offshore_4", true}};
  const Chosen same = answer("four_in_a_right_sized_raft.json", q);
  const auto& both = same.waters.front().choices;
  CHECK(both[0].able[0].chance.count == both[1].able[0].chance.count);
  CHECK(both[1].able[0].against_first.more + both[1].able[0].against_first.fewer == 0);
  q.rafts = {{"offshore_8", true}};
  q.futures = 4;
  CHECK(answer("twelve_in_a_gale.json", q).waters.front().choices.size() == 1);
  q.rafts = {{"offshore_8", false}};
  CHECK(refused("twelve_in_a_gale.json", q));
}

TEST_CASE("the table repeats, whatever the threads") {
  study::ChooseQuestion q = question();
  q.threads = 1;
  const Chosen one = answer("cold_sea_wet_floor_flat.json", q);
  q.threads = 2;
  const Chosen two = answer("cold_sea_wet_floor_flat.json", q);
  CHECK(one.waters[0].choices[0].able[0].chance.count == two.waters[0].choices[0].able[0].chance.count);
  CHECK(one.waters[0].choices[0].nearest == two.waters[0].choices[0].nearest);
}

TEST_CASE("what cannot be chosen is refused") {
  study::ChooseQuestion q = question();
  q.rafts = {{"offshore_5", false}};
  CHECK(refused("four_in_a_right_sized_raft.json", q));
  q = question();
  q.packs = {"solas_c"};
  CHECK(refused("four_in_a_right_sized_raft.json", q));
  CHECK(refused("immersion_only.json", question()));  // no raft
  q = question();
  q.help_h.clear();
  CHECK(refused("four_in_a_right_sized_raft.json", q));
}
