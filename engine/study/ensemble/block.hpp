// Runs a block of simulations in lock step, one per vector lane, from compiled scenarios to results.
//
// States: none kept. Inputs: samples of one structure. A lane's result depends on its own sample alone: lane
// arithmetic does not mix lanes, and the times at which results are read depend on that sample alone.
#pragma once

#include <array>

#include "bide/constants/limits.hpp"
#include "bide/study/ensemble/sample_result.hpp"
#include "bide/system/compiled.hpp"
#include "bide/weather/weather.hpp"

namespace bide::study {

// A scenario ready to march.
struct Sample {
  system::Compiled<double> compiled;
  weather::Record weather;
  double signals_at_s = beyond_horizon;  // when signals are counted; beyond the horizon: never
};

// Computing time of a block by part, s of this thread, and its number of steps.
struct BlockTimes {
  double gather_s = 0, march_s = 0, watch_s = 0, read_s = 0;
  long steps = 0;
};

struct BlockOptions {
  bool to_the_end = false;                      // go on when everybody is dead; the results are the same
  BlockTimes* times = nullptr;                  // filled if given; reading clocks costs time
  double near_margin = constants::near_margin;  // share of the margin left where somebody is near a limit
};

// Runs one block. Throws std::invalid_argument when the structures differ. A lane whose state becomes
// non-finite or whose ledgers do not close has a `failure`; the other lanes are not affected.
// @param samples one per lane, none null; a block with fewer samples repeats one
// @return one result per lane
std::array<SampleResult, block_width> run_block(const std::array<const Sample*, block_width>& samples,
                                                const BlockOptions& options = {});

}  // namespace bide::study
