// What to do where a weather file is silent.
//
// States: none. Inputs: one quantity's samples, the run they must cover, the longest gap that may be bridged.
// Validity: a gap is the time between two neighbouring values, or between an end of the run and the nearest
// value. Up to the longest gap it is bridged by a straight line (at an end: the value is held). A longer one
// takes the fallback, reached and left over an hour (a quarter of the gap if that is shorter), or is a
// problem when there is none. Gaps outside the run do not matter. Source: none, these are our rules.
#pragma once

#include "bide/weather/observations.hpp"

namespace bide::weather {

struct Span {
  double begin_unix_s, end_unix_s;
};

struct GapRule {
  double longest_gap_s;
  double usual_step_s;             // a bridged gap is worth a note when it is longer than this
  std::optional<double> fallback;  // in the quantity's unit
};

struct Filled {
  Samples samples;
  Problems problems;
  std::vector<std::string> notes;
};
Filled fill_gaps(Quantity q, const Samples& samples, Span run, const GapRule& rule);

// Wave height and period: where the file lacks them for longer than the rule allows, the height is that of
// the wind's fully developed sea, the period that of such a sea of the height. `wind` is filled, at 10 m.
struct FilledWaves {
  Samples height, period;
  std::vector<std::string> notes;
};
FilledWaves fill_waves(const Samples& height, const Samples& period, const Samples& wind, Span run,
                       const GapRule& rule);

// Nothing when the rows span the run; else a problem naming both spans.
std::optional<std::string> coverage_problem(const Observations&, Span run);

}  // namespace bide::weather
