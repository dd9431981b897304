#include "bide/study/sampling/distribution.hpp"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <cmath>
#include <limits>
#include <numeric>

#include "bide/core/random.hpp"

namespace bide::study {
namespace {

using Kind = scenario::DistributionKind;

std::vector<double> sorted_numbers(const std::vector<scenario::Value>& values) {
  std::vector<double> out;
  for (const scenario::Value& value : values) out.push_back(std::get<double>(value));
  std::sort(out.begin(), out.end());
  return out;
}

// Linear between the order statistics, the least at 0 and the greatest at 1 (type 7 of Hyndman & Fan 1996).
double empirical_quantile(const std::vector<double>& sorted, double u) {
  const double place = u * static_cast<double>(sorted.size() - 1);
  const auto below = std::min(static_cast<std::size_t>(place), sorted.size() - 1);
  const std::size_t above = std::min(below + 1, sorted.size() - 1);
  return sorted[below] + (place - static_cast<double>(below)) * (sorted[above] - sorted[below]);
}

double empirical_share(const std::vector<double>& sorted, double x) {
  if (x <= sorted.front()) return 0;
  if (x > sorted.back()) return 1;
  const auto above = std::lower_bound(sorted.begin(), sorted.end(), x);
  const double low = *(above - 1), high = *above;
  const auto below = static_cast<double>(above - sorted.begin() - 1);
  return (below + (x - low) / (high - low)) / static_cast<double>(sorted.size() - 1);
}

double weight_of(const scenario::Distribution& d, std::size_t i) {
  return d.weights.empty() ? 1 : d.weights[i];
}

double total_weight(const scenario::Distribution& d) {
  double sum = 0;
  for (std::size_t i = 0; i < d.values.size(); ++i) sum += weight_of(d, i);
  return sum;
}

// A value of no weight is never drawn.
scenario::Value discrete_quantile(const scenario::Distribution& d, double u) {
  double left = u * total_weight(d);
  std::size_t last = 0;
  for (std::size_t i = 0; i < d.values.size(); ++i) {
    const double weight = weight_of(d, i);
    if (!(weight > 0)) continue;
    if (left < weight) return d.values[i];
    left -= weight;
    last = i;
  }
  return d.values[last];
}

}  // namespace

double standard_normal_quantile(double u) {
  return boost::math::quantile(boost::math::normal(), u);
}

double standard_normal_share(double z) {
  return boost::math::cdf(boost::math::normal(), z);
}

scenario::Value quantile(const scenario::Distribution& d, double u) {
  switch (d.kind) {
    case Kind::uniform:
      return *d.low + u * (*d.high - *d.low);
    case Kind::normal:
      return *d.mean + *d.sd * standard_normal_quantile(u);
    case Kind::truncated_normal: {
      const double below = standard_normal_share((*d.low - *d.mean) / *d.sd);
      const double inside = standard_normal_share((*d.high - *d.mean) / *d.sd) - below;
      constexpr double tiny = std::numeric_limits<double>::min(), most = 1 - least_uniform;
      const double share = std::clamp(below + u * inside, tiny, most);
      return std::clamp(*d.mean + *d.sd * standard_normal_quantile(share), *d.low, *d.high);
    }
    case Kind::lognormal:
      return *d.median * std::exp(std::log(*d.geometric_sd) * standard_normal_quantile(u));
    case Kind::triangular: {
      const double whole = *d.high - *d.low, left = *d.mode - *d.low, right = *d.high - *d.mode;
      if (u * whole < left) return *d.low + std::sqrt(u * whole * left);
      return *d.high - std::sqrt((1 - u) * whole * right);
    }
    case Kind::discrete:
      return discrete_quantile(d, u);
    case Kind::empirical:
      return empirical_quantile(sorted_numbers(d.values), u);
  }
  return {};
}

double share_below(const scenario::Distribution& d, double x) {
  switch (d.kind) {
    case Kind::uniform:
      return std::clamp((x - *d.low) / (*d.high - *d.low), 0.0, 1.0);
    case Kind::normal:
      return standard_normal_share((x - *d.mean) / *d.sd);
    case Kind::truncated_normal: {
      const double below = standard_normal_share((*d.low - *d.mean) / *d.sd);
      const double inside = standard_normal_share((*d.high - *d.mean) / *d.sd) - below;
      return std::clamp((standard_normal_share((x - *d.mean) / *d.sd) - below) / inside, 0.0, 1.0);
    }
    case Kind::lognormal:
      return x > 0 ? standard_normal_share(std::log(x / *d.median) / std::log(*d.geometric_sd)) : 0;
    case Kind::triangular: {
      const double whole = *d.high - *d.low;
      if (x <= *d.low) return 0;
      if (x >= *d.high) return 1;
      if (x < *d.mode) return (x - *d.low) * (x - *d.low) / (whole * (*d.mode - *d.low));
      return 1 - (*d.high - x) * (*d.high - x) / (whole * (*d.high - *d.mode));
    }
    case Kind::discrete: {
      double below = 0;
      for (std::size_t i = 0; i < d.values.size(); ++i)
        if (std::get<double>(d.values[i]) < x) below += weight_of(d, i);
      return below / total_weight(d);
    }
    case Kind::empirical:
      return empirical_share(sorted_numbers(d.values), x);
  }
  return 0;
}

double rescue_h(const scenario::Rescue& r, double u) {
  switch (r.kind) {
    case scenario::RescueKind::fixed:
      return *r.at_h;
    case scenario::RescueKind::lognormal:
      return *r.median_h * std::exp(std::log(*r.geometric_sd) * standard_normal_quantile(u));
    case scenario::RescueKind::weibull:  // F = 1 - exp(-(t / scale)^shape)
      return *r.scale_h * std::pow(-std::log1p(-u), 1 / *r.shape);
    case scenario::RescueKind::empirical: {
      std::vector<double> sorted = r.hours;
      std::sort(sorted.begin(), sorted.end());
      return empirical_quantile(sorted, u);
    }
    case scenario::RescueKind::none:
      break;
  }
  return std::numeric_limits<double>::infinity();
}

double lognormal_within(double median, double sd_of_log, double low, double high, double u) {
  const auto below = [&](double value) {
    return standard_normal_share(std::log(value / median) / sd_of_log);
  };
  const double least = below(low), most = below(high);
  const double value = median * std::exp(sd_of_log * standard_normal_quantile(least + u * (most - least)));
  return std::clamp(value, low, high);  // of rounding
}

}  // namespace bide::study
