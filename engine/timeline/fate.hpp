// What becomes of one person, read from the limits passed.
//
// States: none. Inputs: passings in time order, levels, and what was watched at the stops while the person
// lived. Source: the rule on short lapses is ours (constants/routine).
#pragma once

#include <vector>

#include "bide/timeline/limits.hpp"

namespace bide::timeline {

using Quantities = std::array<double, quantity_count>;

// What one person was like at stops, in time order: the first, the last one alive, and each that a passing
// followed before the next; others between do not matter.
struct AtStops {
  std::vector<double> time_s;
  std::vector<Quantities> values;
};

Fate read_fate(int person, const std::vector<Passing>& passings, const Levels<double>& levels,
               const AtStops& stops, double end_s);

}  // namespace bide::timeline
