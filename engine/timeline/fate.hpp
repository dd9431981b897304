// What becomes of one person, read from the limits passed and the death that followed.
//
// States: none. Inputs: crossings in time order, and what was watched at the stops while the person lived.
// Source: the rule on short lapses is ours (constants/routine).
#pragma once

#include <optional>
#include <vector>

#include "bide/timeline/series.hpp"

namespace bide::timeline {

// What one person was like at stops, in time order: the first, the last one alive, and each that a crossing
// followed before the next; others between do not matter.
struct AtStops {
  std::vector<double> time_s;
  std::vector<system::Quantities<double>> values;
};

// When the limit was passed that the next check found passed.
struct Death {
  double time_s = 0;
  system::Limit limit = system::Limit::none;
};

Fate read_fate(int person, const std::vector<Crossing>& crossings, const system::Levels<double>& levels,
               const AtStops& stops, const std::optional<Death>& death, double end_s);

}  // namespace bide::timeline
