#include "bide/report/run/events.hpp"

#include <doctest/doctest.h>

using namespace bide;
using Kind = system::NoteKind;

TEST_CASE("what befalls persons is kept, routine is thinned") {
  std::vector<timeline::Event> events;
  for (int i = 0; i < 40; ++i) events.push_back({i * 3600.0, 0, Kind::water_issued, "Water.", 0, 0, ""});
  for (int i = 0; i < 5; ++i) events.push_back({i * 3600.0 + 60, i, Kind::unable, "Unable.", 0, 0, ""});
  events.push_back({20 * 3600.0, -1, Kind::failure, "The canopy tears.", 0, 0, ""});
  const auto picked = report::pick_events(events, 16);
  CHECK(picked.size() == 7);  // five persons, one failure, the first of forty issues
  double before_s = -1;
  int issues = 0;
  for (const auto& pick : picked) {
    CHECK(pick.event->time_s >= before_s);
    before_s = pick.event->time_s;
    if (pick.event->kind == Kind::water_issued) issues = pick.of_its_kind;
  }
  CHECK(issues == 40);
  // With little room routine goes first, then damage.
  for (const auto& pick : report::pick_events(events, 5)) CHECK(pick.event->kind == Kind::unable);
}
