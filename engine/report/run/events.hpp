// Selection of the few dated events that a summary shows, out of the many of a run.
#pragma once

#include <string>
#include <vector>

#include "bide/timeline/series.hpp"

namespace bide::report {

struct PickedEvent {
  const timeline::Event* event = nullptr;
  int of_its_kind = 1;  // number of this kind in the run
};

// Picks events. Those of persons have priority over those of stores and the raft, and these over routine; of
// a kind that occurs more than three times only the first is picked, unless it is the state of a person.
// @param events in time order
// @param most   number of events at most
// @return in time order
std::vector<PickedEvent> pick_events(const std::vector<timeline::Event>& events, std::size_t most);

}  // namespace bide::report
