#include "bide/report/study/study_page.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "bide/core/units.hpp"
#include "bide/report/document/values.hpp"
#include "bide/report/study/study_text.hpp"
#include "bide/report/study/study_words.hpp"
#include "bide/report/words/input.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report::pages {
namespace {

using document::Kind;
using document::Point;
using study::Dependence;
using study::Summary;

constexpr std::size_t most_inputs = 16;

using document::with_unit;

document::Section spreads_section(const Summary& summary) {
  document::Section out{"What may happen", {}};
  out.blocks.push_back(document::Paragraph{
      fmt::format("{} runs drawn from what may happen. A time after {} is not known; it counts "
                  "as later than all others.",
                  summary.futures, horizon(summary.horizon_h * hour_s))});
  document::Table table{"Share of runs below",
                        {{"figure", false},
                         {"5 %", true},
                         {"25 %", true},
                         {"50 %", true},
                         {"75 %", true},
                         {"95 %", true},
                         {"mean", true}},
                        {}};
  for (const study::Spread& spread : summary.spreads) {
    std::vector<std::string> row{with_unit(figure_words(spread.name), spread.unit)};
    if (spread.quantiles.empty()) {
      row.resize(table.columns.size(), "no run has it");
    } else {
      for (const study::Spread::Quantile& q : spread.quantiles)
        row.push_back(value_words(spread, q.value, summary.horizon_h));
      row.push_back(spread.is_time ? duration(spread.mean * hour_s) + ", as far as followed"
                                   : number_words(spread.mean));
    }
    table.rows.push_back(std::move(row));
  }
  out.blocks.push_back(std::move(table));
  document::List more;
  for (const study::Spread& spread : summary.spreads) {
    for (const study::Spread::Later& later : spread.later)
      more.items.push_back(
          fmt::format("{} after {}: {:.0f} % ({:.0f} % to {:.0f} %) of runs.", figure_words(spread.name),
                      horizon(later.than_h * hour_s),
                      pct * static_cast<double>(later.cases) / static_cast<double>(spread.cases),
                      pct * later.share.low, pct * later.share.high));
    if (spread.not_there > 0)
      more.items.push_back(fmt::format("{}: {} of {} runs have no such figure.", figure_words(spread.name),
                                       spread.not_there, spread.not_there + spread.cases));
  }
  if (!more.items.empty()) out.blocks.push_back(std::move(more));
  return out;
}

// The inputs that matter most, largest first.
std::vector<std::size_t> by_weight(std::size_t count, const std::vector<double>& weight) {
  std::vector<std::size_t> order(count);
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return weight[a] > weight[b]; });
  if (order.size() > most_inputs) order.resize(most_inputs);
  return order;
}

// What the chart does not hold.
std::string left_out_words(const Dependence& d, std::size_t inputs) {
  std::string out;
  if (inputs > most_inputs)
    out += fmt::format(" The {} largest of {} inputs; all are in the JSON.", most_inputs, inputs);
  if (d.indices && d.indices->left_out > 0)
    out += fmt::format(" {} base samples left out: a row of theirs has no such figure.", d.indices->left_out);
  if (d.effects && d.effects->left_out > 0)
    out += fmt::format(" {} trajectories left out: a row of theirs has no such figure.", d.effects->left_out);
  return out;
}

document::Chart chart_of(const Dependence& d, std::size_t inputs, const char* what, const char* sentence,
                         const char* unit) {
  document::Chart out;
  out.title = with_unit(figure_words(d.name), d.unit);
  out.sentence = fmt::format("{} Mean of the figure: {} {}.{}", sentence, number_words(d.mean), d.unit,
                             left_out_words(d, inputs));
  out.x = {"input"};
  out.y = {what, unit, true};
  return out;
}

document::Chart indices_chart(const Summary& summary, const Dependence& d) {
  const auto& all = d.indices->groups;
  std::vector<double> weight;
  for (const auto& each : all) weight.push_back(each.total.value);
  document::Chart out =
      chart_of(d, all.size(), "index",
               "Share of the variance that each input decides: alone (first), and with all that it "
               "does together with others (total); whiskers are 95 % intervals.",
               "");
  document::Series total{"total index", Kind::bars, {}, 0}, first{"first index", Kind::points, {}, 1};
  for (const std::size_t i : by_weight(all.size(), weight)) {
    const double row = static_cast<double>(out.categories.size());
    out.categories.push_back(input_words(summary.inputs[i]));
    total.points.push_back(
        {row, all[i].total.value, all[i].total.interval.low, all[i].total.interval.high, ""});
    first.points.push_back(
        {row, all[i].first.value, all[i].first.interval.low, all[i].first.interval.high, ""});
  }
  out.series = {total, first};
  return out;
}

document::Chart effects_chart(const Summary& summary, const Dependence& d) {
  const auto& all = d.effects->factors;
  std::vector<double> weight;
  for (const auto& each : all) weight.push_back(each.mean_absolute);
  document::Chart out =
      chart_of(d, all.size(), "effect",
               "Mean size of the effect of each input (mu*), and how much the effect differs from "
               "place to place (sigma).",
               d.unit.c_str());
  document::Series size{"mean size", Kind::bars, {}, 0}, sigma{"spread", Kind::points, {}, 1};
  for (const std::size_t i : by_weight(all.size(), weight)) {
    const double row = static_cast<double>(out.categories.size());
    out.categories.push_back(input_words(summary.inputs[i]));
    size.points.push_back({row, all[i].mean_absolute});
    sigma.points.push_back({row, all[i].sigma});
  }
  out.series = {size, sigma};
  return out;
}

document::Chart correlations_chart(const Summary& summary, const Dependence& d) {
  std::vector<double> weight;
  for (const auto& each : d.correlations) weight.push_back(each ? std::abs(each->value) : -1);
  document::Chart out =
      chart_of(d, d.correlations.size(), "rank correlation",
               "Rank correlation of each input with the figure; whiskers are 95 % intervals.", "");
  document::Series dots{"rank correlation", Kind::points, {}, 0};
  for (const std::size_t i : by_weight(d.correlations.size(), weight)) {
    if (!d.correlations[i]) continue;
    const auto& each = *d.correlations[i];
    dots.points.push_back(
        {static_cast<double>(out.categories.size()), each.value, each.interval.low, each.interval.high, ""});
    out.categories.push_back(input_words(summary.inputs[i]));
  }
  out.series = {dots};
  return out;
}

document::Table levels_table(const Summary& summary, const Dependence& d) {
  document::Table out{
      with_unit(figure_words(d.name), d.unit), {{"input", false}, {"value", false}, {"mean", true}}, {}};
  for (std::size_t i = 0; i < d.level_means.size(); ++i)
    for (const auto& [value, mean] : d.level_means[i])
      out.rows.push_back({input_words(summary.inputs[i]), value, number_words(mean)});
  return out;
}

document::Block dependence(const Summary& summary, const Dependence& d) {
  if (d.indices) return indices_chart(summary, d);
  if (d.effects) return effects_chart(summary, d);
  if (!d.level_means.empty()) return levels_table(summary, d);
  const bool some = std::any_of(d.correlations.begin(), d.correlations.end(),
                                [](const auto& each) { return each.has_value(); });
  if (some) return correlations_chart(summary, d);
  return document::Paragraph{with_unit(figure_words(d.name), d.unit) + ": " + no_dependence(d) + "."};
}

// The appendix: what each input is called in the file.
document::Table names_in_the_file(const Summary& summary) {
  document::Table out{"Inputs as the file names them", {{"input", false}, {"in the file", false}}, {}, true};
  for (const std::string& each : summary.inputs) out.rows.push_back({input_words(each), each});
  return out;
}

document::Section runs_section(const study::Study& study, const Summary& summary) {
  document::List list;
  list.items.push_back("Scenario: " + study.scenario().scenario.name + ".");
  list.items.push_back(design_words(study) + ".");
  list.items.push_back(
      fmt::format("{} of {} runs failed and are left out.", summary.failed, summary.samples));
  for (const auto& [index, reason] : summary.first_failures)
    list.items.push_back(fmt::format("Sample {}: {}", index, reason));
  return {"What was run", {std::move(list), names_in_the_file(summary)}};
}

// The first screen: spread, what decides most, and its picture.
document::Section answer_section(const study::Study& study, const Summary& summary) {
  document::Section out{"The answer", {document::Facts{study_answer(study, summary)}}, false, true};
  if (!summary.dependences.empty()) out.blocks.push_back(dependence(summary, summary.dependences.front()));
  return out;
}

}  // namespace

document::Page study_page(const study::Study& study, const Summary& summary) {
  document::Page page;
  page.title = study.file().name;
  page.lead = study.file().setting;
  page.foot = fmt::format("{}, {}", study.file().name, design_words(study));
  page.sections.push_back(answer_section(study, summary));
  if (!summary.spreads.empty()) page.sections.push_back(spreads_section(summary));
  document::Section depends{"What it depends on",
                            {document::Paragraph{how_to_read(study.file().design.kind)}}};
  for (std::size_t i = 1; i < summary.dependences.size(); ++i)
    depends.blocks.push_back(dependence(summary, summary.dependences[i]));
  page.sections.push_back(std::move(depends));
  page.sections.push_back(runs_section(study, summary));
  return page;
}

}  // namespace bide::report::pages
