// What the first lines of odds say: who, what ends it, inside and water, over the futures.
#include "bide/report/odds/odds_words.hpp"

#include <doctest/doctest.h>

#include <limits>
#include <nlohmann/json.hpp>
#include <vector>

#include "support/synthetic_timeline.hpp"

using namespace bide;
using system::Limit;

namespace {

constexpr float beyond = std::numeric_limits<float>::infinity();

// Of a hundred futures within 120 h the first person's ability ends by cold in sixty, and life in thirty of
// them.
std::vector<study::Future> hundred() {
  std::vector<study::Future> out(100);
  for (std::size_t i = 0; i < out.size(); ++i) {
    study::Future& f = out[i];
    f.able_h = f.alive_h = {beyond, beyond, beyond};
    f.able_cause.fill(Limit::able_core_low);
    f.alive_cause.fill(Limit::lethal_core_low);
    if (i < 60) f.able_h[study::first_person] = 20;
    if (i < 30) f.alive_h[study::first_person] = 40;
    f.coldest_inside_degC = i < 20 ? 3.0F : 8.0F;
  }
  return out;
}

study::OddsAnswer answer_to(const std::vector<study::Future>& futures) {
  scenario::ValidScenario scenario = test::valid_scenario(3);
  scenario.scenario.uncertain.emplace();
  scenario.scenario.crew[1].sex = scenario::Sex::female;
  scenario.scenario.crew[1].age_years = 41;
  return {scenario, 1, futures.size(), {}, {}, study::odds_of(study::all_of(futures), 120, false, 0.95),
          {},       {}};
}

}  // namespace

TEST_CASE("who is first is told only where futures can tell, and never by an age that is drawn") {
  auto futures = hundred();
  CHECK(report::who_first(answer_to(futures)) == "nobody in any future");
  for (std::size_t i = 0; i < 60; ++i) futures[i].first_unable[1] = true;
  CHECK(report::who_first(answer_to(futures)) ==
        "most often Person B (woman, 41): first in 60 % of all futures");
  study::OddsAnswer drawn = answer_to(futures);
  auto& entries = drawn.scenario.scenario.uncertain->inputs.entries;
  entries.emplace_back("/crew/1/age_years", scenario::Distribution{});
  CHECK(report::who_first(drawn) == "most often Person B: first in 60 % of all futures");
  for (const char* other : {"/crew/0/age_years", "/crew/2/sex"})
    entries.emplace_back(other, scenario::Distribution{});
  CHECK(report::who_first(drawn) == "not told: who they are is drawn");
  // Fifty against sixty of a hundred: within the sampling error (Wilson 1927: 40 to 60 and 50 to 69 %).
  for (std::size_t i = 0; i < 50; ++i) futures[i].first_unable[2] = true;
  CHECK(report::who_first(answer_to(futures)) ==
        "most often Persons B and C: each is first in 60 % of all futures");
  for (std::size_t i = 0; i < 55; ++i) futures[i].first_unable[0] = true;
  CHECK(report::who_first(answer_to(futures)) == "no one more often than the others");
}

TEST_CASE("a limit that no future reaches is not reached; nobody is called able or alive in all of them") {
  const report::Answer lines = report::odds_answer(answer_to(hundred()));
  CHECK(lines[0].asks == "Able until");
  CHECK(lines[0].says ==
        "first person: no longer able by 20 h (4 Feb 14:00 UTC) in 10 % of futures, by 20 h in 50 %, still "
        "able after 5 d "
        "in 40 %; last person: limit not reached within 5 d in any future");
}

TEST_CASE("what ends ability and life, the coldest inside and the water are told over the futures") {
  auto futures = hundred();
  CHECK(report::ends_by(answer_to(futures), "within 5 d") ==
        "the first person is no longer able: cold in 60 % of futures within 5 d; no longer alive: cold in 30 "
        "%");
  CHECK(report::inside_line(answer_to(futures)) == "coldest 3 °C to 8 °C (8 in 10 futures)");
  CHECK(report::water_line(answer_to(futures)) == "not out within 5 d in any future");
  for (std::size_t i = 0; i < 40; ++i) futures[i].water_out_h = i < 20 ? 30.0F : 50.0F;
  CHECK(report::water_line(answer_to(futures)) == "out within 5 d in 40 % of futures, half of these by 30 h");
  const auto json = nlohmann::json::parse(report::odds_json(answer_to(futures)));
  CHECK(json["aboard"]["water_out"]["count"] == 40);
  CHECK(json["aboard"]["coldest_low_degC"] == 3);
  CHECK(json["first_alive_ended_by"]["lethal_core_low"] == 0.3);
  CHECK(json["first_unable"].size() == 3);
  for (study::Future& f : futures)
    f.water_out_h = 0, f.coldest_inside_degC = std::numeric_limits<float>::quiet_NaN();
  CHECK(report::water_line(answer_to(futures)) == "no drinking water aboard");
  CHECK(report::inside_line(answer_to(futures)) == "no cabin: in the water");
}
