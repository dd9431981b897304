// The comparison's judged rows under many points of the free parameters, and a surface through them.
//
// Same number of draws, same bits: the points come from counters (core/random.hpp), and each run of the
// comparison depends on its point alone.
#pragma once

#include <Eigen/Core>
#include <cstdint>
#include <vector>

#include "validation/judge/conditions.hpp"
#include "validation/judge/parameters.hpp"

namespace bide::validation {

// What is judged: rows with conditions, the whole runs after them (row only; `whole_runs` of them).
struct Runs {
  std::vector<JudgedRow> rows;  // as the model in force has them
  std::vector<Row> whole_runs;  // the same
  std::vector<Point> points;
  std::vector<std::vector<double>> values;  // by point, then by row: rows, then whole runs
};

// Runs the comparison as it is and at `count` points, over all processors.
// @param count at least 0
Runs run_draws(std::size_t count, std::uint64_t seed);

// A polynomial of second order through the values of each row, over points in units of `farthest`.
class Surface {
 public:
  // Least squares. Throws std::runtime_error with fewer points than terms.
  // @param rows what to fit: places in Runs::values
  explicit Surface(const Runs& runs);
  static constexpr std::size_t terms = 1 + parameter_count + parameter_count * (parameter_count + 1) / 2;

  // Every row at a point, pinned to what the model gives at 0.
  std::vector<double> at(const Point& point) const;
  double at(std::size_t row, const Point& point) const;
  // Root mean square of the misfit at the points it was fitted to, by row, with the terms taken off the
  // number of points.
  const std::vector<double>& misfit() const { return misfit_; }

 private:
  Eigen::MatrixXd coefficients_;  // terms x rows
  std::vector<double> shift_, misfit_;
};

}  // namespace bide::validation
