#include "bide/outcome/evidence.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "bide/constants/left_out.hpp"
#include "bide/outcome/cause.hpp"

using namespace bide::outcome;
using bide::system::Limit;
namespace constants = bide::constants;

namespace {

bool mentions(const Evidence& evidence, const char* words) {
  return std::any_of(evidence.passed.begin(), evidence.passed.end(), [&](const Passed& passed) {
    return passed.limit.find(words) != std::string::npos && !passed.reason.empty();
  });
}

// Two hours under no canopy: inside every measurement.
Facts short_stay() {
  Facts facts;
  facts.hours = 2;
  facts.under_canopy = false;
  return facts;
}

}  // namespace

TEST_CASE("a short mild stay of a healthy adult is checked") {
  for (const Topic topic : {topic_able, topic_alive, topic_hands, topic_cabin, topic_thirst}) {
    CHECK(judge(topic, short_stay(), {}).grade == Grade::checked);
  }
}

TEST_CASE("each limit of the data is named when it is passed") {
  const auto passed = [](auto change, Topic topic, const char* words) {
    Facts facts = short_stay();
    change(facts);
    const Evidence evidence = judge(topic, facts, {});
    INFO(words);
    CHECK(evidence.grade != Grade::checked);
    CHECK(mentions(evidence, words));
  };
  passed([](Facts& f) { f.hours = 2.6; }, topic_able, "2.5 h");
  passed([](Facts& f) { f.in_raft = false, f.hours = 7; }, topic_alive, "immersion trials");
  passed([](Facts& f) { f.lowest_core_degC = 34.9; }, topic_able, "core below 35 °C");
  passed([](Facts& f) { f.lowest_core_degC = 33; }, topic_alive, "core below 33.25 °C");
  passed([](Facts& f) { f.shivering_h = 6.6; }, topic_able, "shivering for longer than 6.5 h");
  passed([](Facts& f) { f.wet_clothing_h = 3.1; }, topic_able, "wet clothes");
  passed([](Facts& f) { f.age_years = 17; }, topic_able, "under 18");
  passed([](Facts& f) { f.age_years = 61; }, topic_hands, "over 60");
  passed([](Facts& f) { f.injured = true; }, topic_alive, "injured");
  passed([](Facts& f) { f.female = true, f.hours = 5, f.lowest_core_degC = 35.5; }, topic_able, "a woman");
  passed([](Facts& f) { f.blood_alcohol_mg_dL = 100; }, topic_able, "alcohol");
  passed([](Facts& f) { f.hottest_inside_degC = 36; }, topic_able, "humid heat");
  passed([](Facts& f) { f.worst_deficit_pct = 6; }, topic_thirst, "5 % of body mass");
  passed([](Facts& f) { f.worst_osmolality_mOsm_kg = 360; }, topic_thirst, "350 mOsm/kg");
  passed([](Facts& f) { f.cause = Limit::lethal_core_low; }, topic_alive, "death by cold");
  passed([](Facts& f) { f.cause = Limit::lethal_water_deficit; }, topic_alive, "death by water loss");
  passed([](Facts& f) { f.cause = Limit::lethal_fat; }, topic_alive, "death by hunger");
  passed([](Facts& f) { f.cause = Limit::lethal_protein; }, topic_alive, "death by hunger");
  passed([](Facts& f) { f.cause = Limit::able_co2; }, topic_able, "foul air");
  passed([](Facts& f) { f.under_canopy = true; }, topic_able, "canopy heat loss");
  passed([](Facts& f) { f.under_canopy = true; }, topic_co2, "leakage");
}

TEST_CASE("what nobody has measured is no data") {
  Facts facts = short_stay();
  facts.cold_fingers_h = 2.5;
  CHECK(judge(topic_hands, facts, {}).grade == Grade::no_data);
  CHECK(judge(topic_able, facts, {}).grade == Grade::checked);
  facts.under_canopy = true;
  CHECK(judge(topic_condensate, facts, {}).grade == Grade::no_data);
  CHECK(judge(topic_co2, facts, {}).grade == Grade::extrapolated);
}

TEST_CASE("a flag of the run makes a result extrapolated, and merging keeps the worst") {
  const Evidence flagged = judge(topic_able, short_stay(), {"wind above the range of the film law"});
  CHECK(flagged.grade == Grade::extrapolated);
  CHECK(mentions(flagged, "film law"));
  const Evidence both = merge({Evidence{}, flagged, flagged});
  CHECK(both.grade == Grade::extrapolated);
  CHECK(both.passed.size() == 1);
  CHECK(to_string(Grade::no_data) == "no data");
}

TEST_CASE("what was passed is told in one order, whoever passed it first") {
  Facts old = short_stay(), wet = short_stay();
  old.age_years = 70;
  wet.wet_clothing_h = 5;
  const Evidence a = judge(topic_able, old, {"a flag"}), b = judge(topic_able, wet, {"another flag"});
  const Evidence ab = merge({a, b}), ba = merge({b, a});
  REQUIRE(ab.passed.size() == ba.passed.size());
  CHECK(ab.passed.size() >= 4);
  for (std::size_t i = 0; i < ab.passed.size(); ++i) CHECK(ab.passed[i].limit == ba.passed[i].limit);
}

TEST_CASE("names of limits become plain words with their values") {
  bide::scenario::Limits limits;
  const bide::scenario::Person anybody;
  limits.able_core_low_degC = 33;
  limits.lethal_core_low_degC = 24;
  limits.lethal_co2_ppm = 100000;
  limits.able_water_deficit_pct = 10;
  CHECK(plain_cause(Limit::able_core_low, limits, anybody) == "cold: core temperature below 33 °C");
  CHECK(plain_cause(Limit::lethal_core_low, limits, anybody) == "cold: core temperature below 24 °C");
  CHECK(plain_cause(Limit::lethal_co2, limits, anybody) == "foul air: CO2 above 100,000 ppm");
  CHECK(plain_cause(Limit::able_water_deficit, limits, anybody) == "water loss: more than 10 % of body mass");
  CHECK(plain_cause(Limit::lethal_fat, limits, anybody) == "hunger: body fat used up");
  CHECK(plain_cause(Limit::lost_airway, limits, anybody) == "loss of airway protection");
  limits.able_core_high_degC = 40;
  bide::scenario::Person ill, hardy;
  ill.fever_K = 3;
  hardy.core_limit_shift_K = -1;
  CHECK(plain_cause(Limit::able_core_high, limits, anybody) == "heat: core temperature above 40 °C");
  CHECK(plain_cause(Limit::able_core_high, limits, ill) == "heat: core temperature above 41 °C");
  CHECK(plain_cause(Limit::able_core_low, limits, hardy) == "cold: core temperature below 32 °C");
  CHECK(short_cause(Limit::lethal_osmolality) == "salt in the blood");
  CHECK(short_cause(Limit::none).empty());
}

TEST_CASE("the words on left-out studies say the side, the size and the count") {
  constants::Forecast made_up{};
  const auto words = [&] { return left_out_words(made_up, constants::cold_air, constants::later); };
  CHECK(words().empty());
  made_up.covered = {9, 10};  // 0.90, and 0.85 is asked for
  REQUIRE(words().size() == 1);
  CHECK_FALSE(words()[0].biased);
  CHECK(words()[0].words ==
        "9 of 10 measurements in cold air after two hours lie in the model's range: covered");
  made_up.covered = {8, 10};
  CHECK(words()[0].words ==
        "8 of 10 measurements in cold air after two hours lie in the model's range: not covered");
  made_up.covered = {3, 3};  // too few to call it covered
  CHECK(words()[0].words ==
        "3 of 3 measurements in cold air after two hours lie in the model's range, too few to tell");
  made_up.heat_made = {6, true, 1.42, 1.96};
  REQUIRE(words().size() == 2);
  CHECK(words()[0].biased);
  CHECK(words()[0].words ==
        "people may get cold sooner than shown: in cold air after two hours, the model gives bodies 1.4 to 2 "
        "times the heat that tests measured");
  made_up.heat_made = {6, true, 0.5, 0.8};
  CHECK(words()[0].words.find("people may get cold later than shown: ") == 0);
  made_up.heat_made.biased = false;
  made_up.core = {4, true, 0.2, 0.6};
  CHECK(words()[0].words ==
        "people may get cold sooner than shown: in cold air after two hours, the model keeps the core 0.2 "
        "to 0.6 K warmer than measured");
  made_up.core = {4, true, -0.6, -0.2};
  CHECK(words()[0].words ==
        "people may get cold later than shown: in cold air after two hours, the model keeps the core 0.2 "
        "to 0.6 K colder than measured");
}

TEST_CASE("a result carries the words of its region and hours, and is biased where they are") {
  for (int r = 0; r < constants::region_count; ++r)
    for (int span = 0; span < constants::span_count; ++span) {
      CAPTURE(constants::region_names[r]);
      CAPTURE(constants::span_names[span]);
      constexpr double degC[constants::region_count] = {5, 25, 5, 20, 35};
      Facts facts = short_stay();
      facts.hours = span == constants::first_hours ? 1.9 : 2;
      facts.at = constants::Conditions{};
      facts.at->medium = r <= constants::cool_water ? constants::Medium::water : constants::Medium::air;
      facts.at->degC = degC[r];
      facts.in_raft = false;
      const Evidence able = judge(topic_able, facts, {});
      const auto stands = left_out_words(constants::left_out[r].when[span], static_cast<constants::Region>(r),
                                         static_cast<constants::Span>(span));
      REQUIRE(able.left_out.size() == stands.size());
      bool biased = false;
      for (std::size_t i = 0; i < stands.size(); ++i) {
        CHECK(able.left_out[i].words == stands[i].words);
        biased = biased || stands[i].biased;
      }
      CHECK((able.grade == Grade::biased) == biased);
      // The cabin's air is judged by no region, nor is a result without one.
      CHECK(judge(topic_co2, facts, {}).left_out.empty());
      facts.at.reset();
      CHECK(judge(topic_able, facts, {}).grade == Grade::checked);
      CHECK(judge(topic_able, facts, {}).left_out.empty());
    }
}

// Six left-out measurements of heat made from two hours on in air of 7.5 to 10 degC: 1.41 to 2.05 times
// (validation/judge).
TEST_CASE("hours in cold air are biased: too much heat") {
  Facts facts = short_stay();
  facts.at = constants::Conditions{};
  facts.at->degC = 8;
  facts.hours = 3;
  facts.in_raft = false;
  const Evidence able = judge(topic_able, facts, {});
  CHECK(able.grade == Grade::biased);
  REQUIRE_FALSE(able.left_out.empty());
  CHECK(able.left_out.front().words.find("people may get cold sooner than shown: in cold air") == 0);
}

TEST_CASE("merging tells every word on left-out studies once, biases first, in one order") {
  Evidence covered, biased;
  covered.left_out = {{false, "covered: 9 of 10"}};
  biased.left_out = {{true, "too much heat"}, {false, "covered: 9 of 10"}};
  const Evidence ab = merge({covered, biased}), ba = merge({biased, covered});
  REQUIRE(ab.left_out.size() == 2);
  CHECK(ab.left_out[0].words == "too much heat");
  CHECK(ab.left_out[1].words == "covered: 9 of 10");
  CHECK(ba.left_out[0].words == ab.left_out[0].words);
}

TEST_CASE("where thirst ends it, the days without water lead") {
  Facts facts = short_stay();
  facts.at = constants::Conditions{};
  CHECK(judge(topic_able, facts, {}).left_out.front().words.find("thirst") == std::string::npos);
  facts.cause = Limit::able_water_deficit;
  const Evidence able = judge(topic_able, facts, {});
  CHECK(able.grade >= Grade::biased);
  facts.cause = Limit::none;
  facts.at->degC = 5;
  const Evidence both = merge({judge(topic_alive, facts, {}), able});
  REQUIRE(both.left_out.size() > 1);
  CHECK(
      both.left_out.front().words ==
      "thirst may act sooner than shown: without water the model's people lasted 0.7 to 1.5 times as long as "
      "published, mostly too long");
}
