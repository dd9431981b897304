#include "bide/study/questions/provision.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "bide/scenario/patch.hpp"
#include "bide/study/questions/common_futures.hpp"
#include "bide/study/questions/kit_futures.hpp"

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
  // A larger share is never lighter.
  REQUIRE(out.curve.size() >= 3);
  double mass_kg = 0;
  for (const study::KitForShare& point : out.curve) {
    if (!point.least) break;
    CHECK(point.least->cost.mass_kg >= mass_kg);
    mass_kg = point.least->cost.mass_kg;
  }
  CHECK(mass_kg > 0);
}

// The condition under which a kit with less of an item is ruled out, and a future with more of it not run:
// whatever the future, a dose more ends nothing before the time asked about. Tried future by future, in heat
// and in cold, for water spread over the days, issued in fixed amounts and drunk by thirst.
TEST_CASE("of what never harms, more never ends a future earlier") {
  const Changes by_rule[] = {
      {{"/rationing/rule", std::string("spread")}, {"/rationing/spread_days", 7.0}},
      {{"/rationing/rule", std::string("fixed_per_day")}, {"/rationing/water_L_per_day", 0.5}},
      {{"/rationing/rule", std::string("fixed_per_day")}, {"/rationing/water_L_per_day", 3.0}},
      {{"/rationing/rule", std::string("by_thirst")}}};
  int pairs = 0, of_tablets = 0;
  for (const char* name :
       {"tropics_little_water.json", "cold_sea_wet_floor_flat.json", "family_ten_days.json"})
    for (const Changes& rule : by_rule) {
      Changes changes = rule;
      changes.insert(
          changes.end(),
          {{"/duration_h", 168.0}, {"/uncertain/person_spread", true}, {"/uncertain/unmeasured", true}});
      const scenario::ValidScenario base = shipped(name, changes);
      for (const scenario::KitOffer& offer : scenario::kit_offers()) {
        if (!offer.more_never_harms) continue;
        std::vector<study::FuturesOfOption> by_doses;
        for (const int doses : {0, 1, 4, 12}) {
          if (doses > offer.most) continue;
          scenario::ValidScenario with = base;
          if (doses > 0) {
            auto pulled = scenario::pull(scenario::doses_of(offer, doses), base);
            if (std::holds_alternative<scenario::NotApplicable>(pulled)) continue;
            with = std::move(std::get<std::vector<scenario::ValidScenario>>(pulled).front());
          }
          by_doses.push_back(study::draw_futures(with, 7, 16, [](double) {}));
        }
        for (std::size_t d = 1; d < by_doses.size(); ++d)
          for (std::size_t k = 0; k < by_doses[d].futures.size(); ++k) {
            const auto &less = by_doses[d - 1].futures[k], &more = by_doses[d].futures[k];
            REQUIRE((less && more));
            ++pairs;
            of_tablets += offer.lever == "tablets_in_time" ? 1 : 0;
            INFO(name << " " << offer.lever << " future " << k);
            for (const auto times : {&study::Future::able_h, &study::Future::alive_h})
              CHECK_FALSE((std::isinf(((*less).*times)[study::first_person]) &&
                           !std::isinf(((*more).*times)[study::first_person])));
          }
      }
    }
  CHECK(of_tablets > 0);
  // Water alone: four amounts, in three scenarios under each rule, of 16 futures.
  CHECK(pairs >= 3 * static_cast<int>(std::size(by_rule)) * 3 * 16);
}

// Futures that follow from kits with more and with less are those that running them gives, and spare runs.
TEST_CASE("what follows of a kit is what running it gives") {
  study::ProvisionQuestion q = question(168);
  q.limits.mass_kg = 0.1;  // no search: the items alone are wanted
  const Provision asked = answer(shipped("tropics_little_water.json"), q);
  constexpr std::uint64_t count = 64;
  study::KitFutures known(asked.asked, asked.items, false, 1, count, 0),
      anew(asked.asked, asked.items, false, 1, count, 0);
  study::Kit kit(asked.items.size(), 0);
  REQUIRE(asked.items[0].offer->lever == "litre_each");
  for (const int doses : {2, 8}) {
    kit[0] = doses;
    known.all_of(kit, 0.95);
  }
  kit[0] = 5;
  const study::KitTried inferred = known.all_of(kit, 0.95), run = anew.all_of(kit, 0.95);
  CHECK(inferred.met == run.met);
  CHECK(inferred.ended.size() == run.ended.size());
  CHECK(anew.futures_run() == count);
  CHECK(known.futures_run() < 3 * count);
}

// Why a protective aid stays out of the pruning: in heat it ends futures that are met without it.
TEST_CASE("what may harm does so somewhere") {
  const scenario::ValidScenario base =
      shipped("tropics_little_water.json", {{"/duration_h", 168.0},
                                            {"/weather/air_temperature_degC", 29.5},
                                            {"/uncertain/person_spread", true},
                                            {"/uncertain/unmeasured", true}});
  for (const scenario::KitOffer& offer : scenario::kit_offers()) {
    if (offer.lever != "protective_aids") continue;
    CHECK_FALSE(offer.more_never_harms);
    auto pulled = scenario::pull(scenario::doses_of(offer, 1), base);
    const auto& with = std::get<std::vector<scenario::ValidScenario>>(pulled).front();
    const auto without = study::draw_futures(base, 7, 24, [](double) {}),
               warmer = study::draw_futures(with, 7, 24, [](double) {});
    int earlier = 0;
    for (std::size_t k = 0; k < without.futures.size(); ++k)
      earlier +=
          warmer.futures[k]->able_h[study::first_person] < without.futures[k]->able_h[study::first_person];
    CHECK(earlier > 0);
  }
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
  CHECK_FALSE(out.without_limits);  // nothing that is offered helps against that cold
}

// A desalinator of 1.2 kg meets it, as above; 0.3 kg do not.
TEST_CASE("where a limit binds, the kit without it is told, and what can be had within it") {
  study::ProvisionQuestion q = question(168);
  q.confidence = 0.8;
  q.limits.mass_kg = 0.3;
  const Provision out = answer(shipped("tropics_little_water.json"), q);
  CHECK_FALSE(out.least);
  REQUIRE(out.without_limits);
  CHECK(out.without_limits->at_least >= 0.8);
  CHECK(out.without_limits->cost.mass_kg > 0.3);
  for (const study::KitForShare& point : out.curve)
    if (point.least) CHECK(point.least->cost.mass_kg <= 0.3);
}

TEST_CASE("what cannot be asked is refused") {
  study::ProvisionQuestion q = question(24);
  q.futures = 20;  // 0.9 with 95 % confidence takes 29 futures without a miss
  CHECK(std::holds_alternative<study::Refusal>(study::provision(shipped("tropics_little_water.json"), q)));
  CHECK(
      std::holds_alternative<study::Refusal>(study::provision(shipped("immersion_only.json"), question(24))));
}
