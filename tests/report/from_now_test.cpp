// Odds counted from now: times move, clocks stay.
#include "bide/report/odds/from_now.hpp"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "bide/core/units.hpp"
#include "bide/report/document/text.hpp"
#include "bide/report/odds/odds.hpp"
#include "bide/report/odds/odds_page.hpp"
#include "support/presentation.hpp"
#include "support/synthetic_timeline.hpp"

using namespace bide;

namespace {

// Twenty futures that end at 5, 6, ... 24 h after the start, followed for 120 h.
study::OddsAnswer from_the_start() {
  std::vector<study::Future> futures(20);
  for (std::size_t i = 0; i < futures.size(); ++i)
    futures[i].able_h.fill(5.0F + static_cast<float>(i)), futures[i].alive_h.fill(30);
  auto scenario = test::valid_scenario(2);
  scenario.scenario.uncertain.emplace();
  study::OddsAnswer out{
      scenario,   1,
      20,         {},
      {3.0, 9.0}, study::odds_of(study::all_of(futures), 120, false, 0.95, std::vector{9.0, 10.0, 120.0}),
      {},         {}};
  return out;
}

bool has(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("times count from now, and what is over by then is before now") {
  const study::OddsAnswer start = from_the_start(), now = report::from_now(start);
  CHECK(now.odds.horizon_h == doctest::Approx(111));
  CHECK(*now.known.alive_at_h == doctest::Approx(-6));
  CHECK(now.odds.times.front().at_h == doctest::Approx(0));
  CHECK(now.odds.times.back().at_h == doctest::Approx(111));
  // The clock of any time is the same: 30 h after the start is 21 h from now.
  const auto alive = [](const study::OddsAnswer& m) { return *m.odds.alive[0].until[3].time; };
  CHECK(alive(start) == doctest::Approx(30));
  CHECK(alive(now) == doctest::Approx(21));
  CHECK(now.scenario.start_unix_s + alive(now) * hour_s ==
        doctest::Approx(start.scenario.start_unix_s + alive(start) * hour_s));
  const auto json = nlohmann::json::parse(report::odds_json(now));
  CHECK(json["hours_count_from"] == "now");
  CHECK(json["start_time_utc"] == "2031-02-03T18:00Z");
  CHECK(json["hours_count_from_utc"] == "2031-02-04T03:00Z");
  CHECK(json["known"]["alive_at_h"] == -6.0);
  CHECK(nlohmann::json::parse(report::odds_json(start))["hours_count_from"] == "start");
  CHECK(has(report::odds_csv(now), "# time_h counts from now, 2031-02-04T03:00Z\n"));
  const std::string text = test::unwrapped(to_text(report::pages::odds_page(now), {}));
  INFO(text);
  // Synthetic runs start on 3 Feb at 18:00 UTC, at 30 W.
  CHECK(has(text, "Abandoned 3 Feb 18:00 UTC (16:00 local), 9.0 h ago. Now 4 Feb 03:00 UTC (01:00 local)"));
  CHECK(has(text, "Last contact 3 Feb 21:00 UTC (19:00 local), all alive"));
  CHECK(has(
      text,
      "Able until first person, 1 in 10 futures before now; half of them by 4 Feb 08:00 UTC (06:00 local), "
      "5.0 h from now; 9 in 10 by 4 Feb 16:00 UTC (14:00 local), 13 h from now"));
  CHECK(has(text,
            "Alive until last person, 1 in 10 futures by 5 Feb 00:00 UTC (4 Feb 22:00 local), 21 h "
            "from now"));
  test::check_no_promise(text);
}
