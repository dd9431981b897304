#include "bide/report/study/study_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "bide/core/units.hpp"
#include "bide/report/run/sentences.hpp"
#include "bide/report/study/study_text.hpp"
#include "bide/report/words/input.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

using study::Dependence;
using study::Spread;

// Of a seventh of quantiles, 5, 25, 50, 75 and 95 %.
enum SharePlace : std::size_t { share05, share25, share50, share75, share95 };

std::string most_decisive(const study::Summary& summary, const Dependence& d) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < summary.inputs.size(); ++i)
    if (weight_of(d, i)) order.push_back(i);
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return *weight_of(d, a) > *weight_of(d, b); });
  constexpr std::size_t most = 3;
  std::string out;
  for (std::size_t i = 0; i < std::min(most, order.size()); ++i)
    out += fmt::format("{}{} ({:.2g})", out.empty() ? "" : ", ", input_words(summary.inputs[order[i]]),
                       *weight_of(d, order[i]));
  if (out.empty()) return "";
  const char* measure = d.indices ? "total index" : d.effects ? "mean effect" : "rank correlation";
  return fmt::format("{}; {}, of {}", out, measure, figure_words(d.name));
}

}  // namespace

std::string number_words(double value) {
  return std::isfinite(value) ? fmt::format("{:.3g}", value) : "none";
}

std::string figure_words(const std::string& name) {
  constexpr std::pair<const char*, const char*> whose[] = {
      {"first ", "first person"}, {"half ", "half of the crew"}, {"last ", "last person"}};
  for (const char* what : {"able until", "alive until"})
    for (const auto& [before, who] : whose)
      if (const std::string whole = std::string(before) + what; name.starts_with(whole)) {
        std::string rest = name.substr(whole.size());
        if (rest.starts_with(", ")) rest = " (" + rest.substr(2) + ")";
        return fmt::format("{}, {}{}", what, who, rest);
      }
  return name;
}

std::string value_words(const Spread& spread, const std::optional<double>& value, double horizon_h) {
  if (!value) return spread.is_time ? "after " + horizon(horizon_h * hour_s) : "none";
  if (spread.is_time) return duration(*value * hour_s);
  return number_words(*value);
}

std::string spread_words(const Spread& spread, double horizon_h) {
  if (spread.quantiles.empty()) return "no run has it";
  const auto words = [&](std::size_t place) {
    return value_words(spread, spread.quantiles[place].value, horizon_h);
  };
  if (!spread.quantiles.front().value)
    return fmt::format("{} in more than 95 of 100 runs", not_reached(horizon_h * hour_s));
  std::string out = fmt::format("9 in 10 runs between {} and {}", words(share05), words(share95));
  if (spread.quantiles[share25].value)
    out += fmt::format("; half between {} and {}", words(share25), words(share75));
  const Spread::Quantile& middle = spread.quantiles[share50];
  if (!middle.value) return out;
  const auto end = [&](const std::optional<double>& value, bool known) {
    return known ? value_words(spread, value, horizon_h) : "unknown";
  };
  return out + fmt::format("; median {} ({} to {})", words(share50), end(middle.low, middle.low_known),
                           end(middle.high, middle.high_known));
}

std::optional<double> weight_of(const Dependence& d, std::size_t input) {
  if (d.indices) return d.indices->groups[input].total.value;
  if (d.effects) return d.effects->factors[input].mean_absolute;
  if (input >= d.correlations.size() || !d.correlations[input]) return std::nullopt;
  return std::abs(d.correlations[input]->value);
}

std::vector<std::pair<const char*, std::string>> estimators(scenario::DesignKind kind) {
  using enum scenario::DesignKind;
  switch (kind) {
    case grid:
      return {{"means", "mean over all combinations of the other inputs"}};
    case saltelli:
      return {{"first", "Saltelli et al. (2010), of outputs less their mean"},
              {"total", "Jansen (1999)"},
              {"intervals",
               fmt::format("percentiles of a bootstrap over base samples (Efron 1979), {} replicates",
                           study::index_replicates)}};
    case morris:
      return {{"mu_star", "Campolongo, Cariboni & Saltelli (2007)"},
              {"mu", "Morris (1991)"},
              {"sigma", "Morris (1991)"}};
    case random:
    case latin_hypercube:
    case sobol:
    case points:
      return {{"rank_correlation", "Spearman (1904)"}, {"intervals", "Bonett & Wright (2000)"}};
  }
  return {};
}

Answer study_answer(const study::Study& study, const study::Summary& summary) {
  constexpr std::size_t most_figures = 3;
  Answer out;
  const std::vector<Spread>& spreads = summary.spreads;
  for (std::size_t i = 0; i < std::min(most_figures, spreads.size()); ++i) {
    const std::string unit = spreads[i].is_time || spreads[i].unit.empty() ? "" : ", " + spreads[i].unit;
    out.push_back({i == 0 ? "Spread" : "", fmt::format("{}{}: {}", figure_words(spreads[i].name), unit,
                                                       spread_words(spreads[i], summary.horizon_h))});
  }
  if (!summary.dependences.empty())
    if (std::string most = most_decisive(summary, summary.dependences.front()); !most.empty())
      out.push_back({"Decides", std::move(most)});
  out.push_back(
      {"What ran", fmt::format("{}; {} failed and are left out", design_words(study), summary.failed)});
  out.push_back({"Not in it", not_in_the_model(study.scenario(), Told::futures)});
  return out;
}

}  // namespace bide::report
