// Shares, medians and signals of a handful of futures, counted by hand.
#include "bide/study/questions/launch_odds.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

using namespace bide;
using study::Future;
using study::LostBy;
using study::Reached;

namespace {

Future future(Reached reached, float able_h, float alive_h, double minutes = 0,
              LostBy lost_by = LostBy::nothing, double aboard_min = 0) {
  Future out;
  out.able_h.fill(able_h);
  out.alive_h.fill(alive_h);
  out.launch = study::LaunchDrawn{reached, lost_by, minutes, false, aboard_min};
  return out;
}

constexpr double horizon_h = 96, confidence = 0.95;

}  // namespace

TEST_CASE("launches of eight futures") {
  const float beyond = std::numeric_limits<float>::infinity();
  std::vector<Future> all{future(Reached::dry, 80, beyond, 0, LostBy::nothing, 4),
                          future(Reached::dry, beyond, beyond, 0, LostBy::nothing, 5),
                          future(Reached::dry, beyond, beyond, 0, LostBy::nothing, 6),
                          future(Reached::wet, 20, 50, 10, LostBy::nothing, 13),
                          future(Reached::wet, 10, 40, 15, LostBy::nothing, 18),
                          future(Reached::wet, 30, 60, 35, LostBy::nothing, 38),
                          future(Reached::never, 1, 4, 0, LostBy::not_inflating),
                          future(Reached::never, 2, 6, 0, LostBy::swept_off)};
  all[1].launch->inverted = true;
  const auto odds = study::launch_odds(study::all_of(all), horizon_h, confidence);
  REQUIRE(odds.has_value());
  CHECK(odds->reached[0].share.count == 3);
  CHECK(odds->reached[1].share.share == doctest::Approx(3 / 8.0));
  CHECK(odds->reached[2].share.count == 2);
  CHECK_FALSE(odds->reached[0].first_able_h.has_value());  // the middle one of 80, beyond, beyond
  CHECK(*odds->reached[1].first_able_h == 20);
  CHECK(*odds->reached[1].last_alive_h == 50);
  CHECK(*odds->reached[2].last_alive_h == 4);  // the smallest rank by which half is reached
  CHECK(odds->lost[static_cast<std::size_t>(LostBy::not_inflating)].count == 1);
  CHECK(odds->lost[static_cast<std::size_t>(LostBy::not_righted)].count == 0);
  CHECK(*odds->middle_min == 15);
  CHECK(*odds->low_min == 10);
  CHECK(*odds->high_min == 35);
  CHECK(odds->inverted.count == 1);
  const std::size_t aboard[] = {2, 3, 5, 5};  // within 5, 10, 20 and 30 min
  for (std::size_t i = 0; i < std::size(aboard); ++i) CHECK(odds->aboard_by[i].count == aboard[i]);
}

TEST_CASE("without a launch, or without help, nothing is said") {
  const std::vector<Future> plain(3);
  CHECK_FALSE(study::launch_odds(study::all_of(plain), horizon_h, confidence).has_value());
  CHECK_FALSE(study::signals_left(study::all_of(plain), confidence).has_value());
}

TEST_CASE("signals left when help comes") {
  std::vector<Future> all(5);  // in the last, help does not come in time
  const float flares[] = {0, 2, 4, 4}, lamp[] = {0, 0, 3, 5};
  for (std::size_t i = 0; i < 4; ++i) {
    all[i].flares_left = flares[i];
    all[i].lamp_left_h = lamp[i];
    all[i].beacon_left_h = 0;
  }
  const auto left = study::signals_left(study::all_of(all), confidence);
  REQUIRE(left.has_value());
  CHECK(left->futures == 4);
  CHECK(left->some_flares.share == 0.75);
  CHECK(left->lamp.share == 0.5);
  CHECK(left->beacon.count == 0);
  CHECK(left->low == 0);
  CHECK(left->middle == 2);
  CHECK(left->high == 4);
}
