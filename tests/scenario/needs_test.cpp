#include "bide/scenario/needs.hpp"

#include <doctest/doctest.h>

#include "bide/scenario/patch.hpp"

using namespace bide;

namespace {

std::vector<scenario::Need> needs(const std::vector<std::pair<const char*, scenario::Value>>& changes,
                                  double until_h) {
  auto read = scenario::validate_file(BIDE_SOURCE_DIR "/tests/scenario/minimal.json");
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(read));
  scenario::Node document = *std::get<scenario::ValidScenario>(read).document;
  for (const auto& [pointer, value] : changes) REQUIRE(scenario::put(document, pointer, value));
  read = scenario::validate_document(document, "minimal", {});
  REQUIRE(std::holds_alternative<scenario::ValidScenario>(read));
  return scenario::needs_of(std::get<scenario::ValidScenario>(read), until_h);
}

}  // namespace

// Ten doses at two a day last five days; ten days take twenty.
TEST_CASE("own medicine lasts as long as its doses") {
  const auto ten_days =
      needs({{"/crew/0/medicine_doses_per_day", 2.0}, {"/crew/0/medicine_doses", 10.0}}, 240);
  REQUIRE(ten_days.size() == 1);
  CHECK(*ten_days[0].lasts_h == doctest::Approx(120));
  CHECK(ten_days[0].doses_lacking == 10);
  const auto five_days =
      needs({{"/crew/0/medicine_doses_per_day", 2.0}, {"/crew/0/medicine_doses", 10.0}}, 120);
  CHECK(five_days[0].doses_lacking == 0);
  // Three a day for 10 h: one and a quarter doses, so two.
  CHECK(needs({{"/crew/0/medicine_doses_per_day", 3.0}}, 10)[0].doses_lacking == 2);
}

TEST_CASE("inhaler, allergy and reading glasses are told, and nothing where nothing is needed") {
  CHECK(needs({}, 240).empty());
  CHECK(needs({{"/crew/0/inhaler", true}}, 240).size() == 1);
  const auto nuts = needs({{"/crew/0/food_allergy", std::string("nuts")}}, 240);
  REQUIRE(nuts.size() == 1);
  CHECK(nuts[0].words.find("cannot eat nuts") != std::string::npos);
  CHECK(needs({{"/crew/0/age_years", 44.0}}, 240).empty());
  const auto reader = needs({{"/crew/0/age_years", 45.0}}, 240);
  REQUIRE(reader.size() == 1);
  CHECK(reader[0].words.find("58 %") != std::string::npos);
  CHECK(reader[0].words.find("women") == std::string::npos);
  const auto older = needs({{"/crew/0/age_years", 61.0}}, 240);
  CHECK(older[0].words.find("89 % of men and 77 % of women") != std::string::npos);
}
