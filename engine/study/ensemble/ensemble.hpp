// Many simulations: samples are made by number, run in blocks of lanes over threads, and passed on in order.
//
// States: none kept. Memory is bounded by the window, whatever the number of samples. Same sample, same bits:
// a result does not depend on the window, the threads, the range or the other samples in its block, because
// every sample is run in lanes, even a single one.
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <variant>

#include "bide/constants/limits.hpp"
#include "bide/study/ensemble/block.hpp"
#include "bide/study/ensemble/progress.hpp"

namespace bide::study {

// Why a sample could not be made.
struct NotMade {
  std::string reason;
};

// Makes a sample from its number; called from several threads at once.
using MakeSample = std::function<std::variant<Sample, NotMade>(std::uint64_t index)>;
// Takes a result; called from one thread at a time, in the order of the samples.
using Sink = std::function<void(const SampleResult&)>;

// Numbers of the samples, begin included, end excluded.
struct SampleRange {
  std::uint64_t begin = 0, end = 0;
};

struct EnsembleOptions {
  int threads = 0;                              // 0 or less: one per core
  std::size_t window = 256;                     // samples in memory at once, at least 1
  bool to_the_end = false;                      // go on when everybody is dead; the results are the same
  double near_margin = constants::near_margin;  // share of the margin left where somebody is near a limit
  ToldProgress progress;
  Look look = {};  // between blocks, more often than progress is told
};

// Runs the samples of a range. A failed sample is passed to the sink with its reason and counted. Exceptions
// of `make`, `sink` and `look` are passed on; throws std::invalid_argument for an empty window or a range
// that ends before it begins.
// @param range   numbers of the samples
// @param make    makes a sample
// @param sink    takes each result
// @param options threads, window, progress
// @return the final progress
Progress run_ensemble(SampleRange range, const MakeSample& make, const Sink& sink,
                      const EnsembleOptions& options = {});

}  // namespace bide::study
