#include "bide/report/run/events.hpp"

#include <algorithm>
#include <map>

namespace bide::report {
namespace {

bool has(const std::string& text, const char* word) {
  return text.find(word) != std::string::npos;
}

// 0 first. States of persons, then loss and damage, then the rest.
int rank(const timeline::Event& event) {
  for (const char* word : {"able", "conscious", "dead", "died", "death", "dies", "alive", "rescue"}) {
    if (has(event.kind, word)) return 0;
  }
  for (const char* word : {"out", "empty", "fail", "torn", "lost", "leak", "capsize", "board", "release",
                           "co2", "for_air", "not_inflated"}) {
    if (has(event.kind, word)) return 1;
  }
  return 2;
}

}  // namespace

std::vector<PickedEvent> pick_events(const std::vector<timeline::Event>& events, std::size_t most) {
  constexpr int often = 3;
  std::map<std::string, int> of_kind;
  for (const auto& event : events) ++of_kind[event.kind];

  struct Candidate {
    PickedEvent picked;
    int rank;
  };
  std::vector<Candidate> candidates;
  std::map<std::string, bool> shown;
  for (const auto& event : events) {
    const int place = rank(event);
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
