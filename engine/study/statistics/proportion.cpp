#include "bide/study/statistics/proportion.hpp"

#include <algorithm>
#include <boost/math/distributions/binomial.hpp>
#include <boost/math/distributions/normal.hpp>
#include <cmath>
#include <stdexcept>

namespace bide::study {
namespace {

void need_share(double share) {
  if (!(share > 0 && share < 1)) throw std::invalid_argument("a share or confidence lies between 0 and 1");
}

}  // namespace

double normal_reach(double confidence) {
  need_share(confidence);
  return boost::math::quantile(boost::math::normal{}, 0.5 + confidence / 2);
}

Interval wilson(std::size_t hits, std::size_t cases, double confidence) {
  if (cases == 0 || hits > cases)
    throw std::invalid_argument("a share needs cases, and no more hits than these");
  const double z = normal_reach(confidence);
  const double n = static_cast<double>(cases);
  const double share = static_cast<double>(hits) / n;
  const double centre = share + z * z / (2 * n);
  const double reach = z * std::sqrt(share * (1 - share) / n + z * z / (4 * n * n));
  const double scale = 1 + z * z / n;
  // With no hits, or only hits, one end is exactly 0 or 1; rounding may miss it.
  return {hits == 0 ? 0 : (centre - reach) / scale, hits == cases ? 1 : (centre + reach) / scale};
}

Chance chance_of(std::size_t hits, std::size_t cases, double confidence) {
  const Interval interval = wilson(hits, cases, confidence);
  return {hits, static_cast<double>(hits) / static_cast<double>(cases), interval};
}

double sign_test(std::size_t more, std::size_t fewer) {
  if (more == fewer) return 1;
  const boost::math::binomial_distribution<> even(static_cast<double>(more + fewer), 0.5);
  return std::min(1.0, 2 * boost::math::cdf(even, static_cast<double>(std::min(more, fewer))));
}

double least_share(std::size_t hits, std::size_t cases, double confidence) {
  need_share(confidence);
  if (cases == 0 || hits > cases)
    throw std::invalid_argument("a share needs cases, and no more hits than these");
  using boost::math::binomial;
  return binomial::find_lower_bound_on_p(static_cast<double>(cases), static_cast<double>(hits),
                                         1 - confidence);
}

std::optional<std::size_t> most_misses(std::size_t cases, double share, double confidence) {
  need_share(share);
  // least_share() falls with each miss.
  const auto holds = [&](std::size_t misses) {
    return least_share(cases - misses, cases, confidence) >= share;
  };
  if (!holds(0)) return std::nullopt;
  std::size_t bearable = 0, too_many = cases + 1;
  while (too_many - bearable > 1) {
    const std::size_t half = bearable + (too_many - bearable) / 2;
    (holds(half) ? bearable : too_many) = half;
  }
  return bearable;
}

std::size_t rank_of(double p, std::size_t cases) {
  const double wanted = p * static_cast<double>(cases);
  const double whole = std::round(wanted);
  constexpr double rounding = 1e-9;  // 0.05 * 20 is one, whatever its last bit
  const double rank = std::abs(wanted - whole) < rounding * std::max(1.0, whole) ? whole : std::ceil(wanted);
  return std::clamp(static_cast<std::size_t>(rank), std::size_t{1}, cases);
}

Ranks quantile_ranks(std::size_t cases, double p, double confidence) {
  need_share(p);
  need_share(confidence);
  if (cases == 0) return {};
  const double tail = (1 - confidence) / 2;
  const boost::math::binomial below(static_cast<double>(cases), p);  // how many lie below the quantile
  // P(rank r lies above the quantile) = P(fewer than r lie below it). It grows with r.
  const auto above = [&](std::size_t r) { return boost::math::cdf(below, static_cast<double>(r - 1)); };
  // The first rank in [1, cases] for which a monotonic condition holds, or cases + 1.
  const auto first = [&](auto holds) {
    std::size_t from = 1, to = cases + 1;
    while (from < to) {
      const std::size_t half = from + (to - from) / 2;
      if (holds(half)) {
        to = half;
      } else {
        from = half + 1;
      }
    }
    return from;
  };
  Ranks ranks;
  const std::size_t too_high = first([&](std::size_t r) { return above(r) > tail; });
  if (too_high > 1) ranks.low = too_high - 1;
  // P(rank s lies at or below the quantile) = P(at least s lie below it), to be at most the tail.
  const std::size_t high = first([&](std::size_t s) {
    return boost::math::cdf(boost::math::complement(below, static_cast<double>(s - 1))) <= tail;
  });
  if (high <= cases) ranks.high = high;
  return ranks;
}

std::size_t cases_for_quantile(double p, double confidence) {
  need_share(p);
  need_share(confidence);
  return static_cast<std::size_t>(std::ceil(std::log((1 - confidence) / 2) / std::log(std::max(p, 1 - p))));
}

std::size_t cases_for_share(double half_width, double confidence) {
  need_share(half_width);
  // At one half Wilson reaches z / (2 sqrt(n + z^2)).
  const double z = normal_reach(confidence);
  return static_cast<std::size_t>(std::max(1.0, std::ceil(z * z / (4 * half_width * half_width) - z * z)));
}

}  // namespace bide::study
