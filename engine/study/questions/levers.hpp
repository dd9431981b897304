// Every practical change tried on a scenario, one at a time, and ranked by its gain.
//
// Inputs: a validated scenario. Output: for each lever of the catalogue the gain or loss against the scenario
// as it is, why it does not apply, or why it is withheld. A lever is withheld when anywhere in the unmeasured
// ranges carbon dioxide passes the limit of being able and the lever makes it worse. Gains are given in every
// member of the range as well (run_unmeasured), each against the same member without the lever. Runs go over
// all processors; the order of the results depends on the results alone.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "bide/outcome/compare.hpp"
#include "bide/scenario/levers.hpp"
#include "bide/study/ensemble/refusal.hpp"
#include "bide/study/questions/unmeasured.hpp"

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
  std::vector<Gains> members;                // in each member of the range, paired with the base's
  double co2_low_ppm = 0, co2_high_ppm = 0;  // range of the highest value, over the unmeasured ranges
};

// All levers and the scenario without any.
struct LeversTried {
  outcome::Figures base;
  RangeMembers base_members;  // without any lever
  double base_co2_low_ppm = 0, base_co2_high_ppm = 0;
  std::vector<LeverTried> tried;  // by hours_bought in able, then alive, then margin; others last
};

// Tries every lever of the catalogue.
// @param scenario a validated scenario
// @param look     see Look
// @return the levers, or why a run has no result
std::variant<LeversTried, Refusal> try_levers(const scenario::ValidScenario& scenario, const Look& look = {});

// Lowest and highest of a gain over the central case and the members. What is reached neither with nor
// without the lever, and what is indistinguishable, counts as no gain.
struct GainRange {
  Gain low, high;
};
GainRange gain_range(const LeverTried& tried, Gain Gains::*which);
// Lowest and highest gain in the margin left, over those of them in which no limit of being able is reached.
struct MarginRange {
  double low = 0, high = 0;
};
MarginRange margin_range(const LeverTried& tried);

// Whether a gain is one, or a loss: reached with or without the lever, and distinguishable.
bool told(const Gain& gain);
// Whether the lever costs time anywhere in the range.
bool loses(const LeverTried& tried, Gain Gains::*which);
// Hours of the central case; where it gains none that can be told, the most in the range, unless some of the
// range loses: where the central case reaches no limit, it is there that time is won.
double hours_bought(const LeverTried& tried, Gain Gains::*which);

// Sign of the gain: +1, -1, or 0 if indistinguishable. In able, else in alive, of the central case; else in
// the hours that only the range gains; else in the margin; else in the hours that only the range loses.
int direction(const LeverTried& tried);

}  // namespace bide::study
