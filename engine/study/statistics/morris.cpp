#include "bide/study/statistics/morris.hpp"

#include <cmath>
#include <numeric>
#include <stdexcept>
#include <utility>

namespace bide::study {
namespace {

using Row = Eigen::Index;

std::size_t blocks_of(const Points& trajectories) {
  const Row rows = trajectories.cols() + 1;
  if (trajectories.cols() == 0 || trajectories.rows() % rows != 0) {
    throw std::invalid_argument("the rows are not whole trajectories");
  }
  return static_cast<std::size_t>(trajectories.rows() / rows);
}

double distance(const Points& points, Row a, Row b) {
  const Row rows = points.cols() + 1;
  double sum = 0;
  for (Row i = 0; i < rows; ++i) {
    for (Row j = 0; j < rows; ++j) sum += (points.row(a * rows + i) - points.row(b * rows + j)).norm();
  }
  return sum;
}

}  // namespace

Points morris_trajectories(std::size_t trajectories, std::size_t factors, std::size_t levels,
                           const UniformAt& uniform) {
  if (levels < 2 || levels % 2 != 0) throw std::invalid_argument("Morris' levels are even and at least 2");
  constexpr std::uint32_t level_draw = 0, way_draw = 1, order_draw = 2;
  const std::size_t step = levels / 2;
  const auto value = [&](std::size_t level) {
    return (static_cast<double>(level) + 0.5) / static_cast<double>(levels);
  };
  Points points(static_cast<Row>(trajectories * (factors + 1)), static_cast<Row>(factors));
  std::vector<std::size_t> order(factors);
  for (std::size_t t = 0; t < trajectories; ++t) {
    auto row = static_cast<Row>(t * (factors + 1));
    std::vector<double> end(factors);
    for (std::size_t j = 0; j < factors; ++j) {
      const auto factor = static_cast<std::uint32_t>(j);
      const std::size_t lower = pick(uniform(t, factor, level_draw), step);
      const bool up = uniform(t, factor, way_draw) < 0.5;
      points(row, static_cast<Row>(j)) = value(up ? lower : lower + step);
      end[j] = value(up ? lower + step : lower);
    }
    std::iota(order.begin(), order.end(), std::size_t{0});
    for (std::size_t left = factors; left > 1; --left) {
      const double chance = uniform(t, static_cast<std::uint32_t>(left - 1), order_draw);
      std::swap(order[left - 1], order[pick(chance, left)]);
    }
    for (const std::size_t j : order) {
      points.row(row + 1) = points.row(row);
      ++row;
      points(row, static_cast<Row>(j)) = end[j];
    }
  }
  return points;
}

Points spread_trajectories(const Points& trajectories, std::size_t wanted) {
  const std::size_t blocks = blocks_of(trajectories);
  if (wanted < 2 || wanted > blocks)
    throw std::invalid_argument("keep at least two trajectories, at most all");
  const auto all = static_cast<Row>(blocks);
  Eigen::MatrixXd squared = Eigen::MatrixXd::Zero(all, all);
  for (Row a = 0; a < all; ++a) {
    for (Row b = 0; b < a; ++b) {
      const double apart = distance(trajectories, a, b);
      squared(a, b) = squared(b, a) = apart * apart;
    }
  }
  Row first = 0, second = 0;
  squared.maxCoeff(&first, &second);
  std::vector<Row> kept{first, second};
  Eigen::VectorXd gain = squared.col(first) + squared.col(second);
  while (kept.size() < wanted) {
    Row best = -1;
    for (Row candidate = 0; candidate < all; ++candidate) {
      if (std::find(kept.begin(), kept.end(), candidate) != kept.end()) continue;
      if (best < 0 || gain(candidate) > gain(best)) best = candidate;
    }
    kept.push_back(best);
    gain += squared.col(best);
  }
  const Row rows = trajectories.cols() + 1;
  Points out(static_cast<Row>(wanted) * rows, trajectories.cols());
  for (std::size_t i = 0; i < wanted; ++i) {
    out.middleRows(static_cast<Row>(i) * rows, rows) = trajectories.middleRows(kept[i] * rows, rows);
  }
  return out;
}

std::optional<MorrisEffects> morris_effects(const Points& trajectories, std::span<const double> outputs) {
  const std::size_t blocks = blocks_of(trajectories);
  if (outputs.size() != static_cast<std::size_t>(trajectories.rows())) {
    throw std::invalid_argument("one output for each row");
  }
  const auto factors = static_cast<std::size_t>(trajectories.cols());
  std::vector<std::vector<double>> effects(factors);
  MorrisEffects out;
  for (std::size_t t = 0; t < blocks; ++t) {
    const std::size_t start = t * (factors + 1);
    const auto block = outputs.subspan(start, factors + 1);
    if (!std::all_of(block.begin(), block.end(), [](double y) { return std::isfinite(y); })) {
      ++out.left_out;
      continue;
    }
    for (std::size_t i = 0; i < factors; ++i) {
      const auto row = static_cast<Row>(start + i);
      const Eigen::RowVectorXd moved = trajectories.row(row + 1) - trajectories.row(row);
      Row factor = 0;
      moved.cwiseAbs().maxCoeff(&factor);
      effects[static_cast<std::size_t>(factor)].push_back((block[i + 1] - block[i]) / moved(factor));
    }
  }
  const double count = static_cast<double>(blocks - out.left_out);
  if (count < 2) return std::nullopt;
  for (const auto& of_factor : effects) {
    MorrisEffect effect;
    for (const double e : of_factor) {
      effect.mean += e / count;
      effect.mean_absolute += std::abs(e) / count;
    }
    double squares = 0;
    for (const double e : of_factor) squares += (e - effect.mean) * (e - effect.mean);
    effect.sigma = std::sqrt(squares / (count - 1));
    out.factors.push_back(effect);
  }
  return out;
}

}  // namespace bide::study
