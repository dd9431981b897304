#include "bide/outcome/measures.hpp"
#include "bide/core/units.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace bide::outcome {
namespace {

void require_same_length(const Column& time_s, const Column& values) {
  if (time_s.size() != values.size()) throw std::logic_error("a column is not as long as its time axis");
}

// Share of the stretch from a to b (in the same order) in which a straight line from a to b is positive.
double positive_share(double a, double b) {
  if (a > 0 && b > 0) return 1;
  if (a <= 0 && b <= 0) return 0;
  return std::max(a, b) / std::abs(b - a);
}

double hours_positive(const Column& time_s, const Column& values, double level, double sign, double until_s) {
  if (values.empty()) return 0;
  require_same_length(time_s, values);
  double sum_s = 0;
  for (std::size_t i = 1; i < time_s.size() && time_s[i - 1] < until_s; ++i) {
    const double a = sign * (values[i - 1] - level);
    double b = sign * (values[i] - level);
    double length_s = time_s[i] - time_s[i - 1];
    if (time_s[i] > until_s) {
      const double share = (until_s - time_s[i - 1]) / length_s;
      b = a + share * (b - a);
      length_s *= share;
    }
    sum_s += length_s * positive_share(a, b);
  }
  return sum_s / hour_s;
}

std::optional<Extreme> extreme(const Column& time_s, const Column& values, double sign, double until_s,
                               double after_s) {
  if (values.empty()) return {};
  require_same_length(time_s, values);
  std::optional<Extreme> best;
  for (std::size_t i = 0; i < time_s.size() && time_s[i] <= until_s; ++i) {
    if (time_s[i] <= after_s || !std::isfinite(values[i])) continue;
    if (!best || sign * values[i] > sign * best->value) best = Extreme{values[i], time_s[i]};
  }
  return best;
}

}  // namespace

double hours_above(const Column& time_s, const Column& values, double level, double until_s) {
  return hours_positive(time_s, values, level, 1, until_s);
}

double hours_below(const Column& time_s, const Column& values, double level, double until_s) {
  return hours_positive(time_s, values, level, -1, until_s);
}

std::optional<Extreme> lowest(const Column& time_s, const Column& values, double until_s, double after_s) {
  return extreme(time_s, values, -1, until_s, after_s);
}

std::optional<Extreme> highest(const Column& time_s, const Column& values, double until_s, double after_s) {
  return extreme(time_s, values, 1, until_s, after_s);
}

std::optional<double> mean(const Column& time_s, const Column& values, double until_s, double after_s) {
  if (values.empty()) return {};
  require_same_length(time_s, values);
  double sum = 0, length_s = 0;
  for (std::size_t i = 1; i < time_s.size() && time_s[i] <= until_s; ++i) {
    if (time_s[i - 1] <= after_s) continue;
    const double step_s = time_s[i] - time_s[i - 1];
    sum += step_s * (values[i - 1] + values[i]) / 2;
    length_s += step_s;
  }
  if (!(length_s > 0) || !std::isfinite(sum)) return {};
  return sum / length_s;
}

std::optional<double> value_at(const Column& time_s, const Column& values, double at_s) {
  if (values.empty()) return {};
  require_same_length(time_s, values);
  const auto after = std::upper_bound(time_s.begin(), time_s.end(), at_s);
  if (after == time_s.begin()) return values.front();
  if (after == time_s.end()) return values.back();
  const auto i = static_cast<std::size_t>(after - time_s.begin());
  const double share = (at_s - time_s[i - 1]) / (time_s[i] - time_s[i - 1]);
  return values[i - 1] + share * (values[i] - values[i - 1]);
}

CrewTimes crew_times(std::vector<std::optional<double>> times_s) {
  CrewTimes crew;
  crew.persons = static_cast<int>(times_s.size());
  std::vector<double> reached_s;
  for (const auto& time_s : times_s) {
    if (time_s) reached_s.push_back(*time_s);
  }
  std::sort(reached_s.begin(), reached_s.end());
  crew.reached = static_cast<int>(reached_s.size());
  if (reached_s.empty()) return crew;
  crew.first_s = reached_s.front();
  const std::size_t half = (times_s.size() + 1) / 2;
  if (reached_s.size() >= half) crew.half_s = reached_s[half - 1];
  if (reached_s.size() == times_s.size()) crew.last_s = reached_s.back();
  return crew;
}

}  // namespace bide::outcome
