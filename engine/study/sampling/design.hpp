// Points of a study's samples in the unit cube: one row per sample, one column per uncertain input. Inputs
// are made from the columns by their quantile functions, so no coordinate is ever exactly 0 or 1.
//
// Here: plain random, Latin hypercube, and the grid of listed values. Scrambled Sobol' points, Morris
// trajectories and the rows for Sobol' indices have their own files.
#pragma once

#include <Eigen/Core>
#include <cstddef>
#include <span>
#include <vector>

#include "bide/study/sampling/draws.hpp"

namespace bide::study {

using Points = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

// Independent uniform points; sample k is the same whatever the number of samples.
// @param samples number of rows
// @param factors number of columns
// @param uniform where the random numbers come from
Points random_points(std::size_t samples, std::size_t factors, const UniformAt& uniform);

// Latin hypercube after McKay, Beckman & Conover (1979): each column is cut into as many equal slices as
// there are samples; every slice holds one sample, at random within it, and the slices of different columns
// are matched at random.
// @param samples number of rows
// @param factors number of columns
// @param uniform where the random numbers come from
Points latin_hypercube(std::size_t samples, std::size_t factors, const UniformAt& uniform);

// Every combination of listed values. Row k is computed from k, the last input changing fastest, so that a
// grid is never held in memory.
class Grid {
 public:
  // Throws std::invalid_argument for an input without values and for a grid whose size does not fit in 64
  // bits.
  // @param values the list of each input
  explicit Grid(std::vector<std::vector<double>> values);
  std::size_t size() const { return size_; }  // rows
  std::size_t factors() const { return values_.size(); }
  // Which of its listed values each input takes in a row, from 0.
  // @param k   row, [0, size()); else throws std::invalid_argument
  // @param out filled; of length factors()
  void places(std::size_t k, std::span<std::size_t> out) const;
  // The values themselves, with the same arguments.
  void row(std::size_t k, std::span<double> out) const;

 private:
  template <class Put>
  void digits(std::size_t k, std::size_t room, Put put) const;
  std::vector<std::vector<double>> values_;
  std::size_t size_ = 1;
};

}  // namespace bide::study
