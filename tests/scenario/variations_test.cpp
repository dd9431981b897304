#include "bide/scenario/variations.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "bide/scenario/differences.hpp"
#include "scenario/support.hpp"

using namespace bide::scenario;

namespace {

const std::string minimal = BIDE_SOURCE_DIR "/tests/scenario/minimal.json";

ValidScenario base() {
  Validated validated = validate_file(minimal);
  REQUIRE(std::holds_alternative<ValidScenario>(validated));
  return std::get<ValidScenario>(validated);
}

Variation variation(const std::string& text) {
  auto read = read_variation(text, "--vary");
  REQUIRE(std::holds_alternative<Variation>(read));
  return std::get<Variation>(read);
}

std::string refusal(const std::string& text) {
  const auto read = read_variation(text, "--vary");
  REQUIRE(std::holds_alternative<Diagnostic>(read));
  return to_string(std::get<Diagnostic>(read));
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("several variations make every combination, the last one fastest") {
  const auto made =
      versions(base(), {variation("/raft/capacity_persons=4,6,8"), variation("/boarding/kind=dry,swim")});
  REQUIRE(std::holds_alternative<std::vector<Version>>(made));
  const auto& all = std::get<std::vector<Version>>(made);
  REQUIRE(all.size() == 6);
  CHECK(all[0].scenario.raft->capacity_persons == 4);
  CHECK(all[1].scenario.raft->capacity_persons == 4);
  CHECK(all[1].scenario.boarding.kind == BoardingKind::swim);
  CHECK(all[4].scenario.raft->capacity_persons == 8);
  CHECK(all[4].scenario.boarding.kind == BoardingKind::dry);
  CHECK(has(all[5].file, "/raft/capacity_persons=8 /boarding/kind=swim"));
}

TEST_CASE("a variation is refused with what was found and what is allowed") {
  CHECK(has(refusal("/raft/capacity_person=4"), "did you mean \"/raft/capacity_persons\"?"));
  CHECK(has(refusal("/raft=4"), "a field that holds a value"));
  CHECK(has(refusal("/raft/capacity_persons=four"), "found \"four\"; allowed"));
  CHECK(has(refusal("/routine/huddle=maybe"), "found \"maybe\""));
  CHECK(has(refusal("/raft/capacity_persons=4,4"), "twice"));
  CHECK(has(refusal("/raft/capacity_persons"), "POINTER=value"));
  CHECK(has(refusal("/uncertain/person_spread=true"), "no such field"));
}

TEST_CASE("versions go through the ordinary validation, with all that is wrong") {
  const auto made =
      versions(base(), {variation("/raft/capacity_persons=4,6000"), variation("/boarding/kind=dry,sail")});
  REQUIRE(std::holds_alternative<Diagnostics>(made));
  const auto& wrong = std::get<Diagnostics>(made);
  const auto about = [&](const char* pointer) {
    return std::count_if(wrong.begin(), wrong.end(),
                         [&](const Diagnostic& d) { return d.pointer == pointer; });
  };
  CHECK(about("/raft/capacity_persons") == 2);
  CHECK(about("/boarding/kind") == 2);
  CHECK(has(wrong.front().file, "minimal.json with /raft/capacity_persons="));
}

TEST_CASE("no more than 64 combinations, no field twice, no person who is not there") {
  const auto persons = variation("/raft/capacity_persons=4,5,6,7,8,9,10,12,14");
  const auto mass = variation("/crew/0/mass_kg=60,62,64,66,68,70,72,74");
  const auto many = versions(base(), {persons, mass});  // 72
  REQUIRE(std::holds_alternative<Diagnostics>(many));
  CHECK(has(std::get<Diagnostics>(many).front().message, "more than 64 combinations"));
  CHECK(std::holds_alternative<Diagnostics>(versions(base(), {mass, mass})));
  CHECK(std::holds_alternative<Diagnostics>(versions(base(), {variation("/crew/7/mass_kg=60,70")})));
}

TEST_CASE("differences are resolved values, with defaults marked, and nothing that is shared") {
  auto made = versions(base(), {variation("/raft/kind=offshore_4,offshore_8")});
  auto& all = std::get<std::vector<Version>>(made);
  REQUIRE(all.size() == 2);
  const auto found = differences({&all[0], &all[1]});
  const auto at = [&](const char* pointer) {
    const auto it =
        std::find_if(found.begin(), found.end(), [&](const Difference& d) { return d.pointer == pointer; });
    return it == found.end() ? nullptr : &*it;
  };
  REQUIRE(at("/raft/kind"));
  CHECK(at("/raft/kind")->values[1].value == "offshore_8");
  CHECK_FALSE(at("/raft/kind")->values[1].filled_in);
  REQUIRE(at("/raft/floor_area_m2"));
  CHECK(at("/raft/floor_area_m2")->unit == "m2");
  CHECK(at("/raft/floor_area_m2")->values[0].filled_in);
  CHECK(at("/duration_h") == nullptr);
  CHECK(at("/name") == nullptr);
}

TEST_CASE("another raft carries its own pack, unless the pack was chosen apart from the raft") {
  // The usual pack of offshore_4 is iso_9650_more_than_24_h, of coastal_4 iso_9650_less_than_24_h, of solas_6
  // solas_a (scenarios/catalogue/rafts.json).
  const auto with_pack = [](const char* pack) {
    nlohmann::json scenario = test::minimal();
    scenario["stores"]["pack"] = pack;
    return test::valid(scenario);
  };
  const auto of = [](const ValidScenario& from, std::vector<Variation> variations) {
    return std::get<std::vector<Version>>(versions(from, std::move(variations)));
  };
  const auto pack_caution = [](const ValidScenario& made) {
    std::string out;
    for (const Diagnostic& each : made.cautions)
      if (each.pointer == "/stores/pack") out += each.message;
    return out;
  };
  const Variation rafts = variation("/raft/kind=offshore_4,coastal_4,solas_6,offshore_6");
  const auto usual = of(with_pack("iso_9650_more_than_24_h"), {rafts});
  CHECK(usual[0].scenario.stores.pack == "iso_9650_more_than_24_h");
  CHECK(usual[1].scenario.stores.pack == "iso_9650_less_than_24_h");
  CHECK(usual[2].scenario.stores.pack == "solas_a");
  CHECK(usual[3].scenario.stores.pack == "iso_9650_more_than_24_h");
  CHECK(pack_caution(usual[0]).empty());
  CHECK(pack_caution(usual[2]) ==
        "another raft carries its own pack: solas_a in place of iso_9650_more_than_24_h");
  CHECK(pack_caution(usual[3]).empty());

  const auto chosen = of(with_pack("solas_b"), {rafts});
  for (const ValidScenario& each : chosen) CHECK(each.scenario.stores.pack == "solas_b");
  CHECK(has(pack_caution(chosen[1]),
            "another raft keeps solas_b, which is not what offshore_4 usually "
            "carries, in place of its own, iso_9650_less_than_24_h"));

  const auto both = of(with_pack("iso_9650_more_than_24_h"),
                       {rafts, variation("/stores/pack=iso_9650_more_than_24_h,none")});
  for (std::size_t i = 0; i < both.size(); ++i)
    CHECK(both[i].scenario.stores.pack == (i % 2 == 0 ? "iso_9650_more_than_24_h" : "none"));
}

TEST_CASE("equal stores: all that the first has aboard, in place of pack and bag") {
  auto made =
      versions(base(), {variation("/stores/pack=solas_b,none"), variation("/raft/capacity_persons=4,8")});
  auto& all = std::get<std::vector<Version>>(made);
  REQUIRE(all.size() == 4);
  CHECK_FALSE(differences_aboard({&all[0], &all[1]}).empty());  // the pack follows the capacity
  const Validated given = with_stores_of(all[0], all[3]);
  REQUIRE(std::holds_alternative<ValidScenario>(given));
  const auto& equal = std::get<ValidScenario>(given);
  CHECK(equal.stock.size() == all[0].stock.size());
  CHECK(differences_aboard({&all[0], &equal}).empty());
  CHECK(equal.scenario.raft->capacity_persons == 8);
}
