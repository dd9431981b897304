#include "bide/report/study/study_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numeric>

#include "bide/core/notice.hpp"
#include "bide/core/printable.hpp"
#include "bide/core/units.hpp"
#include "bide/report/words/text.hpp"
#include "bide/report/words/words.hpp"
#include "bide/scenario/words.hpp"

namespace bide::report {
namespace {

using scenario::DesignKind;
using study::Dependence;
using study::Spread;
using study::Summary;
using Out = std::back_insert_iterator<std::string>;

constexpr int width = 100;

void paragraph(Out to, std::string_view text) {
  for (const std::string& line : wrap(text, width)) fmt::format_to(to, "{}\n", line);
}

std::string number(double value) {
  return std::isfinite(value) ? fmt::format("{:.3g}", value) : "none";
}

std::string share(double value) {
  return fmt::format("{:.0f} %", 100 * value);
}

// "14 h", or "later than 72 h"
std::string value_words(const Spread& spread, const std::optional<double>& value, bool known,
                        double horizon_h) {
  if (!known) return "?";
  if (!value) return fmt::format("later than {:g} h", horizon_h);
  return spread.is_time ? duration(*value * hour_s) : number(*value);
}

void print_spread(Out to, const Spread& spread, double horizon_h) {
  const std::string unit = spread.is_time || spread.unit.empty() ? "" : ", " + spread.unit;
  if (spread.quantiles.empty()) {
    fmt::format_to(to, "  {}{}: no sample has it\n", spread.name, unit);
    return;
  }
  const auto words = [&](std::size_t i) {
    return value_words(spread, spread.quantiles[i].value, true, horizon_h);
  };
  fmt::format_to(to, "  {}{}: ", spread.name, unit);
  if (!spread.quantiles.front().value) {
    fmt::format_to(to, "not within {:g} h in more than 95 of 100\n      ", horizon_h);
  } else {
    const Spread::Quantile& middle = spread.quantiles[2];
    fmt::format_to(to, "9 in 10 between {} and {}", words(0), words(4));
    if (spread.quantiles[1].value) fmt::format_to(to, "; half between {} and {}", words(1), words(3));
    if (middle.value)
      fmt::format_to(to, "; middle {} (95 % interval {} to {})", words(2),
                     value_words(spread, middle.low, middle.low_known, horizon_h),
                     value_words(spread, middle.high, middle.high_known, horizon_h));
    fmt::format_to(to, "\n      ");
  }
  for (const Spread::Later& later : spread.later)
    fmt::format_to(to, "later than {:g} h: {} ({} to {}); ", later.than_h,
                   share(static_cast<double>(later.cases) / static_cast<double>(spread.cases)),
                   share(later.share.low), share(later.share.high));
  fmt::format_to(to, "mean{} {}\n",
                 spread.is_time ? fmt::format(", with {:g} h at most counted,", horizon_h) : "",
                 spread.is_time ? duration(spread.mean * hour_s) : number(spread.mean));
  if (spread.not_there > 0)
    fmt::format_to(to, "      {} of {} samples have no such figure\n", spread.not_there,
                   spread.not_there + spread.cases);
}

std::vector<std::size_t> sorted_by(std::size_t count, const std::function<double(std::size_t)>& weight) {
  std::vector<std::size_t> order(count);
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return weight(a) > weight(b); });
  return order;
}

std::string with_interval(double value, const study::Interval& interval) {
  return fmt::format("{:.2f} ({:.2f} to {:.2f})", value, interval.low, interval.high);
}

void print_dependence(Out to, const Summary& summary, const Dependence& d) {
  fmt::format_to(to, "\n{} (mean {} {})\n", d.name, number(d.mean), d.unit);
  if (d.indices) {
    fmt::format_to(to, "  {:<48}{:<24}{}\n", "input", "first index", "total index");
    const auto& all = d.indices->groups;
    for (const std::size_t i : sorted_by(all.size(), [&](std::size_t g) { return all[g].total.value; }))
      fmt::format_to(to, "  {:<48}{:<24}{}\n", summary.inputs[i],
                     with_interval(all[i].first.value, all[i].first.interval),
                     with_interval(all[i].total.value, all[i].total.interval));
    if (d.indices->left_out > 0)
      fmt::format_to(to, "  {} base samples left out: a row of theirs has no such figure\n",
                     d.indices->left_out);
  } else if (d.effects) {
    fmt::format_to(to, "  {:<48}{:>12}{:>12}{:>12}\n", "input", "mu*", "mu", "sigma");
    const auto& all = d.effects->factors;
    for (const std::size_t i : sorted_by(all.size(), [&](std::size_t j) { return all[j].mean_absolute; }))
      fmt::format_to(to, "  {:<48}{:>12}{:>12}{:>12}\n", summary.inputs[i], number(all[i].mean_absolute),
                     number(all[i].mean), number(all[i].sigma));
    if (d.effects->left_out > 0)
      fmt::format_to(to, "  {} trajectories left out: a row of theirs has no such figure\n",
                     d.effects->left_out);
  } else if (!d.level_means.empty()) {
    for (std::size_t i = 0; i < d.level_means.size(); ++i) {
      fmt::format_to(to, "  {}:", summary.inputs[i]);
      for (const auto& [value, mean] : d.level_means[i])
        fmt::format_to(to, "  {} -> {}", value, number(mean));
      fmt::format_to(to, "\n");
    }
  } else if (!d.correlations.empty()) {
    const auto& all = d.correlations;
    const auto weight = [&](std::size_t i) { return all[i] ? std::abs(all[i]->value) : -1; };
    if (std::none_of(all.begin(), all.end(), [](const auto& each) { return each.has_value(); }))
      fmt::format_to(to, "  {}\n", no_dependence(d));
    else
      fmt::format_to(to, "  {:<48}{}\n", "input", "rank correlation");
    for (const std::size_t i : sorted_by(all.size(), weight))
      if (all[i])
        fmt::format_to(to, "  {:<48}{}\n", summary.inputs[i], with_interval(all[i]->value, all[i]->interval));
  } else {
    fmt::format_to(to, "  {}\n", no_dependence(d));
  }
}

}  // namespace

std::string how_to_read(DesignKind kind) {
  switch (kind) {
    case DesignKind::grid:
      return "For each value of an input, the mean over all combinations of the others. The combinations are "
             "not a "
             "sample of what may happen.";
    case DesignKind::saltelli:
      return "First index: the share of the variance that would go if the input became known. Total index: "
             "the "
             "share that would stay if all others did. In brackets the 95 % interval of a bootstrap over "
             "base "
             "samples; a first index slightly below 0 is scatter.";
    case DesignKind::morris:
      return "mu*: mean size of the effect of one step of an input, per whole of its distribution; mu: the "
             "same with "
             "its sign; sigma: how much it depends on the other inputs or bends. A screening: its runs are "
             "not a "
             "sample of what may happen.";
    case DesignKind::random:
    case DesignKind::latin_hypercube:
    case DesignKind::sobol:
      return "Spearman's rank correlation, with its 95 % interval as if samples had been drawn "
             "independently: the "
             "direction and steadiness of an influence. One near 0 does not mean that there is none. Words "
             "count in "
             "the order in which they are listed.";
  }
  return {};
}

std::string design_words(const study::Study& study) {
  const scenario::Design& design = study.file().design;
  const std::size_t inputs = study.plan().groups().size();
  std::string out = fmt::format("{} runs of the design {}, {} {}, seed {}", study.plan().size(),
                                scenario::word(design.kind), inputs,
                                inputs == 1 ? "input" : "inputs or groups", design.seed);
  if (design.kind == DesignKind::saltelli) out += fmt::format("; {} base samples", *design.samples);
  if (design.kind == DesignKind::morris) out += fmt::format("; {} trajectories", *design.samples);
  return out;
}

std::string no_dependence(const Dependence& d) {
  if (d.differing == 0) return "does not vary";
  return fmt::format("differs from its commonest value in {} of {} runs: too few to say what decides it",
                     d.differing, d.cases);
}

std::string study_text(const study::Study& study, const Summary& summary) {
  std::string text;
  const Out to(text);
  paragraph(to, plain(study.file().name));
  paragraph(to, plain(study.file().setting));
  paragraph(to, standing_notice);
  paragraph(to, standing_advice);
  fmt::format_to(to, "\nScenario: {}\n", plain(study.scenario().scenario.name));
  fmt::format_to(to, "{}\n", design_words(study));
  fmt::format_to(to, "{} of {} samples failed and are left out\n", summary.failed, summary.samples);
  for (const auto& [index, reason] : summary.first_failures)
    fmt::format_to(to, "  sample {}: {}\n", index, plain(reason));
  if (!summary.spreads.empty()) {
    fmt::format_to(to, "\nWHAT MAY HAPPEN ({} samples)\n", summary.futures);
    paragraph(
        to,
        "Intervals are those of independent draws. A time beyond the hours simulated is not known; it counts "
        "as later than all others.");
    for (const Spread& spread : summary.spreads) print_spread(to, spread, summary.horizon_h);
  }
  fmt::format_to(to, "\nWHAT IT DEPENDS ON\n");
  paragraph(to, how_to_read(study.file().design.kind));
  for (const Dependence& each : summary.dependences) print_dependence(to, summary, each);
  return printable_lines(text);  // it is kept in a file that people show on a terminal
}

}  // namespace bide::report
