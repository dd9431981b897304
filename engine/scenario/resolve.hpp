// Filling in what a scenario leaves out.
//
// Inputs: a scenario whose fields were read without fault, the tree it came from, its raft. What is filled in
// is named by JSON pointer in `defaults`; what may stay empty is said in describe.hpp. Sources:
// constants/people.hpp, constants/boarding.hpp, constants/limits.hpp.
#pragma once

#include <string>
#include <vector>

#include "bide/scenario/document.hpp"
#include "bide/scenario/validate.hpp"

namespace bide::scenario {

void fill_defaults(const Node& root, const RaftKind* raft_kind, Scenario& scenario,
                   std::vector<std::string>& defaults);

// Contents of the pack for the raft's capacity and of the bag; equal items are added up, in the order in
// which they are first named; expired items apart. Unknown keys are left out (check_rules reports them).
struct Stock {
  std::vector<StockItem> aboard, expired;
};
Stock stock_of(const Scenario& scenario, const RaftKind* raft_kind);
double quantity_of(const std::vector<StockItem>& items, ItemRole role);

// Body fat by a regression on the United States survey by DXA, see constants/people.hpp.
// @param sex       as recorded
// @param age_years years
// @param height_m  m, above 0
// @param mass_kg   body mass, kg, above 0
// @return % of mass, limited to [4, 60]
double default_body_fat_pct(Sex sex, double age_years, double height_m, double mass_kg);
// Maximal oxygen uptake: median of the United States registry, linear in age.
// @param sex       as recorded
// @param age_years years; constant outside [20, 80]
// @return mL/(kg min)
double default_vo2max_mL_kg_min(Sex sex, double age_years);
// Time in the water until a raft that floats free is reached: rise, inflation, and the swim to the raft.
// @param release_depth_m depth at which the release acts, m, at least 0
// @return min
double float_free_minutes(double release_depth_m);

}  // namespace bide::scenario
