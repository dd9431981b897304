#include "bide/study/statistics/survival.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "bide/study/statistics/proportion.hpp"

namespace bide::study {
namespace {

double as_number(std::size_t count) {
  return static_cast<double>(count);
}

// On the scale log(-log S) the standard error is sigma / |log S|, sigma^2 being Greenwood's sum.
Interval log_log_interval(double share, double greenwood, double reach) {
  const double width = reach * std::sqrt(greenwood) / std::abs(std::log(share));
  return {std::pow(share, std::exp(width)), std::pow(share, std::exp(-width))};
}

// Ended times in ascending order; the rest of the group lies beyond the horizon.
std::vector<double> ended_within(std::span<const Observed> cases, double horizon) {
  std::vector<double> times;
  for (const auto& c : cases) {
    if (c.ended ? !(c.time <= horizon) : c.time != horizon) {
      throw std::invalid_argument("every case must have ended by the horizon or been watched up to it");
    }
    if (c.ended) times.push_back(c.time);
  }
  std::sort(times.begin(), times.end());
  return times;
}

std::optional<double> at_rank(const std::vector<double>& ascending, std::size_t rank) {
  if (rank > ascending.size()) return std::nullopt;
  return ascending[rank - 1];
}

}  // namespace

SurvivalCurve survival_curve(std::span<const Observed> cases, double confidence) {
  if (cases.empty()) throw std::invalid_argument("a survival curve needs cases");
  std::vector<Observed> ordered(cases.begin(), cases.end());
  for (const auto& c : ordered) {
    if (!(c.time >= 0) || !std::isfinite(c.time))
      throw std::invalid_argument("a time must be a number from 0 on");
  }
  std::sort(ordered.begin(), ordered.end(), [](auto& a, auto& b) { return a.time < b.time; });
  SurvivalCurve curve;
  curve.cases = ordered.size();
  curve.confidence = confidence;
  curve.last_watched = ordered.back().time;
  for (const auto& c : ordered) curve.watched_until.push_back(c.time);
  const double reach = normal_reach(confidence);
  double share = 1, greenwood = 0, high = 1;
  for (std::size_t i = 0; i < ordered.size();) {
    const double time = ordered[i].time;
    const std::size_t at_risk = ordered.size() - i;
    std::size_t ended = 0;
    for (; i < ordered.size() && ordered[i].time == time; ++i) ended += ordered[i].ended ? 1 : 0;
    if (ended == 0) continue;
    share *= as_number(at_risk - ended) / as_number(at_risk);
    SurvivalStep step{time, at_risk, ended, share, 0, {}};
    if (ended < at_risk) {
      greenwood += as_number(ended) / (as_number(at_risk) * as_number(at_risk - ended));
      step.standard_error = share * std::sqrt(greenwood);
      step.interval = log_log_interval(share, greenwood, reach);
    } else {
      step.interval = {0, high * wilson(0, at_risk, confidence).high};
    }
    high = step.interval.high;
    curve.steps.push_back(step);
  }
  return curve;
}

namespace {

// The step in force at t, or none before the first.
const SurvivalStep* step_at(const SurvivalCurve& curve, double t) {
  const auto after = std::upper_bound(curve.steps.begin(), curve.steps.end(), t,
                                      [](double at, const SurvivalStep& s) { return at < s.time; });
  return after == curve.steps.begin() ? nullptr : &*(after - 1);
}

bool known_at(const SurvivalCurve& curve, double t) {
  return t <= curve.last_watched || (!curve.steps.empty() && curve.steps.back().share == 0);
}

}  // namespace

std::optional<double> SurvivalCurve::share_at(double t) const {
  if (!known_at(*this, t)) return std::nullopt;
  const auto* step = step_at(*this, t);
  return step ? step->share : 1;
}

std::optional<Interval> SurvivalCurve::interval_at(double t) const {
  if (!known_at(*this, t)) return std::nullopt;
  if (const auto* step = step_at(*this, t)) return step->interval;
  const auto gone = std::lower_bound(watched_until.begin(), watched_until.end(), t) - watched_until.begin();
  const std::size_t watched = cases - static_cast<std::size_t>(gone);
  return wilson(watched, watched, confidence);
}

TimeQuantile time_quantile(const SurvivalCurve& curve, double p) {
  constexpr double rounding = 1e-12;  // the product of the steps may miss 0.5 by a bit
  const double height = 1 - p + rounding;
  const auto first = [&](auto value) -> std::optional<double> {
    for (const auto& step : curve.steps) {
      if (value(step) <= height) return step.time;
    }
    return std::nullopt;
  };
  return {first([](auto& s) { return s.share; }), first([](auto& s) { return s.interval.low; }),
          first([](auto& s) { return s.interval.high; })};
}

std::optional<RestrictedMean> restricted_mean(const SurvivalCurve& curve, double horizon) {
  if (!known_at(curve, horizon)) return std::nullopt;
  // From the right, so that the area right of each step is at hand.
  double right = horizon, area = 0, variance = 0;
  for (std::size_t i = curve.steps.size(); i-- > 0;) {
    const auto& step = curve.steps[i];
    if (step.time >= horizon) continue;
    area += step.share * (right - step.time);
    right = step.time;
    const double left = as_number(step.at_risk - step.ended);
    if (left > 0) variance += area * area * as_number(step.ended) / (as_number(step.at_risk) * left);
  }
  return RestrictedMean{area + right, std::sqrt(variance)};
}

QuantileByRank quantile_by_rank(std::span<const Observed> cases, double horizon, double p,
                                double confidence) {
  if (cases.empty()) throw std::invalid_argument("a quantile needs cases");
  const auto times = ended_within(cases, horizon);
  const Ranks ranks = quantile_ranks(cases.size(), p, confidence);
  QuantileByRank out;
  out.time = at_rank(times, rank_of(p, cases.size()));
  out.low_known = ranks.low.has_value();
  out.high_known = ranks.high.has_value();
  if (ranks.low) out.low = at_rank(times, *ranks.low);
  if (ranks.high) out.high = at_rank(times, *ranks.high);
  return out;
}

OrderOfEnds order_of_ends(std::span<const Observed> group, double horizon) {
  if (group.empty()) throw std::invalid_argument("an order of ends needs somebody");
  const auto times = ended_within(group, horizon);
  return {at_rank(times, 1), at_rank(times, (group.size() + 1) / 2), at_rank(times, group.size())};
}

}  // namespace bide::study
