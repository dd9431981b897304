// Writing and reading again gives the same scenario.
#include <doctest/doctest.h>

#include "scenario/support.hpp"

using namespace bide::scenario;
using nlohmann::json;

TEST_CASE("the smallest scenario is valid") {
  CHECK(test::complaints(validate_file(test::source("tests/scenario/minimal.json"))).empty());
}

TEST_CASE("a scenario written and read again is equal") {
  for (const char* path : {"tests/scenario/minimal.json", "tests/scenario/full.json"}) {
    CAPTURE(path);
    const ValidScenario first = test::valid(json::parse(test::text_of(test::source(path))));
    const std::string written = write_scenario(first.scenario);
    const Validated again = validate_text(written, "s.json", test::source("tests/scenario"));
    REQUIRE(test::complaints(again).empty());
    CHECK(std::get<ValidScenario>(again).scenario == first.scenario);
    CHECK(write_scenario(std::get<ValidScenario>(again).scenario) == written);
  }
}

TEST_CASE("what a file states is what is written") {
  const json stated = json::parse(test::text_of(test::source("tests/scenario/full.json")));
  const json written = json::parse(write_scenario(test::valid(stated).scenario));
  // Written back holds the stated values and, beside them, the defaults: merging the file in changes nothing.
  const json flat = stated.flatten(), flat_written = written.flatten();
  for (auto each = flat.begin(); each != flat.end(); ++each) {
    const std::string& pointer = each.key();
    CAPTURE(pointer);
    REQUIRE(flat_written.contains(pointer));
    CHECK(flat_written[pointer] == *each);
  }
}

TEST_CASE("a resolved scenario needs no more defaults") {
  for (const char* kind : {"dry", "swim", "float_free"}) {
    json scenario = test::minimal();
    scenario["boarding"]["kind"] = kind;
    const std::string written = write_scenario(test::valid(scenario).scenario);
    const Validated again = validate_text(written, "s.json", {});
    REQUIRE(test::complaints(again).empty());
    CHECK(std::get<ValidScenario>(again).defaults.empty());
  }
  json swimmers = test::minimal();
  swimmers["boarding"]["kind"] = "none";
  swimmers.erase("raft");
  CHECK(
      test::complaints(validate_text(write_scenario(test::valid(swimmers).scenario), "s.json", {})).empty());
}

TEST_CASE("numbers keep every bit") {
  json scenario = test::minimal();
  scenario["position"]["latitude_deg"] = 0.1 + 0.2;
  const json written = json::parse(write_scenario(test::valid(scenario).scenario));
  CHECK(written["position"]["latitude_deg"].get<double>() == 0.1 + 0.2);
}
