// The answer told from now on, and the question to ask next.
#include <doctest/doctest.h>

#include <limits>

#include "bide/study/questions/ask_next.hpp"
#include "bide/study/questions/odds.hpp"
#include "support/near.hpp"

using namespace bide;
using bide::test::Near;

TEST_CASE("hours from now: closely at first, then by days, none beyond the horizon") {
  const std::vector<double> expected{9, 10, 11, 12, 15, 21, 33, 45, 57, 81, 105, 129};
  CHECK(study::hours_from_now(9, 129) == expected);
  CHECK(study::hours_from_now(9, 12) == std::vector<double>{9, 10, 11, 12});
  CHECK(study::hours_from_now(9, 11.9) == std::vector<double>{9, 10, 11});
}

TEST_CASE("shares at hours from now, given the last contact, by hand") {
  // First person able until 2, 4, 6 ... 20 h, last until twice that; alive 5 h longer than able.
  std::vector<study::Future> futures;
  for (int i = 1; i <= 10; ++i) {
    study::Future f;
    const auto h = static_cast<float>(2 * i);
    f.able_h = {h, 1.5F * h, 2 * h};
    f.alive_h = {h + 5, 1.5F * h + 5, 2 * h + 5};
    futures.push_back(f);
  }
  // All were alive at 8 h: the first futures, whose first person dies at 7 h, are ruled out; nine are left.
  // Now is 9 h. Able until after 9 h: 10, 12 ... 20: six of nine; after 12 h: 14 to 20: four of nine.
  // Everybody alive after 12 h: 9 + ... the futures with h + 5 > 12, h of 8 and more: seven of nine.
  const auto hours = study::hours_from_now(9, 40);
  const auto odds = study::odds_given(study::all_of(futures), {8.0, std::nullopt}, 40, false, 0.95, hours);
  REQUIRE(odds);
  CHECK(odds->futures == 9);
  CHECK(odds->ruled_out == 1);
  REQUIRE(odds->times.size() == hours.size());
  CHECK(odds->times[0].at_h == Near(9));
  CHECK(odds->times[0].all_able.share == Near(6.0 / 9));
  CHECK(odds->times[3].at_h == Near(12));
  CHECK(odds->times[3].all_able.share == Near(4.0 / 9));
  CHECK(odds->times[3].all_alive.share == Near(7.0 / 9));
}

TEST_CASE("the question to ask next takes people together and leaves out what nobody can answer") {
  const auto unknown = [](const char* name, double of_variance) {
    study::Unknown out;
    out.name = name;
    out.reduction.of_variance = of_variance;
    return out;
  };
  const auto asks = study::ask_next(
      {unknown("/model/heat_made_position", 0.4), unknown("/weather/seed", 0.2), unknown("clothing", 0.1),
       unknown("/crew/0/age_years", 0.05), unknown("/crew/1/age_years", 0.07), unknown("/crew/1/sex", 0.001)},
      0.02);
  REQUIRE(asks.size() == 2);
  CHECK(asks[0].of_variance == Near(0.12));  // the ages of two people
  CHECK(asks[0].question.find("How old") == 0);
  CHECK(asks[1].of_variance == Near(0.1));
  CHECK(asks[1].question.find("wearing") != std::string::npos);
}
