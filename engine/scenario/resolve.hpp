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

// Contents of the pack for the raft's capacity, and what came aboard besides, like items added up in the
// order they are first named; the expired apart. Unknown keys are left out (check_rules reports them).
struct Stock {
  std::vector<StockItem> aboard, expired;
};
Stock stock_of(const Scenario& scenario, const RaftKind* raft_kind);
double quantity_of(const std::vector<StockItem>& items, ItemRole role);

// Regression on the United States survey by DXA, see constants/people.hpp; held to [4, 60] %.
double default_body_fat_pct(Sex sex, double age_years, double height_m, double mass_kg);
// Median of the United States registry, linear in age, held outside 20 to 80 years.
double default_vo2max_mL_kg_min(Sex sex, double age_years);
// Rise from the release depth, inflation, and the swim to the raft.
double float_free_minutes(double release_depth_m);

}  // namespace bide::scenario
