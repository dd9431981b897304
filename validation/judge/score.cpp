#include "validation/judge/score.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "bide/core/random.hpp"

namespace bide::validation {

namespace {

double normal_share(double z) {
  return std::erfc(-z / std::numbers::sqrt2) / 2;
}

// Share of the forecast below x.
double below(const Forecast& f, double sd, double x) {
  double out = 0;
  for (std::size_t i = 0; i < f.values.size(); ++i)
    out += f.weights[i] * (sd > 0 ? normal_share((x - f.values[i]) / sd) : x > f.values[i] ? 1 : 0);
  return out;
}

double quantile(const Forecast& f, double sd, double p) {
  constexpr double far = 6;  // standard deviations
  constexpr int halvings = 40;
  const auto [least, most] = std::minmax_element(f.values.begin(), f.values.end());
  double low = *least - far * sd, high = *most + far * sd;
  for (int i = 0; i < halvings; ++i) {
    const double middle = (low + high) / 2;
    (below(f, sd, middle) < p ? low : high) = middle;
  }
  return (low + high) / 2;
}

constexpr double most_error = 5;  // half-intervals: beyond that wrong is wrong

}  // namespace

Forecast single(double value) {
  return {{value}, {1}};
}

namespace {

constexpr double low_half = 0.25, high_half = 0.75, low_tenths = 0.05, high_tenths = 0.95;

}  // namespace

RowScore score(const JudgedRow& row, const Forecast& f, double scatter) {
  RowScore out = coverage(row, f, scatter);
  if (!out.two_sided) return out;
  const double sd = scatter * row.half();
  out.width = (quantile(f, sd, high_tenths) - quantile(f, sd, low_tenths)) / (2 * row.half());
  return out;
}

RowScore coverage(const JudgedRow& row, const Forecast& f, double scatter) {
  double mean = 0;
  for (std::size_t i = 0; i < f.values.size(); ++i) mean += f.weights[i] * f.values[i];
  RowScore out;
  out.error = std::min(row.error(mean), most_error);
  out.two_sided = row.two_sided();
  if (!out.two_sided) return out;
  const double sd = scatter * row.half(), share = below(f, sd, row.row.published);
  out.in_half = share >= low_half && share <= high_half;
  out.in_nine_tenths = share >= low_tenths && share <= high_tenths;
  return out;
}

std::vector<double> study_weights(const std::vector<JudgedRow>& rows) {
  constexpr double most = 2;
  std::map<std::string, double> count;
  for (const JudgedRow& each : rows) ++count[each.row.study];
  std::vector<double> out;
  for (const JudgedRow& each : rows) {
    const double n = count[each.row.study];
    out.push_back(std::min(n, most) / n);
  }
  return out;
}

Summary summarise(const std::vector<JudgedRow>& rows, const Scores& scores, const std::vector<bool>& take) {
  const std::vector<double> weights = study_weights(rows);
  Summary out;
  double all = 0, sided = 0;
  for (std::size_t r = 0; r < rows.size(); ++r) {
    if (!take[r] || !scores[r]) continue;
    const RowScore& s = *scores[r];
    ++out.rows;
    all += weights[r];
    out.error += weights[r] * s.error;
    if (!s.two_sided) continue;
    ++out.two_sided;
    sided += weights[r];
    out.in_half += s.in_half ? weights[r] : 0;
    out.in_nine_tenths += s.in_nine_tenths ? weights[r] : 0;
    out.width += weights[r] * s.width;
  }
  if (all > 0) out.error /= all;
  if (sided > 0) out.in_half /= sided, out.in_nine_tenths /= sided, out.width /= sided;
  return out;
}

Difference difference(const std::vector<JudgedRow>& rows, const Scores& first, const Scores& second,
                      std::uint64_t seed) {
  constexpr std::size_t replicates = 2000;
  constexpr double confidence = 0.9;
  const std::vector<double> weights = study_weights(rows);
  struct Sum {
    double weighted = 0, weight = 0;
  };
  std::map<std::string, Sum> by_study;
  Difference out;
  for (std::size_t r = 0; r < rows.size(); ++r) {
    if (!first[r] || !second[r]) continue;
    ++out.rows;
    Sum& sum = by_study[rows[r].row.study];
    sum.weighted += weights[r] * (second[r]->error - first[r]->error);
    sum.weight += weights[r];
    out.first += weights[r] * first[r]->error;
    out.second += weights[r] * second[r]->error;
  }
  std::vector<Sum> studies;
  for (const auto& each : by_study) studies.push_back(each.second);
  out.studies = studies.size();
  if (studies.empty()) return out;
  const auto mean_of = [](const Sum& sum) { return sum.weighted / sum.weight; };
  Sum whole;
  for (const Sum& each : studies) whole.weighted += each.weighted, whole.weight += each.weight;
  out.mean = mean_of(whole);
  out.first /= whole.weight, out.second /= whole.weight;
  const study::UniformAt draw = [seed](std::uint64_t sample, std::uint32_t factor, std::uint32_t each) {
    return uniform(seed, sample, factor, each);
  };
  std::vector<double> means;
  for (std::size_t k = 0; k < replicates; ++k) {
    Sum again;
    for (const std::size_t s : study::drawn_again(studies.size(), k, draw))
      again.weighted += studies[s].weighted, again.weight += studies[s].weight;
    means.push_back(mean_of(again));
  }
  out.interval = study::middle(std::move(means), confidence);
  return out;
}

}  // namespace bide::validation
