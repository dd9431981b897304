// Every practical change tried on a scenario, one at a time, and ranked by its gain.
//
// Inputs: a validated scenario. Output: for each lever of the catalogue the gain or loss against the scenario
// as it is, why it does not apply, or why it is withheld. A lever is withheld when, with canopy and leakage
// at either end of their unmeasured ranges, carbon dioxide passes the limit of being able and the lever makes
// it worse. Gains are given at both of these ends as well, each against the scenario at the same end. Runs go
// over all processors; the order of the results depends on the results alone.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "bide/outcome/compare.hpp"
#include "bide/scenario/levers.hpp"
#include "bide/study/ensemble/refusal.hpp"

namespace bide::study {

// Change of a time by a lever; beyond a horizon only a bound is known.
struct Gain {
  double hours = 0;              // later than without the lever; negative: earlier
  bool at_least = false;         // the true gain, or loss, is that or more
  bool unreached = false;        // not reached with or without the lever: no hours to compare
  bool distinguishable = false;  // distinguishable from no gain
};
// Gain in a time.
// @param before_s  without the lever, s; empty: beyond the horizon
// @param with_s    with the lever, s; empty: beyond the horizon
// @param horizon_s end of both runs, s
Gain gain_of(const std::optional<double>& before_s, const std::optional<double>& with_s, double horizon_s);

// Gains by one lever.
struct Gains {
  Gain able, alive;
  double margin = 0;  // gain in the margin left, where no limit of being able is reached with or without it
};

// One lever and its effect.
struct LeverTried {
  enum class State { not_applicable, withheld, tried };

  const scenario::Lever* lever = nullptr;
  scenario::Burden burden;
  State state = State::tried;
  std::string reason;  // why it does not apply, or is withheld
  outcome::Figures figures;
  Gains gained;
  std::vector<Gains> ends;                   // at the lowest and at the highest heat loss (at_end_of_ranges)
  double co2_low_ppm = 0, co2_high_ppm = 0;  // range of the highest value, over the unmeasured ranges
};

// All levers and the scenario without any.
struct LeversTried {
  outcome::Figures base;
  std::vector<outcome::Figures> base_ends;  // without any lever, at the lowest and at the highest heat loss
  double base_co2_low_ppm = 0, base_co2_high_ppm = 0;
  std::vector<LeverTried> tried;  // by gain in able, then alive, then margin, largest first; others last
};

// Tries every lever of the catalogue.
// @param scenario a validated scenario
// @return the levers, or why a run has no result
std::variant<LeversTried, Refusal> try_levers(const scenario::ValidScenario& scenario);

// Sign of the gain: +1, -1, or 0 if indistinguishable; in able, else in alive, else in the margin.
int direction(const LeverTried& tried);

}  // namespace bide::study
