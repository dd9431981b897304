#include <fmt/format.h>

#include <algorithm>

#include "bide/core/notice.hpp"
#include "bide/report/compare/compare.hpp"
#include "bide/report/compare/compare_cells.hpp"
#include "bide/report/compare/compare_futures.hpp"
#include "bide/report/levers/levers_words.hpp"
#include "bide/report/run/answer_lines.hpp"
#include "bide/report/run/first_hour.hpp"
#include "bide/report/run/sentences.hpp"
#include "bide/report/words/input.hpp"
#include "bide/report/words/page.hpp"
#include "bide/report/words/units.hpp"
#include "bide/report/words/words.hpp"
#include "bide/scenario/differences.hpp"

namespace bide::report {
namespace {

std::vector<const scenario::ValidScenario*> scenarios_of(const Comparison& comparison) {
  std::vector<const scenario::ValidScenario*> out;
  for (const Option& option : comparison.options) out.push_back(option.own.scenario);
  return out;
}

void print_differences(Page& page, const std::vector<scenario::Difference>& differences) {
  if (differences.empty()) page.line("  none");
  for (const scenario::Difference& difference : differences) {
    std::string text = page.outside(input_words(difference.pointer)) +
                       (difference.unit.empty() ? "" : " (" + unit_signs(difference.unit) + ")") + ": ";
    for (std::size_t i = 0; i < difference.values.size(); ++i)
      text +=
          fmt::format("{}{}: {}{}", i == 0 ? "" : "; ", i + 1, page.outside(difference.values[i].value, 60),
                      difference.values[i].filled_in ? " (default)" : "");
    page.paragraph(text, "  ", "      ");
  }
}

// A column for each option, three abreast; cells are broken within their column.
void print_table(Page& page, const std::vector<ComparedFigures>& shown, Rows rows_of) {
  constexpr std::size_t abreast = 3;
  for (std::size_t from = 0; from < shown.size(); from += abreast) {
    const std::size_t to = std::min(from + abreast, shown.size());
    const document::Table table = figures_table(
        "",
        {shown.begin() + static_cast<std::ptrdiff_t>(from), shown.begin() + static_cast<std::ptrdiff_t>(to)},
        rows_of);
    int names = 0;
    for (const std::vector<std::string>& row : table.rows) names = std::max(names, columns(row.front()) + 2);
    const int width = std::max(10, (page.width() - names) / static_cast<int>(to - from));
    std::vector<std::vector<std::string>> rows{{}};
    for (const document::Column& column : table.columns) rows.front().push_back(column.name);
    rows.insert(rows.end(), table.rows.begin(), table.rows.end());
    for (const std::vector<std::string>& row : rows) {
      std::vector<std::vector<std::string>> cells;
      std::size_t lines = 0;
      for (std::size_t i = 0; i < row.size(); ++i) {
        const std::string cell = i == 0 ? row[i] : page.outside(row[i]);
        cells.push_back(i == 0 ? std::vector{cell} : wrap(cell, width - 2));
        lines = std::max(lines, cells.back().size());
      }
      for (std::size_t line = 0; line < lines; ++line) {
        std::string text;
        for (std::size_t i = 0; i < cells.size(); ++i) {
          const int begins = i == 0 ? 0 : names + static_cast<int>(i - 1) * width;
          text.append(static_cast<std::size_t>(std::max(0, begins - columns(text))), ' ');
          if (line < cells[i].size()) text += cells[i][line];
        }
        page.line(text);
      }
    }
    page.line();
  }
}

void print_equal(Page& page, const Comparison& comparison) {
  if (comparison.same_stores) {
    page.heading("STORES");
    page.line("  All options carry the same; there is no second table.");
    return;
  }
  page.heading("WITH EQUAL STORES: those of option 1 in every option, the central case alone");
  std::vector<ComparedFigures> rows{{"option 1", &comparison.options.front().own.figures, nullptr}};
  for (std::size_t i = 1; i < comparison.options.size(); ++i) {
    const Option& option = comparison.options[i];
    if (option.equal)
      rows.push_back({fmt::format("option {}", i + 1), &option.equal->figures, nullptr});
    else
      page.paragraph(
          fmt::format("option {} cannot carry them: {}", i + 1, page.outside(option.equal_refused)), "  ",
          "      ");
  }
  print_table(page, rows, Rows::all);
}

void print_inputs(Page& page, const Comparison& comparison) {
  page.heading("INPUTS THAT DIFFER");
  print_differences(page, scenario::differences(scenarios_of(comparison)));
  const auto aboard = scenario::differences_aboard(scenarios_of(comparison));
  if (aboard.empty()) return;
  page.heading("STORES ABOARD THAT DIFFER");
  print_differences(page, aboard);
}

void print_cautions(Page& page, const Comparison& comparison) {
  bool cautioned = false;
  for (std::size_t i = 0; i < comparison.options.size(); ++i)
    for (const scenario::Diagnostic& caution : comparison.options[i].own.scenario->cautions) {
      if (!cautioned) page.heading("CAUTIONS");
      cautioned = true;
      page.item(fmt::format("option {}: {}: {}", i + 1, page.outside(input_words(caution.pointer)),
                            page.outside(caution.message)));
    }
}

void print_futures(Page& page, const Comparison& comparison) {
  page.heading("UNDER COMMON FUTURES");
  if (!comparison.no_futures.empty()) page.paragraph(comparison.no_futures, "  ", "  ");
  for (std::size_t i = 1; i < comparison.options.size(); ++i)
    if (comparison.options[i].futures)
      for (const std::string& sentence :
           futures_sentences(*comparison.options[i].futures, "option 1", fmt::format("option {}", i + 1)))
        page.item(sentence);
}

// What buys most in each option that it was tried on.
std::string buys_words(const Comparison& comparison) {
  std::string out;
  for (std::size_t i = 0; i < comparison.options.size(); ++i)
    if (const auto& levers = comparison.options[i].levers)
      out += fmt::format("{}in option {}: {}", out.empty() ? "" : "; ", i + 1, most_bought_words(*levers, 1));
  return out.empty() ? buys_line(std::nullopt, *comparison.options.front().own.scenario) : out;
}

}  // namespace

Answer comparison_answer(const Comparison& comparison) {
  const Compared& first = comparison.options.front().own;
  std::string futures;
  for (std::size_t i = 1; i < comparison.options.size(); ++i)
    if (const auto& drawn = comparison.options[i].futures)
      futures += (futures.empty() ? "" : " ") +
                 futures_sentences(*drawn, "option 1", fmt::format("option {}", i + 1)).front();
  return {{"Odds", futures.empty() ? comparison.no_futures : futures},
          {"Buys most", buys_words(comparison)},
          {"First hour", first_hour_line(*first.scenario)},
          {"How sure", how_sure(first.figures) + "; " + runs_of_each(comparison)},
          {"Not in it", not_in_the_model}};
}

std::string comparison_text(const Comparison& comparison, Letters letters, int width, bool full) {
  Page page(width, letters);
  const std::vector<Conclusion> found = conclusions(comparison);
  for (const Conclusion& each : found)
    for (const std::string& sentence : each.brief) page.paragraph(page.outside(sentence, 1000));
  for (std::size_t i = 0; i < comparison.options.size(); ++i)
    page.paragraph(page.outside(option_title(comparison.options[i])), fmt::format("  option {}  ", i + 1),
                   "            ");
  page.line();
  std::vector<ComparedFigures> own;
  for (std::size_t i = 0; i < comparison.options.size(); ++i)
    own.push_back(
        {fmt::format("option {}", i + 1), &comparison.options[i].own.figures, &comparison.options[i]});
  print_table(page, own, full ? Rows::all : Rows::asked_first);
  page.answer(comparison_answer(comparison));
  if (full) {
    page.heading("WHAT SETS THEM APART");
    for (const Conclusion& each : found)
      for (const auto* list : {&each.verdict, &each.warmth, &each.others})
        for (std::size_t i = list == &each.verdict ? 1 : 0; i < list->size(); ++i)
          page.item(page.outside((*list)[i], 1000));
    print_inputs(page, comparison);
    print_equal(page, comparison);
    print_futures(page, comparison);
    print_cautions(page, comparison);
  } else {
    page.paragraph("Why, inputs that differ, equal stores, all figures, cautions: --full.");
  }
  page.line();
  page.paragraph(standing_notice);
  page.paragraph(standing_advice);
  return page.text();
}

}  // namespace bide::report
