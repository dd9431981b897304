#include "validation/judge/candidates.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

#include "bide/core/random.hpp"
#include "bide/core/units.hpp"
#include "bide/study/sampling/distribution.hpp"
#include "validation/support/two_node.hpp"

namespace bide::validation {

namespace {

double normal(std::uint64_t seed, std::uint64_t k, std::size_t i) {
  return study::standard_normal_quantile(uniform(seed, k, stream_of(parameters[i].name), 0));
}

double pinned(std::size_t i, double logarithm) {
  return std::clamp(logarithm, -parameters[i].farthest, parameters[i].farthest);
}

bool starts(const std::string& text, const char* with) {
  return text.rfind(with, 0) == 0;
}

// By dress, dry in air and soaked in water, m2 K/W: the catalogue's indoor clothes and insulated suit.
constexpr double clothed_m2K_W = 0.11, clothed_in_water_m2K_W = 0.012, suit_m2K_W = 0.117;

std::optional<double> by_two_nodes(const JudgedRow& row) {
  using constants::Dress, constants::Medium;
  if (row.row.two_node) return row.row.two_node;
  const std::string &quantity = row.row.quantity, &unit = row.row.unit;
  TwoNodePlace place;
  place.around_degC = row.at.degC;
  place.in_water = row.at.medium == Medium::water;
  if (place.in_water) place.film_W_m2K = 100, place.radiation_W_m2K = 0;
  if (row.at.dress == Dress::suit) place.clothing_m2K_W = suit_m2K_W;
  if (row.at.dress == Dress::clothed)
    place.clothing_m2K_W = place.in_water ? clothed_in_water_m2K_W : clothed_m2K_W;
  const TwoNodePerson person;
  const double to_s = row.hours * hour_s;
  const TwoNodeEnd end = two_node(place, person, to_s, to_s / 2);
  if (row.about == "skin" && unit == "degC" && starts(quantity, "mean skin")) return end.skin_degC;
  if (row.about == "core" && unit == "degC") return end.core_degC;
  if (row.about == "heat made" && unit == "W/m2") return end.metabolic_W / person.area_m2;
  if (row.about == "heat made" && unit == "W" && starts(quantity, "heat")) return end.metabolic_W;
  if (row.about == "core" && unit == "K" &&
      (starts(quantity, "core change") || starts(quantity, "rectal change")))
    return end.core_degC - two_node_start_degC;
  if (row.about == "core" && starts(quantity, "cooling in swimsuits at rest"))
    return (two_node_start_degC - end.core_degC) / row.hours;
  return std::nullopt;
}

double normal_log_density(double z, double sd) {
  return -z * z / (2 * sd * sd) - std::log(sd);
}

// Log likelihood of each study, and of the whole runs last.
class Likelihood {
 public:
  Likelihood(const Runs& runs, const Surface& surface)
      : runs_(runs), surface_(surface), weights_(study_weights(runs.rows)) {
    for (const JudgedRow& row : runs.rows) {
      const auto at = std::find(names_.begin(), names_.end(), row.row.study);
      study_of_.push_back(static_cast<std::size_t>(at - names_.begin()));
      if (at == names_.end()) names_.push_back(row.row.study);
    }
  }
  std::size_t studies() const { return names_.size(); }
  std::size_t study_of(std::size_t row) const { return study_of_[row]; }
  const std::string& name(std::size_t study) const { return names_[study]; }

  std::vector<double> at(const std::vector<double>& values) const {
    constexpr double outlier = 0.1, wide = 4;
    std::vector<double> plain(studies(), 0), far(studies(), 0);
    for (std::size_t r = 0; r < runs_.rows.size(); ++r) {
      const JudgedRow& row = runs_.rows[r];
      const double z = row.error(values[r]), blur = surface_.misfit()[r] / row.half();
      const double sd = std::sqrt(row_scatter * row_scatter + blur * blur);
      plain[study_of_[r]] += weights_[r] * normal_log_density(z, sd);
      far[study_of_[r]] += weights_[r] * normal_log_density(z, wide * sd);
    }
    std::vector<double> out;
    for (std::size_t s = 0; s < studies(); ++s) {
      const double most = std::max(plain[s], far[s]);
      out.push_back(most +
                    std::log((1 - outlier) * std::exp(plain[s] - most) + outlier * std::exp(far[s] - most)));
    }
    double whole = 0;
    for (std::size_t w = 0; w < runs_.whole_runs.size(); ++w) {
      const Row& row = runs_.whole_runs[w];
      const double value = values[runs_.rows.size() + w], half = (row.high - row.low) / 2;
      const double outside = std::max({0.0, row.low - value, value - row.high});
      whole += normal_log_density(outside / half, 1);
    }
    out.push_back(whole);
    return out;
  }

 private:
  const Runs& runs_;
  const Surface& surface_;
  std::vector<double> weights_;
  std::vector<std::string> names_;
  std::vector<std::size_t> study_of_;
};

double sum(const std::vector<double>& all) {
  double out = 0;
  for (const double each : all) out += each;
  return out;
}

double log_prior(const Point& point) {
  double out = 0;
  for (std::size_t i = 0; i < parameter_count; ++i) {
    if (std::abs(point[i]) > parameters[i].farthest) return -std::numeric_limits<double>::infinity();
    out += normal_log_density(point[i] / parameters[i].sd, 1);
  }
  return out;
}

}  // namespace

Scores of_model(const Runs& runs) {
  Scores out;
  for (const JudgedRow& row : runs.rows) out.push_back(score(row, single(row.row.model), row_scatter));
  return out;
}

std::vector<Point> prior_points(std::size_t count, std::uint64_t seed) {
  std::vector<Point> out(count);
  for (std::size_t k = 0; k < count; ++k)
    for (std::size_t i = 0; i < parameter_count; ++i)
      out[k][i] = pinned(i, parameters[i].sd * normal(seed, k, i));
  return out;
}

Scores of_priors(const Runs& runs, const Surface& surface, std::size_t count, std::uint64_t seed) {
  std::vector<Forecast> forecasts(runs.rows.size());
  for (const Point& point : prior_points(count, seed)) {
    const std::vector<double> values = surface.at(point);
    for (std::size_t r = 0; r < runs.rows.size(); ++r) forecasts[r].values.push_back(values[r]);
  }
  Scores out;
  for (std::size_t r = 0; r < runs.rows.size(); ++r) {
    forecasts[r].weights.assign(count, 1 / static_cast<double>(count));
    out.push_back(score(runs.rows[r], forecasts[r], row_scatter));
  }
  return out;
}

Scores trivial(const std::vector<JudgedRow>& rows) {
  Scores out;
  for (const JudgedRow& row : rows) {
    const auto others = [&](bool same_region) {
      Forecast f;
      for (const JudgedRow& other : rows)
        if (other.row.study != row.row.study && other.about == row.about && other.row.unit == row.row.unit &&
            other.at.medium == row.at.medium && (!same_region || other.region == row.region))
          f.values.push_back(other.row.published);
      f.weights.assign(f.values.size(), 1 / static_cast<double>(f.values.size()));
      return f;
    };
    Forecast f = others(true);
    if (f.values.empty()) f = others(false);
    out.push_back(f.values.empty() ? std::nullopt : std::optional(score(row, f, row_scatter)));
  }
  return out;
}

Scores two_nodes(const std::vector<JudgedRow>& rows) {
  Scores out;
  for (const JudgedRow& row : rows) {
    const std::optional<double> value = by_two_nodes(row);
    out.push_back(value ? std::optional(score(row, single(*value), row_scatter)) : std::nullopt);
  }
  return out;
}

bool Posterior::near_bound(std::size_t i) const {
  return parameters[i].farthest - std::abs(mean[i]) < sd[i];
}

Posterior posterior(const Runs& runs, const Surface& surface, std::uint64_t seed) {
  constexpr std::size_t steps = 44000, burn_in = 4000, every = 20;
  constexpr double step = 0.25;  // of the prior's standard deviation
  const Likelihood likelihood(runs, surface);
  Posterior out;
  std::vector<std::vector<double>> values, studies;  // by kept point
  Point now{};
  std::vector<double> at_now = surface.at(now), studies_now = likelihood.at(at_now);
  double log_now = log_prior(now) + sum(studies_now);
  for (std::size_t k = 0; k < steps; ++k) {
    Point next = now;
    for (std::size_t i = 0; i < parameter_count; ++i) next[i] += step * parameters[i].sd * normal(seed, k, i);
    if (std::isfinite(log_prior(next))) {
      std::vector<double> at_next = surface.at(next), studies_next = likelihood.at(at_next);
      const double log_next = log_prior(next) + sum(studies_next);
      if (std::log(uniform(seed, k, stream_of("accept"), 0)) < log_next - log_now) {
        now = next, log_now = log_next;
        at_now = std::move(at_next), studies_now = std::move(studies_next);
        out.accepted += 1 / static_cast<double>(steps);
      }
    }
    if (k < burn_in || k % every != 0) continue;
    out.points.push_back(now);
    values.push_back(at_now);
    studies.push_back(studies_now);
  }
  const double count = static_cast<double>(out.points.size());
  for (std::size_t i = 0; i < parameter_count; ++i) {
    double squares = 0;
    for (const Point& p : out.points) out.mean[i] += p[i] / count, squares += p[i] * p[i] / count;
    out.sd[i] = std::sqrt(std::max(0.0, squares - out.mean[i] * out.mean[i]));
  }
  std::vector<std::vector<double>> weights(likelihood.studies());
  out.least_effective_points = count;
  for (std::size_t s = 0; s < likelihood.studies(); ++s) {
    double least = std::numeric_limits<double>::infinity(), all = 0, squares = 0;
    for (const auto& each : studies) least = std::min(least, each[s]);
    for (const auto& each : studies) weights[s].push_back(std::exp(least - each[s]));
    for (const double w : weights[s]) all += w;
    for (double& w : weights[s]) w /= all, squares += w * w;
    out.least_effective_points = std::min(out.least_effective_points, 1 / squares);
    for (std::size_t i = 0; i < parameter_count; ++i) {
      double without = 0;
      for (std::size_t k = 0; k < out.points.size(); ++k) without += weights[s][k] * out.points[k][i];
      const double moved = (without - out.mean[i]) / out.sd[i];
      if (std::abs(moved) > std::abs(out.leans[i].moved)) out.leans[i] = {likelihood.name(s), moved};
    }
  }
  for (std::size_t r = 0; r < runs.rows.size(); ++r) {
    Forecast f;
    for (const auto& each : values) f.values.push_back(each[r]);
    f.weights = weights[likelihood.study_of(r)];
    out.scores.push_back(score(runs.rows[r], f, row_scatter));
  }
  return out;
}

}  // namespace bide::validation
