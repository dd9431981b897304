#include "bide/study/sampling/plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <numeric>
#include <stdexcept>

#include "bide/core/random.hpp"
#include "bide/scenario/document.hpp"
#include "bide/scenario/nearest.hpp"
#include "bide/scenario/words.hpp"
#include "bide/scenario/write.hpp"
#include "bide/study/sampling/own_points.hpp"
#include "bide/study/sampling/sobol_points.hpp"
#include "bide/study/statistics/morris.hpp"

namespace bide::study {

using scenario::Design;
using scenario::DesignKind;
using scenario::Diagnostics;

namespace {

// Independent of the numbers of plain random samples, which have the seed itself for a key.
UniformAt chance_of(int seed, DesignKind purpose) {
  constexpr int word_bits = 32;
  const PhiloxCounter words = philox4x32_10({static_cast<std::uint32_t>(purpose) + 1, 0, 0, 0},
                                            {static_cast<std::uint32_t>(seed), 0});
  const std::uint64_t key = (std::uint64_t{words[0]} << word_bits) | words[1];
  return [key](std::uint64_t sample, std::uint32_t factor, std::uint32_t draw) {
    return uniform(key, sample, factor, draw);
  };
}

std::vector<double> middles(const std::vector<double>& weights) {
  const double sum = std::accumulate(weights.begin(), weights.end(), 0.0);
  std::vector<double> out;
  double below = 0;
  for (const double weight : weights) {
    if (weight > 0) out.push_back((below + weight / 2) / sum);
    below += weight;
  }
  return out;
}

std::vector<double> row_of(const Points& points, std::uint64_t k) {
  const auto row = points.row(static_cast<Eigen::Index>(k));
  return {row.begin(), row.end()};
}

}  // namespace

struct Plan::Maker {
  const scenario::ValidStudy& study;
  std::shared_ptr<const Sampler> sampler;
  Diagnostics wrong{};
  Plan plan{};

  const Design& design() const { return study.study.design; }
  std::size_t factors() const { return sampler->factors().size(); }
  // Of the kinds that have them.
  std::uint64_t samples() const { return static_cast<std::uint64_t>(design().samples.value()); }
  void report(std::string pointer, std::string message) {
    wrong.push_back({study.file, std::move(pointer), std::move(message)});
  }

  void hold(Points points) {
    plan.points_ = std::make_shared<const Points>(std::move(points));
    plan.size_ = static_cast<std::uint64_t>(plan.points_->rows());
    plan.point_ = [points = plan.points_](std::uint64_t k) { return row_of(*points, k); };
  }

  bool fits_in_memory(std::uint64_t rows) {
    if (rows <= most_held_numbers / factors()) return true;
    report("/design/samples",
           fmt::format("found {}; allowed at most {} numbers (runs times inputs, here {}) with kind {}",
                       *design().samples, most_held_numbers, factors(), scenario::word(design().kind)));
    return false;
  }

  // The numbers in (0, 1) that stand for an input's listed values, or for equal slices of a continuous one.
  std::vector<double> values_of(const std::string& name) const {
    const scenario::Uncertain& u = *study.scenario.scenario.uncertain;
    const auto listed = [](const scenario::Distribution& d) -> std::vector<double> {
      if (d.kind != scenario::DistributionKind::discrete) return {};
      return middles(d.weights.empty() ? std::vector<double>(d.values.size(), 1) : d.weights);
    };
    std::vector<double> out;
    for (const auto& [pointer, distribution] : u.inputs.entries)
      if (pointer == name) out = listed(distribution);
    for (const scenario::SharedInput& group : u.groups)
      if (group.name == name) out = listed(group.distribution);
    for (std::size_t i = 0; i < u.events.size(); ++i)
      if (name == event_name(u, i)) out = middles({u.events[i].probability, 1 - u.events[i].probability});
    if (name == "alternatives") {
      std::vector<double> weights;
      for (const scenario::Alternative& one : u.alternatives) weights.push_back(one.weight);
      out = middles(weights);
    }
    if (out.empty()) out = middles(std::vector<double>(static_cast<std::size_t>(design().levels), 1));
    return out;
  }

  void grid() {
    for (const Factor& factor : sampler->factors()) plan.grid_values_.push_back(values_of(factor.name));
    double combinations = 1;
    for (const auto& values : plan.grid_values_) combinations *= static_cast<double>(values.size());
    if (combinations > scenario::most_samples)
      return report("/design/kind",
                    fmt::format("found a grid of {:.3g} combinations of {} inputs; allowed at most "
                                "{}",
                                combinations, factors(), scenario::most_samples));
    const Grid grid(plan.grid_values_);
    plan.size_ = grid.size();
    plan.point_ = [grid](std::uint64_t k) {
      std::vector<double> point(grid.factors());
      grid.row(k, point);
      return point;
    };
  }

  void sobol(std::uint64_t samples) {
    const SobolPoints points(factors(), chance_of(design().seed, design().kind));
    plan.size_ = samples;
    plan.point_ = [points](std::uint64_t k) {
      std::vector<double> point(points.factors());
      points.point(k, point);
      return point;
    };
  }

  void saltelli(std::uint64_t base_samples) {
    groups();
    if (!wrong.empty()) return;
    const SobolPoints points(2 * factors(), chance_of(design().seed, design().kind));
    const std::uint64_t each = plan.groups_.size() + 2;
    plan.size_ = base_samples * each;
    plan.point_ = [points, each, all = plan.groups_](std::uint64_t k) {
      Points pair(1, static_cast<Eigen::Index>(points.factors()));
      points.point(k / each, {pair.data(), points.factors()});
      return row_of(saltelli_rows(pair, all), k % each);
    };
  }

  // The listed groups, then every other input by itself.
  void groups() {
    const auto& names = sampler->factors();
    std::vector<bool> taken(factors());
    std::vector<std::string_view> known;
    for (const Factor& factor : names) known.push_back(factor.name);
    for (std::size_t g = 0; g < design().groups.size(); ++g) {
      const scenario::DesignGroup& group = design().groups[g];
      std::vector<std::size_t> columns;
      for (std::size_t i = 0; i < group.inputs.size(); ++i) {
        const std::string& wanted = group.inputs[i];
        const std::string at = fmt::format("/design/groups/{}/inputs/{}", g, i);
        bool found = false;
        for (std::size_t j = 0; j < factors(); ++j) {
          if (names[j].name != wanted && scenario::any_index(names[j].name) != wanted) continue;
          found = true;
          if (taken[j])
            report(at, fmt::format("found {} a second time; allowed in one group", names[j].name));
          taken[j] = true;
          columns.push_back(j);
        }
        if (!found)
          report(at, fmt::format("found {}; allowed what varies in the scenario{}",
                                 scenario::in_quotes(wanted), scenario::did_you_mean(wanted, known)));
      }
      plan.group_names_.push_back(group.name);
      plan.groups_.push_back(std::move(columns));
    }
    for (std::size_t j = 0; j < factors(); ++j) {
      if (taken[j]) continue;
      plan.group_names_.push_back(names[j].name);
      plan.groups_.push_back({j});
    }
    independent();
  }

  // Indices are shares of independent causes: inputs that go together are asked for together.
  void independent() {
    const auto& pairs = study.scenario.scenario.uncertain->together;
    const auto group_of = [&](const std::string& name) {
      for (std::size_t g = 0; g < plan.groups_.size(); ++g)
        for (const std::size_t column : plan.groups_[g])
          if (sampler->factors()[column].name == name) return g;
      return plan.groups_.size();
    };
    for (const scenario::Together& pair : pairs)
      if (group_of(pair.first) != group_of(pair.second))
        report("/design/groups",
               fmt::format("found {} and {} apart, which are correlated; allowed in one group", pair.first,
                           pair.second));
  }

  void morris(std::uint64_t trajectories) {
    if (!study.scenario.scenario.uncertain->together.empty())
      return report("/design/kind",
                    "found morris with correlated inputs; allowed when no inputs are correlated");
    if (!fits_in_memory(trajectories * (factors() + 1))) return;
    hold(morris_trajectories(trajectories, factors(), static_cast<std::size_t>(design().levels),
                             chance_of(design().seed, design().kind)));
  }

  void own_points() {
    const std::filesystem::path file = points_file_of(study);
    plan.scale_ = design().scale;
    auto read = read_points(file, sampler->factors(), plan.scale_);
    if (auto* errors = std::get_if<Diagnostics>(&read)) {
      wrong = std::move(*errors);
      return;
    }
    auto& points = std::get<PointsFile>(read);
    hold(std::move(points.points));
    plan.file_ = file.string();
    plan.lines_ = std::move(points.lines);
  }

  void make() {
    if (factors() == 0)
      return report("/uncertain",
                    "found nothing that varies, here or in the scenario; allowed at least one input");
    switch (design().kind) {
      case DesignKind::grid:
        grid();
        break;
      case DesignKind::random:
        plan.size_ = samples();
        plan.point_ = [all = sampler, seed = design().seed](std::uint64_t k) {
          return all->point(static_cast<std::uint64_t>(seed), k);
        };
        break;
      case DesignKind::latin_hypercube:
        if (fits_in_memory(samples()))
          hold(latin_hypercube(samples(), factors(), chance_of(design().seed, design().kind)));
        break;
      case DesignKind::sobol:
        sobol(samples());
        break;
      case DesignKind::saltelli:
        saltelli(samples());
        break;
      case DesignKind::morris:
        morris(samples());
        break;
      case DesignKind::points:
        own_points();
        break;
    }
    if (plan.groups_.empty()) {
      plan.groups_ = each_alone(factors());
      for (const Factor& factor : sampler->factors()) plan.group_names_.push_back(factor.name);
    }
  }
};

std::variant<Plan, Diagnostics> Plan::make(const scenario::ValidStudy& study,
                                           std::shared_ptr<const Sampler> sampler) {
  Maker maker{study, std::move(sampler)};
  maker.make();
  if (!maker.wrong.empty()) return maker.wrong;
  return std::move(maker.plan);
}

std::string Plan::place(std::uint64_t k) const {
  return lines_.empty() ? "" : fmt::format("{}, line {}", file_, lines_.at(k));
}

std::vector<std::size_t> Plan::grid_places(std::uint64_t k) const {
  std::vector<std::size_t> out(grid_values_.size());
  Grid(grid_values_).places(k, out);
  return out;
}

}  // namespace bide::study
