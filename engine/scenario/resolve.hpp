// Filling in what a scenario leaves out.
//
// States: none. Inputs: a scenario as it was read, and the tree it came from. Validity: this is done once,
// before any rule is checked, so that nobody else needs to know a default; what may stay empty is said in
// describe.hpp. Sources:
// constants/people.hpp, constants/boarding.hpp, constants/limits.hpp.
#pragma once

#include <string>
#include <vector>

#include "bide/scenario/document.hpp"
#include "bide/scenario/validate.hpp"

namespace bide::scenario {

struct StudyFile;

// @param root     the tree that the scenario was read from; what was wrong in it was left as it was
// @param scenario in which everything is filled in that `root` does not state
// @return pointers of what was filled in
std::vector<std::string> fill_defaults(const Node& root, Scenario& scenario);
// The same for a study file.
void fill_defaults(const Node& root, StudyFile& study);

// @param weather filled in, and found right by the rules
ResolvedWeather resolved_weather(const Weather& weather);

// Null when there is no raft, or its kind is not known.
const RaftKind* raft_kind_of(const Scenario& scenario);

// Contents of the pack for the raft's capacity and of the bag; equal items are added up, in the order in
// which they are first named; expired items apart. Unknown keys are left out (check_rules reports them).
struct Stock {
  std::vector<StockItem> aboard, expired;
};
Stock stock_of(const Scenario& scenario);
double quantity_of(const std::vector<StockItem>& items, ItemRole role);

// Whether what is stated of a person makes them injured: blood loss, burns, hurt hands, unfit for work. A
// fever does not.
bool hurt(const Person& person);

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
// @param inflation_min   of the raft, min, at least 0
// @param swim_min        to the raft and into it, min, at least 0
// @return min
double float_free_minutes(double release_depth_m, double inflation_min, double swim_min);

}  // namespace bide::scenario
