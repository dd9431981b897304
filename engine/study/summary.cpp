#include "study/summary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>
#include <utility>

#include "core/random.hpp"
#include "scenario/describe_study.hpp"
#include "scenario/document.hpp"
#include "scenario/nearest.hpp"
#include "scenario/reader.hpp"
#include "study/proportion.hpp"
#include "study/survival.hpp"

namespace bide::study {

using scenario::DesignKind;

namespace {

// One number per sample; not a number where there is none.
struct Figure {
  std::string name, unit;
  std::vector<double> values;
};

constexpr double not_a_number = not_there;

Bootstrap bootstrap() {
  constexpr std::uint64_t key = 0x626f6f74;
  constexpr std::size_t replicates = 1000;
  return {[](std::uint64_t sample, std::uint32_t factor, std::uint32_t draw) {
            return uniform(key, sample, factor, draw);
          },
          replicates, summary_confidence};
}

double mean_of(const std::vector<double>& values) {
  double sum = 0;
  std::size_t cases = 0;
  for (const double each : values)
    if (std::isfinite(each)) sum += each, ++cases;
  return cases ? sum / static_cast<double>(cases) : not_a_number;
}

constexpr std::array quantile_shares{0.05, 0.25, 0.5, 0.75, 0.95};

Spread spread_of_times(const std::vector<double>& times_h, const std::vector<double>& hours,
                       double horizon_h) {
  Spread out;
  std::vector<Observed> cases;
  double sum = 0;
  for (const double each : times_h) {
    if (std::isnan(each)) continue;
    cases.push_back({std::min(each, horizon_h), each <= horizon_h});
    sum += cases.back().time;
  }
  out.cases = cases.size();
  if (cases.empty()) return out;
  out.mean = sum / static_cast<double>(cases.size());
  for (const double share : quantile_shares) {
    const QuantileByRank q = quantile_by_rank(cases, horizon_h, share, summary_confidence);
    out.quantiles.push_back({share, q.time, q.low, q.high, q.low_known, q.high_known});
  }
  for (const double at_h : hours) {
    const auto hits = static_cast<std::size_t>(std::count_if(
        cases.begin(), cases.end(), [&](const Observed& each) { return each.time > at_h || !each.ended; }));
    out.later.push_back({at_h, hits, wilson(hits, cases.size(), summary_confidence)});
  }
  return out;
}

Spread spread_of_numbers(std::vector<double> values) {
  Spread out;
  std::erase_if(values, [](double each) { return !std::isfinite(each); });
  out.cases = values.size();
  if (values.empty()) return out;
  std::sort(values.begin(), values.end());
  out.mean = mean_of(values);
  for (const double share : quantile_shares) {
    const Ranks ranks = quantile_ranks(values.size(), share, summary_confidence);
    Spread::Quantile q{
        share, quantile_of_sorted(values, share), {}, {}, ranks.low.has_value(), ranks.high.has_value()};
    if (ranks.low) q.low = values[*ranks.low - 1];
    if (ranks.high) q.high = values[*ranks.high - 1];
    out.quantiles.push_back(q);
  }
  return out;
}

// Samples that stand for what may happen: of Saltelli's rows, those of the two independent sets.
bool stands_for_a_future(const Study& study, std::uint64_t k) {
  switch (study.file().design.kind) {
    case DesignKind::grid:
    case DesignKind::morris:
      return false;
    case DesignKind::saltelli:
      return k % (study.plan().groups().size() + 2) < 2;
    case DesignKind::random:
    case DesignKind::latin_hypercube:
    case DesignKind::sobol:
      return true;
  }
  return false;
}

// Ranks need both columns in memory: read from the first samples only.
constexpr std::size_t most_correlated = 100'000;

// Finite values, and those among them that are not the commonest.
std::pair<std::size_t, std::size_t> cases_and_differing(std::vector<double> values) {
  std::erase_if(values, [](double each) { return !std::isfinite(each); });
  std::sort(values.begin(), values.end());
  std::size_t commonest = 0;
  for (auto from = values.begin(); from != values.end();) {
    const auto to = std::upper_bound(from, values.end(), *from);
    commonest = std::max(commonest, static_cast<std::size_t>(to - from));
    from = to;
  }
  return {values.size(), values.size() - commonest};
}

struct Dependences {
  const Study& study;
  std::vector<std::vector<double>> inputs{};  // by input, of the first samples

  void read_inputs() {
    const std::size_t factors = study.sampler().factors().size();
    const auto rows = std::min<std::uint64_t>(study.plan().size(), most_correlated);
    inputs.assign(factors, {});
    for (std::uint64_t k = 0; k < rows; ++k) {
      const std::vector<double> point = study.plan().point(k);
      const Drawn drawn = study.sampler().at(point);
      for (std::size_t j = 0; j < factors; ++j)
        inputs[j].push_back(input_value(study, drawn, j).number.value_or(point[j]));
    }
  }

  std::optional<RankCorrelation> correlation(std::size_t input, const std::vector<double>& values) const {
    std::vector<double> x, y;
    for (std::size_t k = 0; k < inputs[input].size(); ++k) {
      if (!std::isfinite(values[k]) || !std::isfinite(inputs[input][k])) continue;
      x.push_back(inputs[input][k]);
      y.push_back(values[k]);
    }
    return rank_correlation(x, y, summary_confidence);
  }

  std::vector<std::vector<std::pair<std::string, double>>> level_means(
      const std::vector<double>& values) const {
    const Plan& plan = study.plan();
    struct Sum {
      double sum = 0, cases = 0;
      std::string words;
    };
    std::vector<std::vector<Sum>> sums;
    for (const auto& listed : plan.grid_values()) sums.emplace_back(listed.size());
    for (std::uint64_t k = 0; k < plan.size(); ++k) {
      const std::vector<std::size_t> places = plan.grid_places(k);
      for (std::size_t j = 0; j < places.size(); ++j) {
        Sum& sum = sums[j][places[j]];
        if (sum.words.empty()) sum.words = input_value(study, study.draw(k), j).words;
        if (std::isfinite(values[k])) sum.sum += values[k], ++sum.cases;
      }
    }
    std::vector<std::vector<std::pair<std::string, double>>> out;
    for (const auto& of_input : sums) {
      out.emplace_back();
      for (const Sum& sum : of_input)
        out.back().emplace_back(sum.words, sum.cases > 0 ? sum.sum / sum.cases : not_a_number);
    }
    return out;
  }

  Dependence of(const Figure& figure) const {
    Dependence out{figure.name, figure.unit, 0, 0, mean_of(figure.values), {}, {}, {}, {}};
    std::tie(out.cases, out.differing) = cases_and_differing(figure.values);
    const bool enough =
        static_cast<double>(out.differing) >= fewest_differing_share * static_cast<double>(out.cases);
    switch (study.file().design.kind) {
      case DesignKind::grid:
        out.level_means = level_means(figure.values);
        break;
      case DesignKind::saltelli:
        if (enough) out.indices = sobol_indices(figure.values, study.plan().groups().size(), bootstrap());
        break;
      case DesignKind::morris:
        out.effects = morris_effects(study.plan().trajectories(), figure.values);
        break;
      case DesignKind::random:
      case DesignKind::latin_hypercube:
      case DesignKind::sobol:
        for (std::size_t j = 0; enough && j < inputs.size(); ++j)
          out.correlations.push_back(correlation(j, figure.values));
        break;
    }
    return out;
  }
};

}  // namespace

InputValue input_value(const Study& study, const Drawn& drawn, std::size_t factor) {
  const scenario::Uncertain& u = *study.scenario().scenario.uncertain;
  std::string name = study.sampler().factors()[factor].name;
  if (name == "alternatives") return {{}, drawn.alternative};
  if (name == "rescue") return {drawn.rescue_h, drawn.rescue_h ? fmt::format("{:.6g}", *drawn.rescue_h) : ""};
  for (std::size_t i = 0; i < u.events.size(); ++i)
    if (name == event_name(u, i)) {
      const bool happens = std::any_of(drawn.failures.begin(), drawn.failures.end(),
                                       [&](const auto& each) { return each.kind == u.events[i].failure; });
      return {happens ? 1.0 : 0.0, happens ? "happens" : "does not happen"};
    }
  for (const scenario::SharedInput& group : u.groups)
    if (group.name == name) name = group.pointers.front();
  for (const Setting& setting : drawn.settings) {
    if (setting.pointer != name) continue;
    if (const auto* number = std::get_if<double>(&setting.value))
      return {*number, fmt::format("{:.6g}", *number)};
    if (const auto* truth = std::get_if<bool>(&setting.value))
      return {*truth ? 1.0 : 0.0, *truth ? "true" : "false"};
    if (const auto* word = std::get_if<std::string>(&setting.value)) return {{}, *word};
  }
  return {};
}

std::variant<std::vector<Output>, scenario::Diagnostics> outputs_of(const Study& study) {
  const std::vector<Output> all = outputs(static_cast<int>(study.persons()));
  std::vector<std::string> wanted = study.file().outputs;
  if (wanted.empty())
    wanted = {"first able until", "last able until", "first alive until",
              "last alive until", "coldest core",    "greatest water deficit"};
  std::vector<std::string_view> known;
  for (const Output& each : all) known.push_back(each.name);
  std::vector<Output> out;
  scenario::Diagnostics wrong;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    if (const Output* found = find_output(all, wanted[i]))
      out.push_back(*found);
    else
      wrong.push_back({study.file_name(), fmt::format("/outputs/{}", i),
                       fmt::format("found {}; allowed {}{}", scenario::in_quotes(wanted[i]),
                                   scenario::joined(known), scenario::did_you_mean(wanted[i], known))});
  }
  if (!wrong.empty()) return wrong;
  return out;
}

std::vector<double> hours_of(const Study& study) {
  if (!study.file().at_h.empty()) return study.file().at_h;
  const double horizon_h = study.scenario().scenario.duration_h;
  std::vector<double> out;
  for (const double each : {24.0, 72.0})
    if (each < horizon_h) out.push_back(each);
  out.push_back(horizon_h);
  return out;
}

Summary summarise(const Study& study, const std::vector<Output>& outputs,
                  const std::filesystem::path& records) {
  constexpr std::size_t most_failures = 10;
  Summary out;
  out.samples = study.plan().size();
  out.horizon_h = study.scenario().scenario.duration_h;
  out.inputs = study.plan().group_names();
  std::vector<std::vector<double>> columns(outputs.size(), std::vector<double>(out.samples, not_a_number));
  study.read(records, [&](const SampleResult& result) {
    if (!result.failure.empty()) {
      ++out.failed;
      if (out.first_failures.size() < most_failures)
        out.first_failures.emplace_back(result.index, result.failure);
      return;
    }
    for (std::size_t i = 0; i < outputs.size(); ++i) columns[i][result.index] = outputs[i].of(result);
  });

  const std::vector<double> hours = hours_of(study);
  Dependences dependences{study};
  const DesignKind kind = study.file().design.kind;
  if (kind == DesignKind::random || kind == DesignKind::latin_hypercube || kind == DesignKind::sobol)
    dependences.read_inputs();
  for (std::uint64_t k = 0; k < out.samples; ++k) out.futures += stands_for_a_future(study, k) ? 1 : 0;
  for (std::size_t i = 0; i < outputs.size(); ++i) {
    const Output& output = outputs[i];
    const std::vector<double>& column = columns[i];
    if (out.futures > 0) {
      std::vector<double> futures;
      for (std::uint64_t k = 0; k < out.samples; ++k)
        if (stands_for_a_future(study, k)) futures.push_back(column[k]);
      Spread spread =
          output.is_time ? spread_of_times(futures, hours, out.horizon_h) : spread_of_numbers(futures);
      spread.name = output.name, spread.unit = output.unit, spread.is_time = output.is_time;
      spread.not_there = out.futures - spread.cases;
      out.spreads.push_back(std::move(spread));
    }
    if (!output.is_time) {
      out.dependences.push_back(dependences.of({output.name, output.unit, column}));
      continue;
    }
    Figure within{fmt::format("{}, within {:g} h", output.name, out.horizon_h), output.unit, column};
    for (double& each : within.values)
      if (!std::isnan(each)) each = std::min(each, out.horizon_h);
    out.dependences.push_back(dependences.of(within));
    for (const double at_h : hours) {
      Figure later{fmt::format("{} later than {:g} h", output.name, at_h), "share", column};
      for (double& each : later.values)
        if (!std::isnan(each)) each = each > at_h ? 1 : 0;
      out.dependences.push_back(dependences.of(later));
    }
  }
  return out;
}

}  // namespace bide::study
