#include "bide/report/run/events.hpp"

#include <doctest/doctest.h>

using namespace bide;

TEST_CASE("what befalls persons is kept, routine is thinned") {
  std::vector<timeline::Event> events;
  for (int i = 0; i < 40; ++i) events.push_back({i * 3600.0, 0, "water_issue", "Water.", 0, 0, ""});
  for (int i = 0; i < 5; ++i) events.push_back({i * 3600.0 + 60, i, "unable", "Unable.", 0, 0, ""});
  events.push_back({20 * 3600.0, -1, "store_out", "Water is out.", 0, 0, ""});
  const auto picked = report::pick_events(events, 16);
  CHECK(picked.size() == 7);  // five persons, one store, the first of forty issues
  double before_s = -1;
  int issues = 0;
  for (const auto& pick : picked) {
    CHECK(pick.event->time_s >= before_s);
    before_s = pick.event->time_s;
    if (pick.event->kind == "water_issue") issues = pick.of_its_kind;
  }
  CHECK(issues == 40);
  // With little room routine goes first, then stores.
  for (const auto& pick : report::pick_events(events, 5)) CHECK(pick.event->kind == "unable");
}
