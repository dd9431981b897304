// Screening of many inputs with few runs: Morris (1991), with mu* and the spread of trajectories of
// Campolongo, Cariboni & Saltelli (2007).
//
// Each column has an even number p of levels, at the middles of p equal slices rather than from 0 to 1 as in
// the paper, so that the quantile functions of unbounded inputs stay finite. A step moves p/2 levels, which
// is half of the column, and so every level is used equally often. Effects are per unit of the column (of
// probability): times one half they are the change that one step made.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "bide/study/sampling/design.hpp"

namespace bide::study {

// `trajectories` blocks of factors + 1 rows; in a block each row differs from the one before in one column,
// and every column changes once. Throws std::invalid_argument unless levels is even and at least 2.
Points morris_trajectories(std::size_t trajectories, std::size_t factors, std::size_t levels,
                           const UniformAt& uniform);

// Keeps `wanted` of the trajectories, far from one another: first the pair that is farthest apart, then one
// by one the trajectory that adds most to the sum of squared distances (the distance of two trajectories is
// the sum over all pairs of their points, Campolongo et al. 2007, section 3). The paper searches all
// combinations; this is that search step by step.
Points spread_trajectories(const Points& trajectories, std::size_t wanted);

struct MorrisEffect {
  double mean = 0;           // mu: effects of both signs cancel
  double mean_absolute = 0;  // mu*: how much the input matters
  double sigma = 0;          // how much its effect depends on where the others are, or is not a straight line
};

// One entry per factor. `outputs` in the order of the rows; a trajectory with an output that is not finite is
// left out and counted. Left out altogether with fewer than two whole trajectories.
struct MorrisEffects {
  std::vector<MorrisEffect> factors;
  std::size_t left_out = 0;
};
std::optional<MorrisEffects> morris_effects(const Points& trajectories, std::span<const double> outputs);

}  // namespace bide::study
