// Every fit behind a number of the engine or of a case, as something that can be repeated. README.md beside
// this file says what was fitted on what and why.
#pragma once

#include <functional>
#include <string>
#include <vector>

namespace bide::validation {

// Rows are in units of what counts as one: a relative error of 1, or one standard deviation of the people.
struct Fit {
  std::string name;
  double in_force, low, high;
  double tolerance;  // how far a repeated fit may lie from the number in force
  std::vector<std::string> rows;
  // Model less published, one for each row, with this value and every other number in force.
  std::function<std::vector<double>(double)> misfits;
};
std::vector<Fit> fits();

struct Refit {
  double value;
  double residual;  // root of the sum of the squared misfits
};
// One row: where the misfit vanishes, or std::runtime_error if it has one sign all over the bounds. More: the
// least sum of squares inside the bounds.
Refit refit(const Fit& fit);

}  // namespace bide::validation
