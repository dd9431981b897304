#include "bide/study/statistics/variance_reduction.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <stdexcept>
#include <vector>

#include "bide/study/statistics/proportion.hpp"

namespace bide::study {
namespace {

void need_pairs(std::span<const double> x, std::span<const double> y) {
  const auto finite = [](double v) { return std::isfinite(v); };
  if (x.size() != y.size() || !std::all_of(x.begin(), x.end(), finite) ||
      !std::all_of(y.begin(), y.end(), finite)) {
    throw std::invalid_argument("two lists of equal length, of finite numbers");
  }
}

// Ranks from 0; equal values share the mean of theirs.
std::vector<double> mean_ranks(std::span<const double> values) {
  std::vector<std::size_t> order(values.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return values[a] < values[b]; });
  std::vector<double> ranks(values.size());
  for (std::size_t i = 0; i < order.size();) {
    std::size_t end = i;
    while (end < order.size() && values[order[end]] == values[order[i]]) ++end;
    for (std::size_t k = i; k < end; ++k) ranks[order[k]] = static_cast<double>(i + end - 1) / 2;
    i = end;
  }
  return ranks;
}

using Bins = std::vector<std::vector<std::size_t>>;  // cases of each bin

Bins bins_of(std::span<const double> input) {
  constexpr std::size_t fewest_in_bin = 50, most_bins = 20;
  const std::size_t count = std::min(most_bins, input.size() / fewest_in_bin);
  if (count < 2) return {};
  std::vector<double> distinct(input.begin(), input.end());
  std::sort(distinct.begin(), distinct.end());
  distinct.erase(std::unique(distinct.begin(), distinct.end()), distinct.end());
  const bool by_value = distinct.size() <= count;
  const auto ranks = mean_ranks(input);
  Bins bins(by_value ? distinct.size() : count);
  for (std::size_t i = 0; i < input.size(); ++i) {
    const auto at = std::lower_bound(distinct.begin(), distinct.end(), input[i]) - distinct.begin();
    const double place = ranks[i] / static_cast<double>(input.size()) * static_cast<double>(count);
    bins[by_value ? static_cast<std::size_t>(at) : static_cast<std::size_t>(place)].push_back(i);
  }
  std::erase_if(bins, [](const auto& bin) { return bin.empty(); });
  return bins;
}

double variance(std::span<const double> values) {
  const double n = static_cast<double>(values.size());
  const double mean = std::accumulate(values.begin(), values.end(), 0.0) / n;
  double squares = 0;
  for (const double v : values) squares += (v - mean) * (v - mean);
  return squares / (n - 1);
}

double width(std::vector<double>& values) {
  std::sort(values.begin(), values.end());
  constexpr double low = 0.05, high = 0.95;
  return quantile_of_sorted(values, high) - quantile_of_sorted(values, low);
}

// Mean over the cases of the spread of their bin. A bin of one case has no spread; the spread of all is taken
// for it, so that it shows no reduction.
template <class Spread>
double within(const Bins& bins, std::span<const double> output, double of_all, Spread spread) {
  double sum = 0;
  std::vector<double> values;
  for (const auto& bin : bins) {
    values.clear();
    for (const std::size_t i : bin) values.push_back(output[i]);
    sum += static_cast<double>(bin.size()) * (bin.size() < 2 ? of_all : spread(values));
  }
  return sum / static_cast<double>(output.size());
}

double variance_share(const Bins& bins, std::span<const double> output) {
  const double all = variance(output);
  return 1 - within(bins, output, all, [](auto& values) { return variance(values); }) / all;
}

double width_within(const Bins& bins, std::span<const double> output, double of_all) {
  return within(bins, output, of_all, [](auto& values) { return width(values); });
}

}  // namespace

std::optional<VarianceReduction> expected_variance_reduction(std::span<const double> input,
                                                             std::span<const double> output,
                                                             const Bootstrap& bootstrap) {
  need_pairs(input, output);
  const Bins bins = bins_of(input);
  if (bins.size() < 2 || !(variance(output) > 0)) return std::nullopt;
  VarianceReduction out;
  out.bins = bins.size();
  out.of_variance = variance_share(bins, output);

  std::vector<double> replicates;
  std::vector<double> values(output.size());
  Bins again(bins.size());
  for (std::size_t r = 0; r < bootstrap.replicates; ++r) {
    if (bootstrap.look) bootstrap.look();
    // Drawn bin by bin, so that every bin keeps its size.
    std::size_t next = 0;
    for (std::size_t b = 0; b < bins.size(); ++b) {
      again[b].clear();
      for (std::size_t i = 0; i < bins[b].size(); ++i, ++next) {
        const double chance = bootstrap.uniform(r, 0, static_cast<std::uint32_t>(next));
        values[next] = output[bins[b][pick(chance, bins[b].size())]];
        again[b].push_back(next);
      }
    }
    if (variance(values) > 0) replicates.push_back(variance_share(again, values));
  }
  out.of_variance_interval = middle(std::move(replicates), bootstrap.confidence);

  std::vector<double> all(output.begin(), output.end());
  const double of_all = width(all);
  constexpr std::uint32_t shuffles = 20;
  constexpr std::uint32_t shuffle_place = 1;
  double at_random = 0;
  std::vector<double> shuffled(output.begin(), output.end());
  for (std::uint32_t s = 0; s < shuffles; ++s) {
    for (std::size_t left = shuffled.size(); left > 1; --left) {
      const double chance = bootstrap.uniform(s, shuffle_place, static_cast<std::uint32_t>(left - 1));
      std::swap(shuffled[left - 1], shuffled[pick(chance, left)]);
    }
    at_random += width_within(bins, shuffled, of_all) / shuffles;
  }
  // The 5 to 95 % width may be 0 although the outputs vary (a rare outcome): no reduction is possible.
  out.of_width = at_random > 0 ? 1 - width_within(bins, output, of_all) / at_random : 0;
  return out;
}

std::optional<RankCorrelation> rank_correlation(std::span<const double> x, std::span<const double> y,
                                                double confidence) {
  need_pairs(x, y);
  constexpr std::size_t fewest = 4;
  if (x.size() < fewest) return std::nullopt;
  const auto rank_x = mean_ranks(x), rank_y = mean_ranks(y);
  const double n = static_cast<double>(x.size());
  const double mean = (n - 1) / 2;
  double xx = 0, yy = 0, xy = 0;
  for (std::size_t i = 0; i < x.size(); ++i) {
    const double dx = rank_x[i] - mean, dy = rank_y[i] - mean;
    xx += dx * dx;
    yy += dy * dy;
    xy += dx * dy;
  }
  if (!(xx > 0 && yy > 0)) return std::nullopt;
  const double r = std::clamp(xy / std::sqrt(xx * yy), -1.0, 1.0);
  constexpr double lost = 3;
  const double reach = normal_reach(confidence) * std::sqrt((1 + r * r / 2) / (n - lost));
  return RankCorrelation{r, {std::tanh(std::atanh(r) - reach), std::tanh(std::atanh(r) + reach)}};
}

}  // namespace bide::study
