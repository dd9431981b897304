#include "bide/study/statistics/sobol_indices.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace bide::study {
namespace {

using Row = Eigen::Index;

// Row j: f(A), f(B), f(AB_1), ... of base sample j.
struct Shares {
  double variance = 0;
  std::vector<double> first;
  std::vector<double> total;
};

Shares shares(const Points& outputs, std::span<const std::size_t> chosen) {
  const double n = static_cast<double>(chosen.size());
  double mean = 0;
  for (const std::size_t j : chosen)
    mean += outputs(static_cast<Row>(j), 0) + outputs(static_cast<Row>(j), 1);
  mean /= 2 * n;
  const auto groups = static_cast<std::size_t>(outputs.cols()) - 2;
  Shares out{0, std::vector<double>(groups), std::vector<double>(groups)};
  for (const std::size_t sample : chosen) {
    const auto j = static_cast<Row>(sample);
    const double a = outputs(j, 0) - mean, b = outputs(j, 1) - mean;
    out.variance += (a * a + b * b) / (2 * n);
    for (std::size_t i = 0; i < groups; ++i) {
      const double ab = outputs(j, static_cast<Row>(i) + 2) - mean;
      out.first[i] += b * (ab - a) / n;
      out.total[i] += (a - ab) * (a - ab) / (2 * n);
    }
  }
  for (auto& v : out.first) v /= out.variance;
  for (auto& v : out.total) v /= out.variance;
  return out;
}

}  // namespace

Groups each_alone(std::size_t factors) {
  Groups groups(factors);
  for (std::size_t j = 0; j < factors; ++j) groups[j] = {j};
  return groups;
}

Points saltelli_rows(const Points& pairs, const Groups& groups) {
  if (pairs.cols() % 2 != 0)
    throw std::invalid_argument("the points hold the columns of A and then those of B");
  const Row factors = pairs.cols() / 2;
  std::vector<bool> taken(static_cast<std::size_t>(factors));
  for (const auto& group : groups) {
    for (const std::size_t column : group) {
      if (column >= taken.size() || taken[column]) {
        throw std::invalid_argument("a group names a column that is not there or stands in another group");
      }
      taken[column] = true;
    }
  }
  const Row each = static_cast<Row>(groups.size()) + 2;
  Points rows(pairs.rows() * each, factors);
  for (Row j = 0; j < pairs.rows(); ++j) {
    const auto a = pairs.row(j).head(factors), b = pairs.row(j).tail(factors);
    rows.row(j * each) = a;
    rows.row(j * each + 1) = b;
    for (std::size_t i = 0; i < groups.size(); ++i) {
      auto mixed = rows.row(j * each + 2 + static_cast<Row>(i));
      mixed = a;
      for (const std::size_t column : groups[i])
        mixed(static_cast<Row>(column)) = b(static_cast<Row>(column));
    }
  }
  return rows;
}

std::optional<SobolIndices> sobol_indices(std::span<const double> outputs, std::size_t groups,
                                          const Bootstrap& bootstrap) {
  const std::size_t each = groups + 2;
  if (groups == 0 || outputs.size() % each != 0) {
    throw std::invalid_argument("the outputs are not those of whole base samples");
  }
  SobolIndices out;
  std::vector<double> whole;
  for (std::size_t start = 0; start < outputs.size(); start += each) {
    const auto sample = outputs.subspan(start, each);
    if (std::all_of(sample.begin(), sample.end(), [](double y) { return std::isfinite(y); })) {
      whole.insert(whole.end(), sample.begin(), sample.end());
      ++out.base_samples;
    } else {
      ++out.left_out;
    }
  }
  if (out.base_samples < 2) return std::nullopt;
  const Points table =
      Eigen::Map<const Points>(whole.data(), static_cast<Row>(out.base_samples), static_cast<Row>(each));
  std::vector<std::size_t> all(out.base_samples);
  for (std::size_t j = 0; j < all.size(); ++j) all[j] = j;
  const Shares point = shares(table, all);
  if (!(point.variance > 0)) return std::nullopt;
  out.variance = point.variance;

  std::vector<std::vector<double>> first(groups), total(groups);
  for (std::size_t r = 0; r < bootstrap.replicates; ++r) {
    if (bootstrap.look) bootstrap.look();
    const Shares again = shares(table, drawn_again(all.size(), r, bootstrap.uniform));
    if (!(again.variance > 0)) continue;  // all draws fell on one value: no shares to speak of
    for (std::size_t i = 0; i < groups; ++i) {
      first[i].push_back(again.first[i]);
      total[i].push_back(again.total[i]);
    }
  }
  for (std::size_t i = 0; i < groups; ++i) {
    out.groups.push_back({{point.first[i], middle(std::move(first[i]), bootstrap.confidence)},
                          {point.total[i], middle(std::move(total[i]), bootstrap.confidence)}});
  }
  return out;
}

}  // namespace bide::study
