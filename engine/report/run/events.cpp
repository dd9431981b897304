#include "bide/report/run/events.hpp"

#include <algorithm>
#include <map>

namespace bide::report {
namespace {

using Kind = system::NoteKind;

// 0 first. States of persons, then what befalls the raft, then the rest.
int rank(Kind kind) {
  switch (kind) {
    case Kind::unable:
    case Kind::able_again:
    case Kind::unconscious:
    case Kind::died:
      return 0;
    case Kind::failure:
    case Kind::boarded:
    case Kind::opened_for_air:
      return 1;
    default:
      return 2;
  }
}

}  // namespace

std::vector<PickedEvent> pick_events(const std::vector<timeline::Event>& events, std::size_t most) {
  constexpr int often = 3;
  std::map<Kind, int> of_kind;
  for (const auto& event : events) ++of_kind[event.kind];

  struct Candidate {
    PickedEvent picked;
    int rank;
  };
  std::vector<Candidate> candidates;
  std::map<Kind, bool> shown;
  for (const auto& event : events) {
    const int place = rank(event.kind);
    const int count = of_kind[event.kind];
    if (place > 0 && count > often) {
      if (shown[event.kind]) continue;
      shown[event.kind] = true;
      candidates.push_back({{&event, count}, place});
    } else {
      candidates.push_back({{&event, 1}, place});
    }
  }
  std::stable_sort(candidates.begin(), candidates.end(),
                   [](const Candidate& a, const Candidate& b) { return a.rank < b.rank; });
  if (candidates.size() > most) candidates.resize(most);
  std::vector<PickedEvent> picked;
  for (const auto& candidate : candidates) picked.push_back(candidate.picked);
  std::stable_sort(picked.begin(), picked.end(), [](const PickedEvent& a, const PickedEvent& b) {
    return a.event->time_s < b.event->time_s;
  });
  return picked;
}

}  // namespace bide::report
