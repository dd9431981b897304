#include "bide/scenario/first_minutes.hpp"

#include "bide/scenario/part_that_sets.hpp"

namespace bide::scenario {

bool enter_water(const Scenario& scenario) {
  return scenario.boarding.kind != BoardingKind::dry;
}

bool may_enter_water(const Scenario& scenario) {
  if (enter_water(scenario)) return true;
  const auto& u = scenario.uncertain;
  const auto how_boarded = [](const std::string& pointer) {
    return pointer == "/boarding" || pointer == "/boarding/kind";
  };
  return u && (u->launch || u->readiness || !part_that_sets(*u, how_boarded).empty());
}

}  // namespace bide::scenario
