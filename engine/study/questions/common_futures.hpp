// Options under common random futures: sample k of each draws the same weather, people and failures, because
// draws depend on the names of the uncertain inputs, not on the file.
//
// Inputs: scenarios with `uncertain`, each to its own horizon; pairs are judged within the nearer one.
// Output: the times until which the first person is able and alive, paired. Same seed, same futures; results
// depend neither on threads nor on the other options.
#pragma once

#include <cstdint>
#include <functional>
#include <vector>

#include "bide/scenario/validate.hpp"
#include "bide/study/questions/future.hpp"
#include "bide/study/statistics/paired.hpp"

namespace bide::study {

struct FuturesOfOption {
  std::vector<std::optional<Future>> futures;  // by sample; empty: it has no result
  double horizon_h = 0;
};

// Runs the futures of one option.
// @param scenario with `uncertain`
// @param seed     the same for every option
// @param count    samples 0 to count - 1 are run
// @param progress called with the share done, [0, 1]; not empty
FuturesOfOption draw_futures(const scenario::ValidScenario& scenario, std::uint64_t seed, std::uint64_t count,
                             const std::function<void(double fraction)>& progress);

struct PairedFutures {
  std::uint64_t drawn = 0, without_result = 0;  // in either option: left out of the pairs
  double horizon_h = 0, confidence = 0;
  Paired able, alive;  // first person; second option minus first, h
};

// Compares two options by their futures.
// @param first, second of the same seed and count
// @param confidence    of all intervals, (0, 1)
// @return empty with fewer than two pairs that have results
std::optional<PairedFutures> pair_futures(const FuturesOfOption& first, const FuturesOfOption& second,
                                          double confidence);

}  // namespace bide::study
