// Many simulations: samples made by number, run by blocks of lanes over threads, handed on in order.
//
// States: none kept. Memory is bounded by the window, whatever the number of samples. Same sample, same bits:
// a result does not depend on the window, the threads, the range or the other samples in its block, because
// every sample goes through the lanes, alone or not.
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <variant>

#include "bide/study/ensemble/block.hpp"

namespace bide::study {

// Why a sample could not be made.
struct NotMade {
  std::string reason;
};

// Called from several threads at once.
using MakeSample = std::function<std::variant<Sample, NotMade>(std::uint64_t index)>;
// Called from one thread at a time, in the order of the samples.
using Sink = std::function<void(const SampleResult&)>;

struct SampleRange {
  std::uint64_t begin = 0, end = 0;
};

struct Progress {
  std::uint64_t done = 0, total = 0, failed = 0;
  double per_s = 0, left_s = 0;
};

struct EnsembleOptions {
  int threads = 0;           // 0: one to a core
  std::size_t window = 256;  // samples in memory at once
  bool to_the_end = false;   // go on when everybody is dead; the results are the same
  std::function<void(const Progress&)> progress;
};

// Returns what the last call of `progress` would say. A failed sample is handed to the sink with its reason
// and counted. What `make` or `sink` throw passes through.
Progress run_ensemble(SampleRange range, const MakeSample& make, const Sink& sink,
                      const EnsembleOptions& options = {});

}  // namespace bide::study
