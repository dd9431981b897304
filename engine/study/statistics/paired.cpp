#include "bide/study/statistics/paired.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <vector>

#include "bide/study/statistics/proportion.hpp"

namespace bide::study {

Paired compare_paired(std::span<const Observed> first, std::span<const Observed> second, double horizon,
                      double confidence) {
  if (first.size() != second.size() || first.size() < 2) {
    throw std::invalid_argument("a paired comparison needs the same samples of both options, at least two");
  }
  const auto watched = [&](const Observed& o) { return o.ended ? o.time <= horizon : o.time == horizon; };
  Paired out;
  out.samples = first.size();
  std::vector<double> differences, apart;
  differences.reserve(first.size());
  for (std::size_t k = 0; k < first.size(); ++k) {
    const Observed &a = first[k], &b = second[k];
    if (!watched(a) || !watched(b)) {
      throw std::invalid_argument("every case must have ended by the horizon or been watched up to it");
    }
    if (!a.ended && !b.ended) {
      ++out.indistinguishable.count;
    } else if (b.ended && (!a.ended || b.time < a.time)) {
      ++out.first_longer.count;
    } else if (a.ended && (!b.ended || a.time < b.time)) {
      ++out.second_longer.count;
    } else {
      ++out.same.count;
    }
    if (!a.ended || !b.ended) ++out.beyond;
    differences.push_back(b.time - a.time);
    const bool longer = a.ended != b.ended || (a.ended && a.time != b.time);
    if (longer) apart.push_back(b.time - a.time);
  }
  for (Chance* chance : {&out.second_longer, &out.first_longer, &out.same, &out.indistinguishable})
    *chance = chance_of(chance->count, out.samples, confidence);

  const double n = static_cast<double>(out.samples);
  for (const double d : differences) out.mean_difference += d / n;
  double squares = 0;
  for (const double d : differences) squares += (d - out.mean_difference) * (d - out.mean_difference);
  out.mean_standard_error = std::sqrt(squares / (n - 1) / n);
  const double reach = normal_reach(confidence) * out.mean_standard_error;
  out.mean_interval = {out.mean_difference - reach, out.mean_difference + reach};

  std::sort(differences.begin(), differences.end());
  out.median_difference = quantile_of_sorted(differences, 0.5);
  std::sort(apart.begin(), apart.end());
  if (!apart.empty()) out.median_where_apart = quantile_of_sorted(apart, 0.5);
  const Ranks ranks = quantile_ranks(out.samples, 0.5, confidence);
  if (ranks.low) out.median_low = differences[*ranks.low - 1];
  if (ranks.high) out.median_high = differences[*ranks.high - 1];
  return out;
}

}  // namespace bide::study
