// Screening of many inputs with few runs: Morris (1991), with mu* and the selection of distant trajectories
// of Campolongo, Cariboni & Saltelli (2007).
//
// Each column has an even number p of levels, at the middles of p equal slices rather than from 0 to 1 as in
// the paper, so that the quantile functions of unbounded inputs stay finite. A step moves p/2 levels, half of
// the column, so that every level is used equally often. Effects are per unit of the column (of probability):
// half an effect is the change that one step makes.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "bide/study/sampling/design.hpp"

namespace bide::study {

// Random trajectories: blocks of factors + 1 rows. Within a block each row differs from the one before in one
// column, and every column changes once. Throws std::invalid_argument unless levels is even and at least 2.
// @param trajectories number of blocks
// @param factors      number of columns
// @param levels       of each column, even, at least 2
// @param uniform      where the random numbers come from
Points morris_trajectories(std::size_t trajectories, std::size_t factors, std::size_t levels,
                           const UniformAt& uniform);

// Keeps trajectories that are far from one another: first the pair that is farthest apart, then one by one
// the trajectory that adds most to the sum of squared distances (the distance of two trajectories is the sum
// over all pairs of their points, Campolongo et al. 2007, section 3). The paper searches all combinations;
// this is a greedy search.
// @param trajectories as morris_trajectories() makes them
// @param wanted       how many to keep, from 2 to all; else throws std::invalid_argument
Points spread_trajectories(const Points& trajectories, std::size_t wanted);

// Statistics of the effects of one input, in the unit of the output.
struct MorrisEffect {
  double mean = 0;           // mu: effects of both signs cancel
  double mean_absolute = 0;  // mu*: how much the input matters
  double sigma = 0;          // standard deviation: large with interactions or a nonlinear effect
};

struct MorrisEffects {
  std::vector<MorrisEffect> factors;  // one per column
  std::size_t left_out = 0;           // trajectories with an output that is not finite
};
// Effects of every input. Throws std::invalid_argument unless there is one output for each row.
// @param trajectories the rows that were run
// @param outputs      one per row, in the same order
// @return empty with fewer than two trajectories whose outputs are all finite
std::optional<MorrisEffects> morris_effects(const Points& trajectories, std::span<const double> outputs);

}  // namespace bide::study
