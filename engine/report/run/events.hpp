// Which dated events a person at a glance needs, out of the many a run records.
#pragma once

#include <string>
#include <vector>

#include "bide/timeline/series.hpp"

namespace bide::report {

struct PickedEvent {
  const timeline::Event* event = nullptr;
  int of_its_kind = 1;  // how many the run holds; only the first is picked of a kind that recurs often
};

// At most `most` events in time order. What befalls persons comes before what befalls stores and the raft,
// which comes before routine; of a kind that occurs more than three times, unless it is the
// state of a person, only the first is picked.
std::vector<PickedEvent> pick_events(const std::vector<timeline::Event>& events, std::size_t most);

}  // namespace bide::report
