// Odds read off futures whose times are known beforehand: future i of a hundred ends at hour i + 1.
#include "bide/study/questions/odds.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

#include "bide/study/questions/nested.hpp"
#include "support/near.hpp"

using namespace bide;
using bide::test::Near;
using system::Limit;

namespace {

constexpr float beyond = std::numeric_limits<float>::infinity();

// First person able until hour i + 1, middle 10 h and last 20 h later; alive twice as long. Cold ends the
// first forty, thirst the rest. Help comes at 50.5 h.
std::vector<study::Future> hundred() {
  std::vector<study::Future> out;
  for (int i = 0; i < 100; ++i) {
    study::Future f;
    const auto h = static_cast<float>(i + 1);
    f.able_h = {h, h + 10, h + 20};
    f.alive_h = {2 * h, 2 * h + 10, 2 * h + 20};
    f.able_cause.fill(i < 40 ? Limit::able_core_low : Limit::able_water_deficit);
    f.rescue_h = 50.5F;
    out.push_back(f);
  }
  return out;
}

}  // namespace

TEST_CASE("first, middle and last are taken in the order in which people come to it") {
  study::SampleResult r;
  r.persons.resize(4);
  const double able_s[] = {4 * 3600, 1 * 3600, study::beyond_horizon, 2 * 3600};
  for (std::size_t p = 0; p < 4; ++p) r.persons[p].able_until_s = able_s[p];
  r.persons[1].able_cause = Limit::able_co2;
  const study::Future f = study::future_of(r, {7, 3, false});
  CHECK(f.able_h[study::first_person] == 1);
  CHECK(f.able_cause[study::first_person] == Limit::able_co2);
  CHECK(f.able_h[study::half_of_crew] == 2);  // by then half of four have come to it
  CHECK(f.able_h[study::last_person] == beyond);
  CHECK(f.rescue_h == 7);
  CHECK(f.held_back_h == 3);
}

TEST_CASE("times, shares, causes and help of a hundred known futures") {
  const auto futures = hundred();
  const study::Odds o = study::odds_of(study::all_of(futures), 80, true, 0.95);
  CHECK(o.futures == 100);
  const study::Window& first = o.able[study::first_person];
  // The p-quantile of 1, 2 ... 100 is the smallest hour by which at least the share p has ended.
  CHECK(*first.until[0].time == Near(5));
  CHECK(*first.until[3].time == Near(50));
  CHECK_FALSE(first.until[5].time.has_value());  // 90 % lies beyond 80 h
  CHECK(first.beyond.count == 21);               // hours 80 to 100: not below the horizon
  CHECK(o.able[study::last_person].beyond.count == 41);
  // At 40 h, half of 80: hours 41 to 100 are still able; alive is twice that: 2 h > 40.
  const study::AtTime& half = o.times[5];
  CHECK(half.at_h == Near(40));
  CHECK(half.all_able.count == 60);
  CHECK(half.all_alive.count == 80);
  CHECK(half.some_able.count == 80);
  // By 53.3 h: forty by cold, thirteen by thirst.
  const study::CausesBy& causes = o.causes[3];
  CHECK(causes.by_h == Near(80.0 * 8 / 12));
  REQUIRE(causes.ended.size() == 2);
  CHECK(causes.ended[0].first == Limit::able_core_low);
  CHECK(causes.ended[0].second == Near(0.40));
  CHECK(causes.ended[1].second == Near(0.13));
  // Help at 50.5 h: the first is able then in futures 51 to 100, everybody alive in 26 to 100.
  REQUIRE(o.help);
  CHECK(o.help->all_able.count == 50);
  CHECK(o.help->all_alive.count == 75);
  CHECK(o.help->none_by_horizon.count == 0);
  // Wilson (1927) for 50 of 100 at 95 %: 0.4038 to 0.5962.
  CHECK(o.help->all_able.interval.low == Near(0.4038).epsilon(1e-3));
  CHECK(o.help->all_able.interval.high == Near(0.5962).epsilon(1e-3));
}

TEST_CASE("who is first, by place in the crew, and together at the same moment") {
  study::SampleResult r;
  r.persons.resize(3);
  r.persons[1].able_until_s = r.persons[2].able_until_s = 3600;
  r.coldest_inside_degC = 4, r.water_out_s = 2 * 3600;
  const study::Future two = study::future_of(r);
  CHECK_FALSE(two.first_unable[0]);
  CHECK(two.first_unable[1]);
  CHECK(two.first_unable[2]);
  CHECK(two.coldest_inside_degC == 4);
  CHECK(two.water_out_h == 2);
  r.persons[1].able_until_s = r.persons[2].able_until_s = study::beyond_horizon;
  const study::Future nobody = study::future_of(r);
  CHECK(nobody.first_unable.none());
  const std::vector<study::Future> all{two, two, two, nobody};
  const study::Odds o = study::odds_of(study::all_of(all), 80, false, 0.95);
  CHECK(o.first_unable[0].count == 0);
  CHECK(o.first_unable[1].count == 3);
  CHECK(o.first_unable[2].share == Near(0.75));
}

// Of a hundred futures: life ends before 80 h in 1 to 39 (2 h each), by cold in 1 to 20. Seventy have a
// cabin, of 1 to 70 degC at the coldest: ranks 7, 35 and 63. Ten carry no water; it runs out at 41 to 99 h in
// the odd ones after that, within 80 h in 41, 43 ... 79: twenty, half by 59.
TEST_CASE("what ends life, how cold it gets inside, and when water is out") {
  auto futures = hundred();
  for (std::size_t i = 0; i < 100; ++i) {
    study::Future& f = futures[i];
    f.alive_cause.fill(i < 20 ? Limit::lethal_core_low : Limit::lethal_water_deficit);
    if (i < 70) f.coldest_inside_degC = static_cast<float>(i + 1);
    if (i < 10) f.water_out_h = 0;
    if (i >= 40 && i % 2 == 0) f.water_out_h = static_cast<float>(i + 1);
  }
  const study::Odds o = study::odds_of(study::all_of(futures), 80, false, 0.95);
  REQUIRE(o.alive_ended.size() == 2);
  CHECK(o.alive_ended[0].first == Limit::lethal_core_low);
  CHECK(o.alive_ended[0].second == Near(0.20));
  CHECK(o.alive_ended[1].second == Near(0.19));
  CHECK(*o.aboard.coldest_low_degC == Near(7));
  CHECK(*o.aboard.coldest_middle_degC == Near(35));
  CHECK(*o.aboard.coldest_high_degC == Near(63));
  CHECK(o.aboard.no_water.count == 10);
  CHECK(o.aboard.water_out.count == 20);
  CHECK(*o.aboard.water_out_middle_h == Near(59));
}

TEST_CASE("odds given what is known are those of the futures that agree with it, and nothing else") {
  const auto futures = hundred();
  const study::KnownSoFar known{60.0, 45.0};
  std::vector<study::Future> left;
  for (const auto& f : futures)
    if (f.alive_h[study::first_person] > 60.0F && f.rescue_h > 45.0F) left.push_back(f);
  CHECK(left.size() == 70);
  const auto given = study::odds_given(study::all_of(futures), known, 80, true, 0.95);
  const study::Odds filtered = study::odds_of(study::all_of(left), 80, true, 0.95);
  REQUIRE(given);
  CHECK(given->ruled_out == 30);
  CHECK(given->futures == filtered.futures);
  for (std::size_t who = 0; who < study::who_count; ++who)
    for (std::size_t q = 0; q < study::quantiles.size(); ++q)
      CHECK(given->able[who].until[q].time == filtered.able[who].until[q].time);
  for (std::size_t t = 0; t < filtered.times.size(); ++t)
    CHECK(given->times[t].some_alive.count == filtered.times[t].some_alive.count);
  CHECK(given->help->some_able.count == filtered.help->some_able.count);
}

// Futures 51 to 100 are held back for as many hours; of fifty, ranks 5, 25 and 45.
TEST_CASE("how long weather holds help back, in the futures in which it does") {
  auto futures = hundred();
  const study::Odds none = study::odds_of(study::all_of(futures), 80, true, 0.95);
  CHECK(none.help->held_back.at_all.count == 0);
  CHECK_FALSE(none.help->held_back.low_h.has_value());
  for (std::size_t i = 50; i < 100; ++i) futures[i].held_back_h = static_cast<float>(i + 1);
  for (std::size_t i = 97; i < 100; ++i) futures[i].no_weather_for_help = true;
  const study::HeldBack h = study::odds_of(study::all_of(futures), 80, true, 0.95).help->held_back;
  CHECK(h.at_all.count == 50);
  CHECK(h.no_weather.count == 3);
  CHECK(*h.low_h == Near(55));
  CHECK(*h.middle_h == Near(75));
  CHECK(*h.high_h == Near(95));
}

TEST_CASE("help that had come before now rules a future out; none left is said, not made up") {
  const auto futures = hundred();
  CHECK_FALSE(study::odds_given(study::all_of(futures), {std::nullopt, 60.0}, 80, true, 0.95));
  CHECK_FALSE(study::odds_given(study::all_of(futures), {500.0, std::nullopt}, 80, true, 0.95));
}

// Three truths, five cases each: medians 3, 30 and beyond the horizon of 50.
TEST_CASE("two kinds of not knowing: the middle case under each truth, and the spread under one") {
  const std::vector<float> hours{1, 2, 3, 4, 5, 10, 20, 30, 40, 45, beyond, beyond, beyond, beyond, beyond};
  const study::NestedBands n = study::nested_bands(hours, 3, 5, 50);
  // Type 7 quantiles of 3, 30, 50: at 0.1 3 + 0.2 x 27 = 8.4, at 0.9 30 + 0.8 x 20 = 46.
  CHECK(n.truths_low == Near(8.4));
  CHECK(n.truths_high == Near(46));
  // Of five cases: at 0.1 0.4 of the way from first to second: 1.4, 14, 50; at 0.9 4.6, 43, 50.
  CHECK(n.cases_low == Near((1.4 + 14 + 50) / 3));
  CHECK(n.cases_high == Near((4.6 + 43 + 50) / 3));
  CHECK_THROWS_AS(study::nested_bands(hours, 4, 5, 50), std::invalid_argument);
}
