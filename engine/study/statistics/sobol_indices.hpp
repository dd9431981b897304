// Sobol' indices: how much of an output's variance comes from each input, or from each group of inputs that
// become known together (Sobol' 1993). The first index is the expected variance reduction if the group became
// known; the total index is the share that would remain if all other inputs became known. Their difference
// comes from interactions of the group with the others.
//
// Estimators, with f(A), f(B) the outputs of two independent sets of points and f(AB_i) those of A with the
// columns of group i from B, over N base samples:
//   first  V_i  = 1/N  sum f(B) (f(AB_i) - f(A))     Saltelli et al. (2010), table 2 row (b)
//   total  VT_i = 1/2N sum (f(A) - f(AB_i))^2        Jansen (1999); Saltelli et al. (2010), table 2 row (f)
// (rows of the table from memory). Outputs are centred first, which changes neither expectation and lowers
// the scatter of the first index. A first index near 0 may come out slightly negative: this is scatter and is
// not hidden.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "bide/study/sampling/design.hpp"
#include "bide/study/statistics/bootstrap.hpp"

namespace bide::study {

using Groups = std::vector<std::vector<std::size_t>>;  // columns of each group
// One group for each column.
// @param factors number of columns
Groups each_alone(std::size_t factors);

// The rows to run: for each base sample A, B, AB_1, AB_2, ... in turn, so that more base samples only append
// rows. Throws std::invalid_argument for an odd number of columns, or a group that names a column which does
// not exist or stands in another group.
// @param pairs  a row for each base sample, first the columns of A, then those of B (Sobol' points of twice
//               the dimension)
// @param groups columns of each group
Points saltelli_rows(const Points& pairs, const Groups& groups);

struct Index {
  double value = 0;
  Interval interval;  // percentile bootstrap over the base samples
};

struct SobolIndices {
  struct Of {
    Index first;
    Index total;
  };
  std::vector<Of> groups;
  double variance = 0;           // of the output, in its unit squared
  std::size_t base_samples = 0;  // used
  std::size_t left_out = 0;      // base samples with an output that is not finite in one of their rows
};

// Estimates the indices of every group. Throws std::invalid_argument without groups, or when the outputs are
// not those of whole base samples.
// @param outputs   one per row of saltelli_rows(), in the same order
// @param groups    number of groups, at least 1
// @param bootstrap replicates and confidence of the intervals
// @return empty when the output does not vary, or with fewer than two base samples
std::optional<SobolIndices> sobol_indices(std::span<const double> outputs, std::size_t groups,
                                          const Bootstrap& bootstrap);

}  // namespace bide::study
