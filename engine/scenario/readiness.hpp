// How ready a raft is: dates and stowage as they are known, and the chances of what may fail at a launch.
//
// States: none. Inputs: read with the scenario (validate.hpp). Dates are facts and count in every run
// (due.hpp); chances are drawn in studies alone (study/sampling/raft_draw.hpp).
#pragma once

#include <optional>
#include <string>

#include "bide/scenario/distribution.hpp"

namespace bide::scenario {

// Dates as "2031-02-28"; one left out is not known.
struct Readiness {
  std::optional<std::string> raft_made, raft_serviced;
  double service_interval_months = 0;
  std::optional<std::string> release_unit_expires, pack_expires, signals_expire, medicines_expire;
  // Stowage as somebody looked at it.
  std::optional<bool> raised_with_clear_drains, dry_with_nothing_on_top, painter_by_weak_link,
      no_extra_lashings;
  double signals_position = 0;  // of how many signals work: 0 fewest, 1 most

  bool operator==(const Readiness&) const = default;
};

// Of "uncertain": chances of failures. One left out follows from the dates or from the published counts.
struct RaftChances {
  std::optional<double> neglected;
  // Of a neglected raft.
  std::optional<double> not_inflating, tube_leaking, valve_lost, floor_failed, lamp_dead;

  bool operator==(const RaftChances&) const = default;
};

enum class LaunchWay { by_hand, float_free };

// Of "uncertain": a launch as a chain of steps.
struct Launch {
  LaunchWay way = LaunchWay::by_hand;
  int rafts = 1;                                // 2: another like it, if the first is lost
  std::optional<Distribution> sinks_after_min;  // the deck is gone; by hand alone
  double painter_not_fast = 0, swept_off = 0, one_chamber = 0, inflates_inverted = 0, not_righted = 0;
  double steps_across = 0;  // by hand alone
  double painter_length_m = 0;
  double stowage_height_m = 0;                             // float_free alone
  std::optional<double> water_depth_m, packed_buoyancy_N;  // float_free alone

  bool operator==(const Launch&) const = default;
};

}  // namespace bide::scenario
