#include "validation/conflicts.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <stdexcept>

namespace bide::validation {

namespace {

// Ids of two rows; the reason stands beside each group, and in the READMEs of their topics.
struct Conflict {
  const char *one, *other;
};
constexpr Conflict conflicts[] = {
    // Lean men made 68 W/m2 after two hours at 10 degC; at 8 degC the same would be 1.4 times rest, not 2.
    {"fatness: metabolic rate at 10 degC in shorts, 13 % fat",
     "cold_air: metabolic rate over rest at 8 degC"},
    // The heat of 1975 is half of what the same group's later law gives at the temperatures of that cooling.
    {"immersion: heat production at 5 degC, clothed",
     "cool_water: heat over the law of 1977, clothed in 5 degC water"},
    {"immersion: heat production at 10 degC, clothed",
     "cool_water: heat over the law of 1977, clothed in 10 degC water"},
    {"immersion: heat production at 15 degC, clothed",
     "cool_water: heat over the law of 1977, clothed in 15 degC water"},
    // A law that lets nobody shiver for two hours at 18 degC makes too little in the first hour at 0.6.
    {"cold_air: shivering at 18 degC, second hour", "cold_air: heat made, first hour near-nude at 0.6 degC"},
    // The core fell less in 45 min at 17 degC than in an hour at 20, and fell by more still in swimsuits.
    {"immersion_guidance: core after 45 min at 17 degC, body exposed",
     "immersion: rectal change after 1 h at 20 degC, nude"},
    {"immersion_guidance: core after 45 min at 17 degC, body exposed",
     "cool_water: cooling in swimsuits at rest, 15 degC"},
    {"immersion_guidance: core after 45 min at 17 degC, body exposed",
     "cool_water: cooling in swimsuits at rest, 20 degC"},
    // In the first hour near 20 degC the core held in six men, and fell by 0.9 to 1.6 K in others.
    {"cool_water: core change in the first hour in cool water",
     "immersion: rectal change after 1 h at 20 degC, nude"},
    {"cool_water: core change in the first hour in cool water",
     "cool_water: cooling in swimsuits at rest, 20 degC"},
    // At 10 degC in shorts the core fell in three hours, and did not in four.
    {"cold_rooms: rectal fall in 3 h to 10 degC, rested",
     "cold_rooms: core change, 4 h at 10 degC, weeks after toil"}};

// Row to the rows that cannot hold with it.
using Graph = std::map<std::size_t, std::set<std::size_t>>;

Graph without(Graph graph, const std::set<std::size_t>& gone) {
  for (const std::size_t row : gone) graph.erase(row);
  for (auto& [row, excluded] : graph)
    for (const std::size_t each : gone) excluded.erase(each);
  return graph;
}

// Greatest number of rows of which none excludes another: the row that excludes most is kept or given up,
// until only pairs are left, of which one goes.
std::size_t most_at_once(const Graph& graph) {
  const auto busiest = std::max_element(graph.begin(), graph.end(), [](const auto& a, const auto& b) {
    return a.second.size() < b.second.size();
  });
  if (busiest == graph.end()) return 0;
  if (busiest->second.size() <= 1) {
    std::size_t paired = 0;
    for (const auto& [row, excluded] : graph) paired += excluded.size();
    return graph.size() - paired / 2;
  }
  std::set<std::size_t> kept_and_excluded = busiest->second;
  kept_and_excluded.insert(busiest->first);
  return std::max(1 + most_at_once(without(graph, kept_and_excluded)),
                  most_at_once(without(graph, {busiest->first})));
}

}  // namespace

void name_conflicts(std::vector<Row>& rows) {
  const auto find = [&rows](const char* id) -> Row& {
    const auto row = std::find_if(rows.begin(), rows.end(), [id](const Row& r) { return r.id() == id; });
    if (row == rows.end()) throw std::runtime_error(std::string("no row is named ") + id);
    return *row;
  };
  for (const Conflict& conflict : conflicts) {
    find(conflict.one).conflicts_with.emplace_back(conflict.other);
    find(conflict.other).conflicts_with.emplace_back(conflict.one);
  }
}

int attainable(const std::vector<Row>& rows) {
  std::map<std::string, std::size_t> independent;
  for (std::size_t i = 0; i < rows.size(); ++i)
    if (rows[i].counts()) independent[rows[i].id()] = i;
  Graph graph;
  for (const auto& [id, i] : independent) {
    graph[i];
    for (const std::string& other : rows[i].conflicts_with) {
      const auto found = independent.find(other);
      if (found == independent.end() || (rows[i].holds() && rows[found->second].holds())) continue;
      graph[i].insert(found->second);
      graph[found->second].insert(i);
    }
  }
  return static_cast<int>(most_at_once(graph));
}

}  // namespace bide::validation
