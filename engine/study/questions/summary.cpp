#include "bide/study/questions/summary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <limits>
#include <utility>

#include "bide/core/random.hpp"
#include "bide/study/questions/study.hpp"
#include "bide/study/records/unnamed_file.hpp"
#include "bide/study/records/unnamed_table.hpp"
#include "bide/study/statistics/proportion.hpp"
#include "bide/study/statistics/ranked.hpp"

namespace bide::study {

using scenario::DesignKind;

namespace {

// One number per sample, not a number where there is none: in a file, and visited as often as need be.
using Column = UnnamedFile<double>;
using Numbers = EachNumber<double>;
using Visit = std::function<void(double)>;

struct Figure {
  std::string name, unit;
  Numbers each;
};

constexpr double not_a_number = not_there;

Bootstrap bootstrap(const Look& look) {
  constexpr std::uint64_t key = 0x626f6f74;
  return {[](std::uint64_t sample, std::uint32_t factor, std::uint32_t draw) {
            return uniform(key, sample, factor, draw);
          },
          index_replicates, interval_confidence, look};
}

struct Finite {
  std::size_t cases = 0;
  double mean = not_a_number;
};

Finite finite(const Numbers& each) {
  Finite out;
  double sum = 0;
  each([&](double value) {
    if (std::isfinite(value)) sum += value, ++out.cases;
  });
  if (out.cases > 0) out.mean = sum / static_cast<double>(out.cases);
  return out;
}

constexpr std::array quantile_shares{0.05, 0.25, 0.5, 0.75, 0.95};

Spread spread_of_times(const Numbers& times_h, const std::vector<double>& hours, double horizon_h) {
  Spread out;
  double sum = 0;
  std::vector<std::size_t> later(hours.size());
  times_h([&](double each) {
    if (std::isnan(each)) return;
    ++out.cases;
    sum += std::min(each, horizon_h);
    for (std::size_t i = 0; i < hours.size(); ++i) later[i] += each > hours[i] ? 1 : 0;
  });
  if (out.cases == 0) return out;
  out.mean = sum / static_cast<double>(out.cases);
  std::vector<Ranks> around;
  std::vector<std::size_t> ranks;
  for (const double share : quantile_shares) {
    around.push_back(quantile_ranks(out.cases, share, interval_confidence));
    ranks.insert(ranks.end(),
                 {rank_of(share, out.cases), around.back().low.value_or(1), around.back().high.value_or(1)});
  }
  const auto found = at_ranks<double>(
      [&](const Visit& visit) {
        times_h([&](double each) {
          if (!std::isnan(each)) visit(each);
        });
      },
      ranks);
  const auto within = [&](double h) { return h <= horizon_h ? std::optional(h) : std::nullopt; };
  for (std::size_t q = 0; q < quantile_shares.size(); ++q) {
    Spread::Quantile quantile{quantile_shares[q],        within(found[3 * q]),      {}, {},
                              around[q].low.has_value(), around[q].high.has_value()};
    if (around[q].low) quantile.low = within(found[3 * q + 1]);
    if (around[q].high) quantile.high = within(found[3 * q + 2]);
    out.quantiles.push_back(quantile);
  }
  for (std::size_t i = 0; i < hours.size(); ++i)
    out.later.push_back({hours[i], later[i], wilson(later[i], out.cases, interval_confidence)});
  return out;
}

Spread spread_of_numbers(const Numbers& each) {
  Spread out;
  const Finite all = finite(each);
  out.cases = all.cases;
  if (out.cases == 0) return out;
  out.mean = all.mean;
  std::vector<Ranks> around;
  std::vector<std::size_t> ranks;
  for (const double share : quantile_shares) {
    const RanksBeside beside = ranks_beside(share, out.cases);
    around.push_back(quantile_ranks(out.cases, share, interval_confidence));
    ranks.insert(ranks.end(),
                 {beside.below, beside.above, around.back().low.value_or(1), around.back().high.value_or(1)});
  }
  const auto found = at_ranks<double>(
      [&](const Visit& visit) {
        each([&](double value) {
          if (std::isfinite(value)) visit(value);
        });
      },
      ranks);
  for (std::size_t q = 0; q < quantile_shares.size(); ++q) {
    const double share = quantile_shares[q];
    Spread::Quantile quantile{share,
                              between(ranks_beside(share, out.cases), found[4 * q], found[4 * q + 1]),
                              {},
                              {},
                              around[q].low.has_value(),
                              around[q].high.has_value()};
    if (around[q].low) quantile.low = found[4 * q + 2];
    if (around[q].high) quantile.high = found[4 * q + 3];
    out.quantiles.push_back(quantile);
  }
  return out;
}

// Samples that stand for what may happen: of Saltelli's rows, those of the two independent sets.
bool stands_for_a_future(const Study& study, std::uint64_t k) {
  switch (study.file().design.kind) {
    case DesignKind::grid:
    case DesignKind::morris:
    case DesignKind::points:  // nobody has said from what they were drawn
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

std::vector<double> first_of(const Numbers& each, std::size_t most) {
  std::vector<double> out;
  each([&](double value) {
    if (out.size() < most) out.push_back(value);
  });
  return out;
}

std::vector<double> all_of(const Numbers& each) {
  return first_of(each, std::numeric_limits<std::size_t>::max());
}

// Number of finite values that differ from the majority value; all if there is no majority. The majority is
// found by the vote of Boyer and Moore (1981, from memory).
std::size_t differing(const Numbers& each, std::size_t cases) {
  double standing = not_a_number;
  std::size_t votes = 0, same = 0;
  each([&](double value) {
    if (!std::isfinite(value)) return;
    if (votes == 0) standing = value;
    if (value == standing)
      ++votes;
    else
      --votes;
  });
  each([&](double value) { same += value == standing ? 1 : 0; });
  return 2 * same > cases ? cases - same : cases;
}

struct Dependences {
  const Study& study;
  const Look& look;
  std::optional<UnnamedTable> inputs{};  // a column for each input, of the first samples

  void read_inputs() {
    const std::size_t factors = study.sampler().factors().size();
    const auto rows = std::min<std::uint64_t>(study.plan().size(), most_correlated);
    inputs.emplace(rows, factors);
    std::vector<double> row(factors);
    for (std::uint64_t k = 0; k < rows; ++k) {
      const std::vector<double> point = study.plan().point(k);
      const Drawn drawn = study.draw(k);
      for (std::size_t j = 0; j < factors; ++j)
        row[j] = input_value(study, drawn, j).number.value_or(point[j]);
      inputs->add(row);
    }
  }

  // `values` of the first samples.
  std::optional<RankCorrelation> correlation(std::size_t input, const std::vector<double>& values) {
    std::vector<double> x, y;
    std::size_t k = 0;
    inputs->each(input, [&](double value) {
      const double output = values[k++];
      if (!std::isfinite(output) || !std::isfinite(value)) return;
      x.push_back(value);
      y.push_back(output);
    });
    return rank_correlation(x, y, interval_confidence);
  }

  std::vector<std::vector<std::pair<std::string, double>>> level_means(const Numbers& each) const {
    const Plan& plan = study.plan();
    struct Sum {
      double sum = 0, cases = 0;
      std::string words;
    };
    std::vector<std::vector<Sum>> sums;
    for (const auto& listed : plan.grid_values()) sums.emplace_back(listed.size());
    std::uint64_t k = 0;
    each([&](double value) {
      const std::vector<std::size_t> places = plan.grid_places(k);
      for (std::size_t j = 0; j < places.size(); ++j) {
        Sum& sum = sums[j][places[j]];
        if (sum.words.empty()) sum.words = input_value(study, study.draw(k), j).words;
        if (std::isfinite(value)) sum.sum += value, ++sum.cases;
      }
      ++k;
    });
    std::vector<std::vector<std::pair<std::string, double>>> out;
    for (const auto& of_input : sums) {
      out.emplace_back();
      for (const Sum& sum : of_input)
        out.back().emplace_back(sum.words, sum.cases > 0 ? sum.sum / sum.cases : not_a_number);
    }
    return out;
  }

  Dependence of(const Figure& figure) {
    const Finite all = finite(figure.each);
    Dependence out{figure.name, figure.unit, all.cases, differing(figure.each, all.cases), all.mean, {},
                   {},          {},          {}};
    const bool enough =
        static_cast<double>(out.differing) >= fewest_differing_share * static_cast<double>(out.cases);
    switch (study.file().design.kind) {
      case DesignKind::grid:
        out.level_means = level_means(figure.each);
        break;
      case DesignKind::saltelli:
        if (enough)
          out.indices = sobol_indices(all_of(figure.each), study.plan().groups().size(), bootstrap(look));
        break;
      case DesignKind::morris:
        out.effects = morris_effects(study.plan().held_points(), all_of(figure.each));
        break;
      case DesignKind::random:
      case DesignKind::latin_hypercube:
      case DesignKind::sobol:
      case DesignKind::points: {
        if (!enough) break;
        const std::vector<double> values = first_of(figure.each, most_correlated);
        for (std::size_t j = 0; j < inputs->columns(); ++j)
          out.correlations.push_back(correlation(j, values));
        break;
      }
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
  std::vector<std::string> wanted = study.file().outputs;
  if (wanted.empty())
    wanted = {"first able until", "last able until", "first alive until",
              "last alive until", "coldest core",    "greatest water deficit"};
  return named_outputs(static_cast<int>(study.persons()), wanted, study.file_name());
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
                  const std::filesystem::path& records, const Look& look) {
  constexpr std::size_t most_failures = 10;
  Summary out;
  out.samples = study.plan().size();
  out.horizon_h = study.scenario().scenario.duration_h;
  out.inputs = study.plan().group_names();
  std::vector<Column> columns(outputs.size());
  constexpr std::uint64_t samples_to_a_look = 1024;
  study.read(records, [&](const SampleResult& result) {
    if (look && result.index % samples_to_a_look == 0) look();
    const bool failed = !result.failure.empty();
    if (failed && out.failed++ < most_failures) out.first_failures.emplace_back(result.index, result.failure);
    for (std::size_t i = 0; i < outputs.size(); ++i)
      columns[i].add(failed ? not_a_number : outputs[i].of(result));
  });

  const std::vector<double> hours = hours_of(study);
  Dependences dependences{study, look};
  const DesignKind kind = study.file().design.kind;
  if (kind == DesignKind::random || kind == DesignKind::latin_hypercube || kind == DesignKind::sobol ||
      kind == DesignKind::points)
    dependences.read_inputs();
  for (std::uint64_t k = 0; k < out.samples; ++k) out.futures += stands_for_a_future(study, k) ? 1 : 0;
  for (std::size_t i = 0; i < outputs.size(); ++i) {
    if (look) look();
    const Output& output = outputs[i];
    const Numbers column = [&file = columns[i]](const Visit& visit) { file.each(visit); };
    if (out.futures > 0) {
      const Numbers futures = [&](const Visit& visit) {
        std::uint64_t k = 0;
        column([&](double value) {
          if (stands_for_a_future(study, k++)) visit(value);
        });
      };
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
    const auto of_times = [&](const std::string& name, const char* unit, const auto& answer) {
      const Numbers each = [&](const Visit& visit) {
        column([&](double value) { visit(std::isnan(value) ? value : answer(value)); });
      };
      out.dependences.push_back(dependences.of({name, unit, each}));
    };
    of_times(fmt::format("{}, within {:g} h", output.name, out.horizon_h), output.unit.c_str(),
             [&](double h) { return std::min(h, out.horizon_h); });
    for (const double at_h : hours)
      of_times(fmt::format("{} later than {:g} h", output.name, at_h), "share",
               [at_h](double h) { return h > at_h ? 1.0 : 0.0; });
  }
  return out;
}

}  // namespace bide::study
