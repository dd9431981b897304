// Ways to forecast the rows of a study from everything but that study.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "validation/judge/draws.hpp"
#include "validation/judge/score.hpp"

namespace bide::validation {

inline constexpr double row_scatter = 1;  // half-intervals: the interval is taken as one standard deviation

// The model as it is.
Scores of_model(const Runs& runs);

// The average over the priors of the free parameters: nothing is fitted.
// @param count draws of the priors
Scores of_priors(const Runs& runs, const Surface& surface, std::size_t count, std::uint64_t seed);

// The mean of the other studies' published values of the same kind, unit and region; of the same medium where
// the region has none. Empty where no other study has measured it.
Scores trivial(const std::vector<JudgedRow>& rows);

// Gagge's two nodes under the row's conditions (support/two_node.hpp), for what they can say: heat made, mean
// skin, core and its change.
Scores two_nodes(const std::vector<JudgedRow>& rows);

// Points of the priors, each parameter kept within `farthest`.
std::vector<Point> prior_points(std::size_t count, std::uint64_t seed);

// A posterior over the free parameters by a Markov chain on the surface; leaving a study out takes its
// likelihood out of the weights of the chain's points. The likelihood of a study is a mixture: its rows
// scatter by a half-interval, or, one time in ten, the study is an outlier and they scatter by four. Whole
// runs count in every case.
// What one free parameter leans on: leaving out this study moves its mean most.
struct Leans {
  std::string study;
  double moved = 0;  // of the logarithm, in standard deviations of the posterior
};
struct Posterior {
  std::vector<Point> points;
  Scores scores;
  double accepted = 0;                // share of the chain's steps
  double least_effective_points = 0;  // of the weights, over the studies left out
  Point mean{}, sd{};                 // with all studies
  std::array<Leans, parameter_count> leans;
  // The end of the range, `farthest`, lies within a standard deviation of the mean.
  bool near_bound(std::size_t parameter) const;
};
// From so many standard deviations on a parameter hangs on one study: a question about that study.
inline constexpr double hangs_from = 0.5;
Posterior posterior(const Runs& runs, const Surface& surface, std::uint64_t seed);

}  // namespace bide::validation
