#include "bide/study/statistics/bootstrap.hpp"

#include <cmath>
#include <stdexcept>

namespace bide::study {

std::vector<std::size_t> drawn_again(std::size_t cases, std::size_t replicate, const UniformAt& uniform) {
  std::vector<std::size_t> chosen(cases);
  for (std::size_t i = 0; i < cases; ++i) {
    chosen[i] = pick(uniform(replicate, 0, static_cast<std::uint32_t>(i)), cases);
  }
  return chosen;
}

RanksBeside ranks_beside(double p, std::size_t cases) {
  if (cases == 0 || !(p >= 0 && p <= 1)) {
    throw std::invalid_argument("a quantile needs values and a share from 0 to 1");
  }
  const double place = p * static_cast<double>(cases - 1);
  const auto below = static_cast<std::size_t>(std::floor(place));
  return {below + 1, std::min(below + 1, cases - 1) + 1, place - static_cast<double>(below)};
}

double quantile_of_sorted(std::span<const double> ascending, double p) {
  const RanksBeside ranks = ranks_beside(p, ascending.size());
  return between(ranks, ascending[ranks.below - 1], ascending[ranks.above - 1]);
}

Interval middle(std::vector<double> replicates, double confidence) {
  if (!(confidence > 0 && confidence < 1)) throw std::invalid_argument("confidence lies between 0 and 1");
  std::sort(replicates.begin(), replicates.end());
  const double tail = (1 - confidence) / 2;
  return {quantile_of_sorted(replicates, tail), quantile_of_sorted(replicates, 1 - tail)};
}

}  // namespace bide::study
