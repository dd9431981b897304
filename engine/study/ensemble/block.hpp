// A block of simulations in lock step, one to a vector lane, from compiled scenarios to results.
//
// States: none kept. Inputs: samples of one structure. A lane's result depends on its own sample alone: lane
// arithmetic does not mix lanes, and everything is read at times that the sample itself decides.
#pragma once

#include <array>

#include "bide/study/ensemble/sample_result.hpp"
#include "bide/system/compiled.hpp"
#include "bide/weather/weather.hpp"

namespace bide::study {

// A scenario ready to march.
struct Sample {
  system::Compiled<double> compiled;
  weather::Record weather;
};

// Where a block's time went, in s of this thread, and how many steps it took.
struct BlockTimes {
  double gather_s = 0, march_s = 0, watch_s = 0, read_s = 0;
  long steps = 0;
};

struct BlockOptions {
  bool to_the_end = false;      // go on when everybody is dead; the results are the same
  BlockTimes* times = nullptr;  // measured only when asked for: clocks cost time
};

// A short block repeats a sample; throws std::invalid_argument when the structures differ. A lane whose state
// or ledgers break has a `failure`; the others are unharmed.
std::array<SampleResult, block_width> run_block(const std::array<const Sample*, block_width>& samples,
                                                const BlockOptions& options = {});

}  // namespace bide::study
