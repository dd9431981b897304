// Repeats every fit behind the engine's fitted numbers and compares with the numbers in force.
#include <fmt/format.h>

#include <cmath>
#include <exception>

#include "validation/calibration/fits.hpp"

int main() try {
  using namespace bide::validation;
  int differing = 0;
  std::size_t numbers = 0, rows = 0;
  for (const Fit& fit : fits()) {
    const Refit again = refit(fit);
    const bool agrees = std::abs(again.value - fit.in_force) <= fit.tolerance;
    fmt::print(
        "{}: in force {:.4f}, fitted again {:.4f} (may differ by {}), bounds {} to {}, residual {:.3g}{}\n",
        fit.name, fit.in_force, again.value, fit.tolerance, fit.low, fit.high, again.residual,
        agrees ? "" : "  DIFFERS");
    for (const std::string& row : fit.rows) fmt::print("  on {}\n", row);
    ++numbers;
    rows += fit.rows.size();
    differing += agrees ? 0 : 1;
  }
  fmt::print("{} fitted numbers on {} rows; {} differ from what is in force\n", numbers, rows, differing);
  return differing > 0 || numbers == 0 ? 1 : 0;
} catch (const std::exception& wrong) {
  fmt::print(stderr, "bide_calibrate: {}\n", wrong.what());
  return 1;
}
