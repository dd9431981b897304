// Every practical change tried on a scenario, one at a time, and ranked by what it buys.
//
// Inputs: a validated scenario. Output: for each lever of the catalogue what it gains or loses against the
// scenario as it is, why it makes no sense, or why it is withheld. A lever is withheld when carbon dioxide,
// with canopy and leakage at either end of their unmeasured ranges, passes the limit of being able and is
// worse by the lever. Gains are told at both of these ends as well, each against the scenario at the same
// end. Runs go over all processors; the order of the results depends on nothing but the
// results.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "bide/outcome/compare.hpp"
#include "bide/scenario/levers.hpp"
#include "bide/timeline/balance.hpp"

namespace bide::study {

// Hours later than before; beyond a horizon only a bound is known.
struct Gain {
  double hours = 0;
  bool at_least = false;   // the true gain, or loss, is that or more
  bool unreached = false;  // neither before nor with the lever: no hours to compare
  bool told_apart = false;
};
Gain gain_of(const std::optional<double>& before_s, const std::optional<double>& with_s, double horizon_s);

// What one lever changes; the margin where neither with nor without it a limit of being able is reached.
struct Gains {
  Gain able, alive;
  double margin = 0;  // of the way to the nearest limit
};

struct LeverTried {
  enum class State { makes_no_sense, withheld, tried };

  const scenario::Lever* lever = nullptr;
  scenario::Burden burden;
  State state = State::tried;
  std::string reason;  // why it makes no sense, or is withheld
  outcome::Figures figures;
  Gains gained;
  std::vector<Gains> ends;  // at the lowest and at the highest heat loss and leakage; empty without a raft
  double co2_low_ppm = 0, co2_high_ppm = 0;  // highest, over the unmeasured ranges
};

struct LeversTried {
  outcome::Figures base;
  double base_co2_low_ppm = 0, base_co2_high_ppm = 0;
  std::vector<LeverTried> tried;  // the largest gain in able, then alive, then margin, first; the rest behind
};

std::variant<LeversTried, scenario::Diagnostics, timeline::Failure> try_levers(
    const scenario::ValidScenario& scenario);

// More than nothing, less than nothing, or not told apart: in able, else in alive, else by the margin.
int direction(const LeverTried& tried);

}  // namespace bide::study
