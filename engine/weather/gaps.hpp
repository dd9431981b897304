// Filling gaps in weather data.
//
// States: none. Inputs: one quantity's samples, the run they must cover, the longest gap that may be bridged.
// Validity: a gap is the time between two neighbouring values, or between an end of the run and the nearest
// value. Up to the longest gap it is bridged by a straight line (at an end of the run: by the nearest value).
// A longer one is filled with the fallback, reached and left over an hour (a quarter of the gap if that is
// shorter), or is a problem when there is no fallback. Gaps outside the run do not matter. Source: none,
// these are our rules.
#pragma once

#include "bide/weather/observations.hpp"

namespace bide::weather {

// The time of the run.
struct Span {
  double begin_unix_s, end_unix_s;
};

struct GapRule {
  double longest_gap_s;            // bridged; a longer one takes the fallback
  double usual_step_s;             // a bridged gap longer than this is noted
  std::optional<double> fallback;  // in the quantity's unit
};

struct Filled {
  Samples samples;
  Problems problems;
  std::vector<std::string> notes;
};
// Fills the gaps of one quantity.
// @param q       which quantity, for messages
// @param samples its values, times ascending, in the quantity's unit
// @param run     the time to cover
// @param rule    what may be bridged, and the fallback
// @return samples without gaps over the run, or the problems
Filled fill_gaps(Quantity q, const Samples& samples, Span run, const GapRule& rule);

struct FilledWaves {
  Samples height, period;
  std::vector<std::string> notes;
};
// Fills the gaps of wave height and period. In a gap longer than the rule allows, the height is that of the
// sea fully developed by the wind, and the period that of a fully developed sea of that height.
// @param height significant wave height, m
// @param period mean zero-crossing period, s
// @param wind   at 10 m, m/s, without gaps over the run
// @param run    the time to cover
// @param rule   what may be bridged; its fallback is not used
FilledWaves fill_waves(const Samples& height, const Samples& period, const Samples& wind, Span run,
                       const GapRule& rule);

// Checks that the rows of a file span the run.
// @return empty when they do; else a problem that names both spans
std::optional<std::string> coverage_problem(const Observations&, Span run);

}  // namespace bide::weather
