#include "bide/report/study/study_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numeric>
#include <utility>

#include "bide/core/notice.hpp"
#include "bide/core/printable.hpp"
#include "bide/core/units.hpp"
#include "bide/report/study/study_words.hpp"
#include "bide/report/words/input.hpp"
#include "bide/report/words/made_by.hpp"
#include "bide/report/words/page.hpp"
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

constexpr int page_width = 100;

void paragraph(Out to, std::string_view text) {
  for (const std::string& line : wrap(text, page_width)) fmt::format_to(to, "{}\n", line);
}

std::string share(double value) {
  return fmt::format("{:.0f} %", 100 * value);
}

void print_spread(Out to, const Spread& spread, double horizon_h) {
  const std::string unit = spread.is_time || spread.unit.empty() ? "" : ", " + spread.unit;
  fmt::format_to(to, "  {}{}: {}\n", figure_words(spread.name), unit, spread_words(spread, horizon_h));
  if (spread.quantiles.empty()) return;
  fmt::format_to(to, "      ");
  for (const Spread::Later& later : spread.later)
    fmt::format_to(to, "after {}: {} ({} to {}); ", horizon(later.than_h * hour_s),
                   share(static_cast<double>(later.cases) / static_cast<double>(spread.cases)),
                   share(later.share.low), share(later.share.high));
  fmt::format_to(to, "mean{} {}\n",
                 spread.is_time ? fmt::format(", counting {} at most,", horizon(horizon_h * hour_s)) : "",
                 spread.is_time ? duration(spread.mean * hour_s) : number_words(spread.mean));
  if (spread.not_there > 0)
    fmt::format_to(to, "      {} of {} runs have no such figure\n", spread.not_there,
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
  fmt::format_to(to, "\n{} (mean {} {})\n", figure_words(d.name), number_words(d.mean), d.unit);
  if (d.indices) {
    fmt::format_to(to, "  {:<48}{:<24}{}\n", "input", "first index", "total index");
    const auto& all = d.indices->groups;
    for (const std::size_t i : sorted_by(all.size(), [&](std::size_t g) { return all[g].total.value; }))
      fmt::format_to(to, "  {:<48}{:<24}{}\n", input_words(summary.inputs[i]),
                     with_interval(all[i].first.value, all[i].first.interval),
                     with_interval(all[i].total.value, all[i].total.interval));
    if (d.indices->left_out > 0)
      fmt::format_to(to, "  {} base samples left out: a row of theirs has no such figure\n",
                     d.indices->left_out);
  } else if (d.effects) {
    fmt::format_to(to, "  {:<48}{:>12}{:>12}{:>12}\n", "input", "mean size", "mean", "spread");
    const auto& all = d.effects->factors;
    for (const std::size_t i : sorted_by(all.size(), [&](std::size_t j) { return all[j].mean_absolute; }))
      fmt::format_to(to, "  {:<48}{:>12}{:>12}{:>12}\n", input_words(summary.inputs[i]),
                     number_words(all[i].mean_absolute), number_words(all[i].mean),
                     number_words(all[i].sigma));
    if (d.effects->left_out > 0)
      fmt::format_to(to, "  {} trajectories left out: a row of theirs has no such figure\n",
                     d.effects->left_out);
  } else if (!d.level_means.empty()) {
    for (std::size_t i = 0; i < d.level_means.size(); ++i) {
      fmt::format_to(to, "  {}:", input_words(summary.inputs[i]));
      for (const auto& [value, mean] : d.level_means[i])
        fmt::format_to(to, "  {} -> {}", value, number_words(mean));
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
        fmt::format_to(to, "  {:<48}{}\n", input_words(summary.inputs[i]),
                       with_interval(all[i]->value, all[i]->interval));
  } else {
    fmt::format_to(to, "  {}\n", no_dependence(d));
  }
}

std::string what_indices_mean(DesignKind kind) {
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
      return "Mean size (mu*) of the effect of one step of an input, per whole of its distribution; mean "
             "(mu): "
             "the same with its sign; spread (sigma): how much it depends on the other inputs or bends. A "
             "screening: its runs are not a sample of what may happen.";
    case DesignKind::random:
    case DesignKind::latin_hypercube:
    case DesignKind::sobol:
      return "Spearman's rank correlation, with its 95 % interval as if samples had been drawn "
             "independently: the "
             "direction and steadiness of an influence. One near 0 does not mean that there is none. Words "
             "count in "
             "the order in which they are listed.";
    case DesignKind::points:
      return "Spearman's rank correlation over the points of the file, with its 95 % interval as if they had "
             "been drawn independently. Nothing is known of how they were chosen, so they are not taken for "
             "a "
             "sample of what may happen.";
  }
  return {};
}

}  // namespace

std::string how_to_read(DesignKind kind) {
  std::string out = what_indices_mean(kind) + " Estimators:";
  const char* between = " ";
  for (const auto& [what, how] : estimators(kind)) {
    std::string name = what;
    std::replace(name.begin(), name.end(), '_', ' ');
    out += fmt::format("{}{}, {}", std::exchange(between, "; "), name, how);
  }
  return out + ".";
}

std::string design_words(const study::Study& study) {
  const scenario::Design& design = study.file().design;
  const std::size_t inputs = study.plan().groups().size();
  std::string out =
      fmt::format("{} runs of the design {}, {} {}", study.plan().size(), scenario::word(design.kind), inputs,
                  inputs == 1 ? "input" : "inputs or groups");
  if (const auto file = study.points_file())
    return out +
           fmt::format(" of {}, scale {}", file->filename().string(), scenario::word(study.plan().scale()));
  out += fmt::format(", seed {}", design.seed);
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
  Page head(page_width, Letters::utf8);
  head.paragraph(head.outside(study.file().name));
  head.line();
  head.answer(study_answer(study, summary));
  text = head.text();
  fmt::format_to(to, "\n");
  paragraph(to, plain(study.file().setting, Letters::utf8, 1000));
  fmt::format_to(to, "Scenario: {}\n", plain(study.scenario().scenario.name));
  for (const auto& [index, reason] : summary.first_failures)
    fmt::format_to(to, "  sample {}: {}\n", index, plain(reason));
  if (!summary.spreads.empty()) {
    fmt::format_to(to, "\nWHAT MAY HAPPEN ({} runs)\n", summary.futures);
    paragraph(
        to,
        "Brackets are 95 % intervals of independent draws. A time after the hours followed is not known; it "
        "counts as later than all others.");
    for (const Spread& spread : summary.spreads) print_spread(to, spread, summary.horizon_h);
  }
  fmt::format_to(to, "\nWHAT IT DEPENDS ON\n");
  paragraph(to, how_to_read(study.file().design.kind));
  for (const Dependence& each : summary.dependences) print_dependence(to, summary, each);
  fmt::format_to(to, "\n");
  paragraph(to, standing_notice);
  paragraph(to, standing_advice);
  paragraph(to, made_by_line());
  return printable_lines(text);  // it is kept in a file that people show on a terminal
}

}  // namespace bide::report
