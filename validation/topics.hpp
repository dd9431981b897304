// The list of topics. One folder each: README.md (source, conditions, digitisation, trust), data, case.cpp.
#pragma once

#include "validation/curve.hpp"
#include "validation/row.hpp"

namespace bide::validation {

// A topic's rows and, given these, what it shows as charts. The namespace has the folder's name.
namespace cabin_air {
std::vector<Row> rows();
std::vector<Curve> curves(const std::vector<Row>& rows);
}  // namespace cabin_air
namespace desert_water {
std::vector<Row> rows();
std::vector<Curve> curves(const std::vector<Row>& rows);
}  // namespace desert_water
namespace dry_food {
std::vector<Row> rows();
}
namespace kidney {
std::vector<Row> rows();
}
namespace losses {
std::vector<Row> rows();
std::vector<Curve> curves(const std::vector<Row>& rows);
}  // namespace losses
namespace humid_heat {
std::vector<Row> rows();
std::vector<Curve> curves(const std::vector<Row>& rows);
}  // namespace humid_heat
namespace starvation {
std::vector<Row> rows();
std::vector<Curve> curves(const std::vector<Row>& rows);
}  // namespace starvation
namespace seasickness {
std::vector<Row> rows();
std::vector<Curve> curves(const std::vector<Row>& rows);
}  // namespace seasickness
namespace hands {
std::vector<Row> rows();
std::vector<Curve> curves(const std::vector<Row>& rows);
}  // namespace hands
namespace pack_arithmetic {
std::vector<Row> rows();
}
namespace shivering {
std::vector<Row> rows();
std::vector<Curve> curves(const std::vector<Row>& rows);
}  // namespace shivering
namespace immersion {
std::vector<Row> rows();
std::vector<Curve> curves(const std::vector<Row>& rows);
}  // namespace immersion
namespace cold_air {
std::vector<Row> rows();
}
namespace immersion_guidance {
std::vector<Row> rows();
std::vector<Curve> curves(const std::vector<Row>& rows);
}  // namespace immersion_guidance
namespace air_steps {
std::vector<Row> rows();
std::vector<Curve> curves(const std::vector<Row>& rows);
}  // namespace air_steps
namespace fatness {
std::vector<Row> rows();
}
namespace raft_insulation {
std::vector<Row> rows();
std::vector<Curve> curves(const std::vector<Row>& rows);
}  // namespace raft_insulation
namespace raft_people {
std::vector<Row> rows();
std::vector<Curve> curves(const std::vector<Row>& rows);
}  // namespace raft_people
namespace floor {
std::vector<Row> rows();
}
namespace common_practice {
std::vector<Row> rows();
}
namespace depletion {
std::vector<Row> rows();
}
namespace without_water {
std::vector<Row> rows();
}
namespace sea_water {
std::vector<Row> rows();
}
namespace cold_rooms {
std::vector<Row> rows();
std::vector<Curve> curves(const std::vector<Row>& rows);
}  // namespace cold_rooms
namespace cool_water {
std::vector<Row> rows();
std::vector<Curve> curves(const std::vector<Row>& rows);
}  // namespace cool_water
namespace effort {
std::vector<Row> rows();
}
namespace groups {
std::vector<Row> rows();
}
namespace rhythm {
std::vector<Row> rows();
}
namespace heat {
std::vector<Row> rows();
}
namespace crews {
std::vector<Row> rows();
}

struct Topic {
  const char* name;  // of its folder, and in its rows
  std::vector<Row> (*rows)();
  std::vector<Curve> (*curves)(const std::vector<Row>& rows) = nullptr;  // null: nothing to draw
};
inline constexpr Topic topics[] = {
    {"cabin_air", cabin_air::rows, cabin_air::curves},
    {"desert_water", desert_water::rows, desert_water::curves},
    {"dry_food", dry_food::rows},
    {"kidney", kidney::rows},
    {"losses", losses::rows, losses::curves},
    {"humid_heat", humid_heat::rows, humid_heat::curves},
    {"starvation", starvation::rows, starvation::curves},
    {"seasickness", seasickness::rows, seasickness::curves},
    {"hands", hands::rows, hands::curves},
    {"pack_arithmetic", pack_arithmetic::rows},
    {"shivering", shivering::rows, shivering::curves},
    {"immersion", immersion::rows, immersion::curves},
    {"immersion_guidance", immersion_guidance::rows, immersion_guidance::curves},
    {"cold_air", cold_air::rows},
    {"air_steps", air_steps::rows, air_steps::curves},
    {"fatness", fatness::rows},
    {"raft_insulation", raft_insulation::rows, raft_insulation::curves},
    {"raft_people", raft_people::rows, raft_people::curves},
    {"floor", floor::rows},
    {"common_practice", common_practice::rows},
    {"depletion", depletion::rows},
    {"without_water", without_water::rows},
    {"sea_water", sea_water::rows},
    {"cold_rooms", cold_rooms::rows, cold_rooms::curves},
    {"cool_water", cool_water::rows, cool_water::curves},
    {"effort", effort::rows},
    {"groups", groups::rows},
    {"rhythm", rhythm::rows},
    {"heat", heat::rows},
    {"crews", crews::rows}};

}  // namespace bide::validation
