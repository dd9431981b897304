// Draws what becomes of a raft: whether it was neglected, what of it fails, and how its launch goes.
//
// Chances: of the scenario, else of the published counts, whose interval is drawn (Beta distribution after
// Jeffreys, 1946: x + 1/2, n - x + 1/2 of x in n). A raft is neglected or not; its parts then fail each by
// itself. Every step takes its number whether it is reached or not, so that a future keeps its numbers when a
// chance or a date changes. Validity: one's own body climbs in as in warm calm water, 18 to 52 years old;
// whoever is aboard hauls in the rest (common practice, nobody has measured it); suits, gloves and waves are
// left out. Sources: constants/readiness.hpp.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "bide/scenario/scenario.hpp"
#include "bide/study/sampling/factor_kind.hpp"

namespace bide::study {

// Asked once for each factor, in order; gives its number in (0, 1).
using TakeNumber = std::function<double(const std::string& name, FactorKind kind)>;

// dry: straight from the deck; wet: out of the water; never: nobody reaches a raft.
enum class Reached { dry, wet, never };

// What lost a raft.
enum class LostBy {
  nothing,
  painter_not_fast,
  swept_off,
  held_down,       // by lashings, or without a weak link that parts
  too_shallow,     // release or painter not reached
  lift_too_small,  // of the packed raft, to pull the painter
  not_inflating,
  pulled_under,  // the weak link outlasts the tubes
  not_righted,
  nobody_climbed_in
};
inline constexpr int ways_to_lose = 10;

struct LaunchDrawn {
  Reached reached = Reached::dry;
  LostBy lost_by = LostBy::nothing;  // of the last raft; nothing unless reached is never
  double minutes = 0;                // in the water before boarding, in fives; 0 for dry and never
  bool inverted = false;             // the raft that was reached had to be righted
  double aboard_min = 0;             // since the order to launch, or since a raft floated free; 0 for never
};

struct RaftDrawn {
  std::optional<LaunchDrawn> launch;  // with "launch"
  bool no_raft = false;
  bool neglected = false;
  std::vector<scenario::FailureKind> failures;  // of the raft reached, from the start
};

// A person who climbs in.
struct Climber {
  scenario::Sex sex = scenario::Sex::male;
  double mass_kg = 0;   // above 0
  bool soaked = false;  // clothes take up water
};

// What stands for one future before its raft is drawn.
struct RaftBefore {
  const scenario::Uncertain& uncertain;
  const scenario::Readiness* readiness = nullptr;  // null: nothing is known
  double months_overdue = 0;                       // of the service; 0 where the chance is stated
  bool release_past_date = false;
  int capacity_persons = 0;
  double air_degC = 0;  // for inflation
  std::vector<Climber> crew;
};

RaftDrawn draw_raft(const RaftBefore& before, const TakeNumber& take);

// Time from the pull until a raft has its shape, in proportion between the two requirements and held outside.
// @param air_degC of the raft, degC
// @return min
double inflation_minutes(double air_degC);

// Chance that a person climbs into a raft unaided: the share of the trial, times the share of reserves above
// the water in the clothes, reserves being spread evenly over the range that was measured.
// @param share   of people of that sex, in light clothes, [0, 1]
// @param climber mass and clothes
// @return [0, 1]
double climbs_in(double share, const Climber& climber);

}  // namespace bide::study
