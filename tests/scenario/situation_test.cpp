// What is assumed of people of whom little is known, and what contradicts itself.
#include "bide/scenario/situation.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "bide/core/time_utc.hpp"
#include "bide/scenario/moment.hpp"
#include "bide/scenario/month_weather.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/priors.hpp"
#include "bide/scenario/validate.hpp"
#include "support/near.hpp"

using namespace bide;
using namespace bide::scenario;
using bide::test::Near;

namespace {

constexpr double hour = 3600;

// Five people of whom nothing is known, nine hours after they abandoned their ship, at sea.
Situation five() {
  Situation s;
  s.name = "five";
  s.now_unix_s = parse_time_utc("2031-11-29T21:00Z").value();
  s.abandoned_unix_s = s.now_unix_s - 9 * hour;
  s.ahead_h = 120;
  s.place = {58, -12};
  s.persons = 5;
  return s;
}

std::string refused(const Situation& s) {
  const auto made = scenario_of(s);
  const auto* wrong = std::get_if<Diagnostics>(&made);
  return wrong ? wrong->front().pointer : "";
}

ValidScenario valid(const Situation& s) {
  const auto made = scenario_of(s);
  REQUIRE(std::holds_alternative<SituationFile>(made));
  const auto validated =
      validate_text(write_document(std::get<SituationFile>(made).document), "command line", {});
  if (const auto* wrong = std::get_if<Diagnostics>(&validated)) FAIL(to_string(wrong->front()));
  return std::get<ValidScenario>(validated);
}

bool draws(const ValidScenario& v, const std::string& pointer) {
  for (const auto& [at, d] : v.scenario.uncertain->inputs.entries)
    if (at == pointer) return true;
  for (const SharedInput& group : v.scenario.uncertain->groups)
    for (const std::string& at : group.pointers)
      if (at == pointer) return true;
  return false;
}

}  // namespace

TEST_CASE("the scenario begins at the abandonment and says when now is") {
  Situation s = five();
  s.last_contact_unix_s = s.now_unix_s - 6 * hour;
  const ValidScenario v = valid(s);
  CHECK(v.scenario.start_time_utc == "2031-11-29T12:00:00Z");
  CHECK(v.scenario.duration_h == Near(129));  // 9 + 120
  CHECK(*v.scenario.uncertain->known->now_h == Near(9));
  CHECK(*v.scenario.uncertain->known->alive_at_h == Near(3));  // 9 - 6
  CHECK(v.scenario.crew.size() == 5);
}

TEST_CASE("losses in the first minutes are counted as stated, and by nothing else") {
  Situation s = five();
  CHECK_FALSE(valid(s).scenario.uncertain->lost_in_first_minutes);
  s.lost_in_first_minutes = {0.05, 0.2};
  CHECK(valid(s).scenario.uncertain->lost_in_first_minutes == FirstMinutes{0.05, 0.2});
}

TEST_CASE("what is not known is drawn, what is known is not") {
  const ValidScenario nothing = valid(five());
  for (const char* pointer : {"/crew/4/sex", "/crew/4/age_years", "/crew/0/clothing", "/raft/kind",
                              "/weather/water_temperature_degC", "/crew/2/lifejacket"})
    CHECK_MESSAGE(draws(nothing, pointer), pointer);
  CHECK(nothing.scenario.uncertain->unknown_persons.size() == 5);
  CHECK(nothing.scenario.uncertain->alternatives.size() == priors().boarding.size());
  CHECK(nothing.scenario.uncertain->unmeasured == true);
  CHECK(nothing.scenario.uncertain->weather == true);

  Situation s = five();
  s.crew = {{Sex::male, 40, 82, 1.8}, {Sex::female, 12, {}, {}}};
  s.clothing = "offshore_cold";
  s.raft = "solas_6";
  s.boarding = "swim";
  s.sea_degC = 8;
  const ValidScenario known = valid(s);
  for (const char* pointer : {"/crew/0/sex", "/crew/0/age_years", "/crew/0/clothing", "/raft/kind",
                              "/weather/water_temperature_degC"})
    CHECK_FALSE_MESSAGE(draws(known, pointer), pointer);
  CHECK(*known.scenario.weather.water_temperature_degC == Near(8));
  CHECK(known.scenario.stores.pack == "solas_a");  // as scenarios/catalogue/rafts.json has it
  CHECK(known.scenario.uncertain->alternatives.empty());
  // Of the adult with height and mass only the fat is unknown; of the child all of it, about the charts.
  REQUIRE(known.scenario.uncertain->unknown_persons.size() == 2);
  CHECK(known.scenario.uncertain->unknown_persons[0].unknown == std::vector{UnknownPart::fat});
  CHECK(known.scenario.uncertain->unknown_persons[1].unknown.size() == 3);
  CHECK(known.scenario.crew[1].height_m == Near(1.51));
  CHECK(known.scenario.crew[1].mass_kg == Near(41.5));
}

TEST_CASE("without a raft nobody boards and nothing is aboard") {
  Situation s = five();
  s.raft = "none";
  const ValidScenario v = valid(s);
  CHECK_FALSE(v.scenario.raft);
  CHECK(v.scenario.boarding.kind == BoardingKind::none);
  CHECK(v.scenario.stores.pack == "none");
  s.boarding = "dry";
  CHECK(refused(s) == "--boarding");
}

TEST_CASE("contradictory knowledge is refused by the flag that states it") {
  const auto with = [](auto change) {
    Situation s = five();
    change(s);
    return refused(s);
  };
  CHECK(refused(five()).empty());
  CHECK(with([](Situation& s) { s.abandoned_unix_s = s.now_unix_s + hour; }) == "--abandoned");
  CHECK(with([](Situation& s) { s.abandoned_unix_s = s.now_unix_s - 1400 * hour; }) == "--abandoned");
  CHECK(with([](Situation& s) { s.last_contact_unix_s = s.now_unix_s - 10 * hour; }) == "--last-contact");
  CHECK(with([](Situation& s) { s.last_contact_unix_s = s.now_unix_s + hour; }) == "--last-contact");
  CHECK(with([](Situation& s) { s.sea_degC = 60; }) == "--sea");
  CHECK(with([](Situation& s) { s.sea_degC = -5; }) == "--sea");
  CHECK(with([](Situation& s) { s.sea_degC = std::nan(""); }) == "--sea");
  CHECK(with([](Situation& s) { s.raft = "galleon"; }) == "--raft");
  CHECK(with([](Situation& s) { s.clothing = "toga"; }) == "--clothing");
  CHECK(with([](Situation& s) { s.place = {52, 13}; }) == "--place");  // land
}

TEST_CASE("a sea far from the mean of the month is a caution") {
  Situation s = five();
  s.sea_degC = 25;
  const auto far = scenario_of(s);
  REQUIRE(std::get<SituationFile>(far).cautions.size() == 1);
  CHECK(std::get<SituationFile>(far).cautions[0].pointer == "--sea");
  s.sea_degC = 10;
  CHECK(std::get<SituationFile>(scenario_of(s)).cautions.empty());
}

TEST_CASE("the rafts that may be theirs hold the crew, with weights of family and size") {
  // Of the offshore family, weight 3, a crew of five may be in rafts for 6, 8 or 10, as 3 : 2 : 1.
  const Distribution d = raft_prior(5);
  double offshore = 0, all = 0;
  for (std::size_t i = 0; i < d.values.size(); ++i) {
    const auto key = std::get<std::string>(d.values[i]);
    CHECK(find_raft(key)->capacity_persons >= 5);
    if (key == "offshore_6") CHECK(d.weights[i] == Near(1.5));
    if (key == "offshore_8") CHECK(d.weights[i] == Near(1.0));
    if (key == "offshore_10") CHECK(d.weights[i] == Near(0.5));
    if (key.rfind("offshore_", 0) == 0 && key.rfind("offshore_foam", 0) != 0) offshore += d.weights[i];
    all += d.weights[i];
  }
  CHECK(offshore == Near(3));
  CHECK(all == Near(10));  // 3 + 1 + 3 + 3
  // Forty people fit into none: the largest of each family.
  CHECK(raft_prior(40).values.size() == priors().rafts.size());
}

TEST_CASE("sizes of children lie between the rows of the charts, of adults at the survey") {
  // Boys, 12 and 14 years: 1.49 and 1.64 m, 40.5 and 51 kg. Half way.
  const Size boy = usual_size(Sex::male, 13);
  CHECK(boy.height_m == Near(1.565));
  CHECK(boy.mass_kg == Near(45.75));
  // Women of 30 and over: 1.613 m, 28.3 kg/m2: 28.3 x 1.613^2 = 73.63.
  const Size woman = usual_size(Sex::female, 40);
  CHECK(woman.height_m == Near(1.613));
  CHECK(woman.mass_kg == Near(73.63).epsilon(1e-3));
}

TEST_CASE("a crew in words") {
  const auto crew = read_crew("M40 f38, M12:45:1.52 F7::1.2");
  const auto& people = std::get<std::vector<KnownPerson>>(crew);
  REQUIRE(people.size() == 4);
  CHECK(people[0] == KnownPerson{Sex::male, 40, {}, {}});
  CHECK(people[1] == KnownPerson{Sex::female, 38, {}, {}});
  CHECK(people[2] == KnownPerson{Sex::male, 12, 45, 1.52});
  CHECK(people[3] == KnownPerson{Sex::female, 7, {}, 1.2});
  for (const char* wrong : {"", "  ", "X40", "M", "M4O", "M40:", "M40:a", "M40:80:1.8:2", "M40:nan", "40"})
    CHECK_MESSAGE(
        (std::string(wrong) == "M40:") == std::holds_alternative<std::vector<KnownPerson>>(read_crew(wrong)),
        wrong);
}

TEST_CASE("times as people say them") {
  CHECK(*parse_hours("9h") == Near(9));
  CHECK(*parse_hours("90min") == Near(1.5));
  CHECK(*parse_hours("2d") == Near(48));
  for (const char* wrong : {"", "9", "h", "-1h", "9 h", "nanh", "9m", "1e400h"})
    CHECK_FALSE_MESSAGE(parse_hours(wrong), wrong);
  const double now = parse_time_utc("2031-11-29T21:00Z").value();
  CHECK(format_time_utc(*parse_moment("9h", now)) == "2031-11-29T12:00:00Z");
  CHECK(format_time_utc(*parse_moment("2031-11-29T14:30Z", now)) == "2031-11-29T14:30:00Z");
}

TEST_CASE("entrances by day follow the temperature") {
  CHECK(usual_opening_by_day(4) == Near(0.05));
  CHECK(usual_opening_by_day(10) == Near(0.05));
  CHECK(usual_opening_by_day(15) == Near(0.18).epsilon(0.01));  // 0.175, to the hundredth
  CHECK(usual_opening_by_day(20) == Near(0.3));
  CHECK(usual_opening_by_day(30) == Near(0.3));
}
