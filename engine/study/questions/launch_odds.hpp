// How launches went over many futures, and which signals were left when help came.
//
// States: none. Inputs: futures, all those that agree with what is known. Shares are of these; intervals are
// the sampling error of their number alone.
#pragma once

#include <array>
#include <optional>

#include "bide/study/questions/odds.hpp"

namespace bide::study {

inline constexpr std::size_t ways_to_reach = 3;
// Minutes by which people are aboard are counted.
inline constexpr std::array<double, 4> aboard_by_min{5, 10, 20, 30};

// Futures of one end of the launch.
struct ReachedOdds {
  Chance share;
  // Median hours until the first person is no longer able and the last no longer alive; empty beyond the
  // horizon, and where there is no such future.
  std::optional<double> first_able_h, last_alive_h;
};

struct LaunchOdds {
  std::array<ReachedOdds, ways_to_reach> reached;       // in the order of Reached
  std::array<Chance, ways_to_lose> lost;                // in the order of LostBy, of the last raft
  std::optional<double> low_min, middle_min, high_min;  // in the water, of the wet: 10, 50 and 90 %
  std::array<Chance, aboard_by_min.size()> aboard_by;   // of all futures
  Chance inverted;                                      // of the rafts reached
};
// Empty if no future has a launch.
// @param horizon_h  end of every future, h, above 0
// @param confidence of the intervals, (0, 1)
std::optional<LaunchOdds> launch_odds(const Futures& futures, double horizon_h, double confidence);

struct SignalsLeft {
  std::size_t futures = 0;               // in which help comes while somebody is alive
  Chance some_flares, lamp, beacon;      // left, of these futures
  double low = 0, middle = 0, high = 0;  // flares and rockets: 10, 50 and 90 %
};
// Empty if help comes in no future while somebody is alive.
// @param confidence of the intervals, (0, 1)
std::optional<SignalsLeft> signals_left(const Futures& futures, double confidence);

}  // namespace bide::study
