// The crew in another order: the same results, person by person and bit for bit, in a single run, in lanes
// and in the answer of odds.
#include <doctest/doctest.h>

#include <algorithm>
#include <cstring>
#include <tuple>

#include "bide/outcome/outcome.hpp"
#include "bide/report/run/json.hpp"
#include "bide/study/ensemble/block.hpp"
#include "bide/study/questions/ask_odds.hpp"
#include "bide/study/sampling/make_sample.hpp"
#include "bide/timeline/simulate.hpp"
#include "fuzz/bounds.hpp"
#include "fuzz/generator.hpp"

using namespace bide;
using test::Mode;

namespace {

constexpr std::uint64_t seed = 4, number = 150;

// Somebody in place i of the crew is in place moved(i) of the other one: turned round by one, which for three
// and more is not its own inverse.
std::size_t moved(std::size_t i, std::size_t people) {
  return (i + 1) % people;
}
nlohmann::json turned(nlohmann::json file) {
  auto& crew = file["crew"];
  std::rotate(crew.begin(), crew.end() - 1, crew.end());
  return file;
}

struct Pair {
  scenario::ValidScenario here, there;
};

// A crew of three at least, the first and the last of them alike, in two orders.
std::optional<Pair> pair_of(std::uint64_t k) {
  const auto made = test::any_scenario(Mode::ordinary, seed, k);
  if (!made || made->file["crew"].size() < 2) return std::nullopt;
  nlohmann::json file = made->file;
  file["duration_h"] = 4;
  file["crew"].push_back(file["crew"][0]);
  auto here = scenario::validate_text(file.dump(), "here.json", "."),
       there = scenario::validate_text(turned(file).dump(), "there.json", ".");
  const bool valid = std::holds_alternative<scenario::ValidScenario>(here);
  REQUIRE(valid == std::holds_alternative<scenario::ValidScenario>(there));
  if (!valid) MESSAGE(to_string(std::get<scenario::Diagnostics>(here).front()));
  if (!valid) return std::nullopt;
  return Pair{std::get<scenario::ValidScenario>(std::move(here)),
              std::get<scenario::ValidScenario>(std::move(there))};
}

bool same_bits(const std::vector<double>& a, const std::vector<double>& b) {
  return a.size() == b.size() &&
         (a.empty() || std::memcmp(a.data(), b.data(), a.size() * sizeof(double)) == 0);
}

timeline::Timeline run(const scenario::ValidScenario& valid) {
  const auto weather = weather::load(valid);
  REQUIRE(std::holds_alternative<weather::Record>(weather));
  auto simulated = timeline::simulate(valid, std::get<weather::Record>(weather));
  REQUIRE(std::holds_alternative<timeline::Timeline>(simulated));
  return std::get<timeline::Timeline>(std::move(simulated));
}

// What happened, without the label of the person; sorted, since several things may happen at one time.
using Happened = std::tuple<double, int, system::NoteKind, double, double>;
std::vector<Happened> events_of(const timeline::Timeline& t, bool move) {
  std::vector<Happened> out;
  for (const timeline::Event& e : t.events) {
    const bool named = e.person >= 0 && move;
    const int person =
        named ? static_cast<int>(moved(static_cast<std::size_t>(e.person), t.persons.size())) : e.person;
    out.emplace_back(e.time_s, person, e.kind, e.asked, e.given);
  }
  std::sort(out.begin(), out.end());
  return out;
}
using Crossed = std::tuple<double, int, system::Limit, double, bool, bool>;
std::vector<Crossed> crossings_of(const timeline::Timeline& t, bool move) {
  std::vector<Crossed> out;
  for (const timeline::Crossing& c : t.crossings) {
    const auto person = static_cast<std::size_t>(c.person);
    out.emplace_back(c.time_s, static_cast<int>(move ? moved(person, t.persons.size()) : person), c.limit,
                     c.slope_per_h, c.grazing, c.upward);
  }
  std::sort(out.begin(), out.end());
  return out;
}

// Numbers of an answer of odds, in one list: a quantile left out lies beyond the horizon.
std::vector<double> numbers_of(const study::Odds& odds) {
  std::vector<double> out{static_cast<double>(odds.futures)};
  for (const auto* windows : {&odds.able, &odds.alive})
    for (const study::Window& window : *windows) {
      out.push_back(window.beyond.share);
      for (const study::QuantileByRank& each : window.until)
        for (const auto& time : {each.time, each.low, each.high}) out.push_back(time.value_or(-1));
    }
  for (const study::CausesBy& by : odds.causes)
    for (const auto& [cause, share] : by.ended) {
      out.push_back(static_cast<double>(cause));
      out.push_back(share);
    }
  for (const study::AtTime& at : odds.times)
    for (const study::Chance* chance : {&at.all_able, &at.some_able, &at.all_alive, &at.some_alive})
      out.push_back(chance->share);
  return out;
}

void check_same(const timeline::Fate& a, const timeline::Fate& b) {
  CHECK(a.able_until_s == b.able_until_s);
  CHECK(a.alive_until_s == b.alive_until_s);
  CHECK(a.unconscious_s == b.unconscious_s);
  CHECK(a.able_cause == b.able_cause);
  CHECK(a.alive_cause == b.alive_cause);
  CHECK(a.next_cause == b.next_cause);
  CHECK(a.nearest_margin_fraction == b.nearest_margin_fraction);
}

}  // namespace

TEST_CASE("the order of the crew changes nothing but the order of the results") {
  int compared = 0;
  for (std::uint64_t k = 0; k < number; ++k) {
    CAPTURE(k);
    const auto pair = pair_of(k);
    if (!pair) continue;
    ++compared;
    const timeline::Timeline here = run(pair->here), there = run(pair->there);
    for (const auto& column : report::common_columns)
      CHECK_MESSAGE(same_bits(here.*(column.values), there.*(column.values)), column.name);
    const std::size_t people = here.persons.size();
    REQUIRE(there.persons.size() == people);
    for (std::size_t p = 0; p < people; ++p) {
      CAPTURE(p);
      const std::size_t q = moved(p, people);
      for (const auto& column : report::person_columns)
        CHECK_MESSAGE(same_bits(here.persons[p].*(column.values), there.persons[q].*(column.values)),
                      column.name);
      check_same(here.fates[p], there.fates[q]);
    }
    CHECK(events_of(here, true) == events_of(there, false));
    CHECK(crossings_of(here, true) == crossings_of(there, false));
    for (std::size_t i = 1; i < here.events.size(); ++i)
      CHECK(here.events[i].time_s >= here.events[i - 1].time_s);
    CHECK(here.flags == there.flags);
  }
  CHECK(compared > number / 2);
}

TEST_CASE("in lanes the order of the crew changes nothing but the order of the results") {
  int compared = 0;
  weather::Cache cache;
  for (std::uint64_t k = 0; k < number; k += 3) {
    CAPTURE(k);
    const auto pair = pair_of(k);
    if (!pair) continue;
    const auto made = [&](const scenario::ValidScenario& valid) {
      return std::get<study::Sample>(study::make_sample(valid, cache));
    };
    const study::Sample here = made(pair->here), there = made(pair->there);
    REQUIRE(here.compiled.structure == there.compiled.structure);
    ++compared;
    std::array<const study::Sample*, block_width> block{};
    for (std::size_t l = 0; l < block.size(); ++l) block[l] = l % 2 == 0 ? &here : &there;
    const auto results = study::run_block(block);
    const study::SampleResult &a = results[0], &b = results[1];
    CHECK(a.failure.empty());
    CHECK(b.failure.empty());
    CHECK(same_bits({a.water_out_s, a.water_left_L, a.food_out_s, a.coldest_inside_degC, a.highest_co2_ppm},
                    {b.water_out_s, b.water_left_L, b.food_out_s, b.coldest_inside_degC, b.highest_co2_ppm}));
    const std::size_t people = a.persons.size();
    for (std::size_t p = 0; p < people; ++p) {
      const study::PersonResult &one = a.persons[p], &same = b.persons[moved(p, people)];
      CHECK(same_bits(
          {one.able_until_s, one.alive_until_s, one.lowest_core_degC, one.worst_water_deficit_pct,
           one.hands_h, one.shivering_h, one.cold_feet_h, one.next_margin_fraction},
          {same.able_until_s, same.alive_until_s, same.lowest_core_degC, same.worst_water_deficit_pct,
           same.hands_h, same.shivering_h, same.cold_feet_h, same.next_margin_fraction}));
      CHECK(one.able_cause == same.able_cause);
      CHECK(one.next_cause == same.next_cause);
    }
  }
  CHECK(compared > static_cast<int>(number) / 6);
}

// What is drawn belongs to nobody in particular, so that both crews meet the same futures.
TEST_CASE("odds do not depend on the order of the crew") {
  int compared = 0;
  bool somebody_ended = false;
  for (std::uint64_t k = 0; k < number; k += 10) {
    CAPTURE(k);
    const auto made = test::any_scenario(Mode::ordinary, seed, k);
    if (!made || made->file["crew"].size() < 2) continue;
    nlohmann::json file = made->file;
    file["duration_h"] = 24;
    file["uncertain"] = {{"unmeasured", true}};
    const auto asked = [&](const nlohmann::json& of) {
      const auto valid = scenario::validate_text(of.dump(), "order.json", ".");
      REQUIRE(std::holds_alternative<scenario::ValidScenario>(valid));
      study::OddsQuestion question;
      question.futures = 16;
      question.nested = false;
      question.threads = 1;
      return study::ask_odds(std::get<scenario::ValidScenario>(valid), question);
    };
    const auto here = asked(file), there = asked(turned(file));
    const auto *a = std::get_if<study::OddsAnswer>(&here), *b = std::get_if<study::OddsAnswer>(&there);
    REQUIRE((a == nullptr) == (b == nullptr));
    if (!a) continue;  // somebody is dead at the start
    ++compared;
    CHECK(a->failed.size() == b->failed.size());
    CHECK(same_bits(numbers_of(a->odds), numbers_of(b->odds)));
    somebody_ended = somebody_ended || a->odds.able[0].beyond.share < 1;
  }
  CHECK(compared > 5);
  CHECK(somebody_ended);
}
