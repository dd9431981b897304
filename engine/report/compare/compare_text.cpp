#include <fmt/format.h>

#include "bide/core/notice.hpp"
#include "bide/report/compare/compare.hpp"
#include "bide/report/compare/compare_cells.hpp"
#include "bide/report/compare/compare_futures.hpp"
#include "bide/report/words/page.hpp"
#include "bide/report/words/words.hpp"
#include "bide/scenario/differences.hpp"

namespace bide::report {
namespace {

using outcome::Figures;

std::vector<const scenario::ValidScenario*> scenarios_of(const Comparison& comparison) {
  std::vector<const scenario::ValidScenario*> out;
  for (const Option& option : comparison.options) out.push_back(option.own.scenario);
  return out;
}

void print_differences(Page& page, const std::vector<scenario::Difference>& differences) {
  if (differences.empty()) page.line("  none");
  for (const scenario::Difference& difference : differences) {
    std::string text = page.outside(difference.pointer) +
                       (difference.unit.empty() ? "" : " (" + difference.unit + ")") + ": ";
    for (std::size_t i = 0; i < difference.values.size(); ++i)
      text +=
          fmt::format("{}{}: {}{}", i == 0 ? "" : "; ", i + 1, page.outside(difference.values[i].value, 60),
                      difference.values[i].filled_in ? " (default)" : "");
    page.paragraph(text, "  ", "      ");
  }
}

struct Row {
  std::size_t number;
  const Figures* figures;
};

void print_times(Page& page, const char* title, const std::vector<Row>& rows,
                 const outcome::CrewTimes Figures::*times, bool causes) {
  page.line();
  page.line(fmt::format("  {:<13} {:>12} {:>12} {:>12}{}", title, "first", "half", "last",
                        causes ? "   ended by" : ""));
  for (const Row& row : rows) {
    const outcome::CrewTimes& t = row.figures->*times;
    const double h = row.figures->horizon_s;
    page.line(fmt::format("  option {:<6} {:>12} {:>12} {:>12}{}", row.number, cell(t.first_s, h),
                          cell(t.half_s, h), cell(t.last_s, h),
                          causes ? "   " + ended_by(*row.figures) : ""));
  }
}

void print_table(Page& page, const std::vector<Row>& rows) {
  print_times(page, "able until", rows, &Figures::able, true);
  print_times(page, "alive until", rows, &Figures::alive, false);
  page.line();
  page.line(fmt::format("  {:<13} {:>12} {:>12} {:>12} {:>14}", "", "coldest", "lowest", "worst water",
                        "CO2 above"));
  page.line(
      fmt::format("  {:<13} {:>12} {:>12} {:>12} {:>14}", "", "inside", "core", "deficit", "5,000 ppm"));
  for (const Row& row : rows) {
    const Figures& f = *row.figures;
    page.line(fmt::format("  option {:<6} {:>12} {:>12} {:>12} {:>14}", row.number, coldest_inside(f),
                          temperature(f.lowest_core_degC), percent(f.worst_water_deficit_pct), foul_air(f)));
  }
  page.line();
  for (const Row& row : rows)
    page.paragraph(fmt::format("option {}: {}", row.number, stores_out(*row.figures)), "  stores out, ",
                   "      ");
}

void print_equal(Page& page, const Comparison& comparison) {
  if (comparison.same_stores) {
    page.heading("STORES");
    page.line("  All options carry the same; there is no second table.");
    return;
  }
  page.heading("WITH EQUAL STORES: those of option 1 in every option");
  std::vector<Row> rows{{1, &comparison.options.front().own.figures}};
  for (std::size_t i = 1; i < comparison.options.size(); ++i) {
    const Option& option = comparison.options[i];
    if (option.equal)
      rows.push_back({i + 1, &option.equal->figures});
    else
      page.paragraph(
          fmt::format("option {} cannot carry them: {}", i + 1, page.outside(option.equal_refused)), "  ",
          "      ");
  }
  print_table(page, rows);
}

}  // namespace

std::string comparison_text(const Comparison& comparison, Letters letters, int width) {
  Page page(width, letters);
  page.paragraph(one_case_each(comparison));
  page.heading("OPTIONS");
  for (std::size_t i = 0; i < comparison.options.size(); ++i) {
    const Option& option = comparison.options[i];
    page.paragraph(
        fmt::format("{}: {}", page.outside(option.label), page.outside(option.own.scenario->scenario.name)),
        fmt::format("  {:<3} ", i + 1), "      ");
  }
  page.heading("INPUTS THAT DIFFER");
  print_differences(page, scenario::differences(scenarios_of(comparison)));
  const auto aboard = scenario::differences_aboard(scenarios_of(comparison));
  if (!aboard.empty()) {
    page.heading("STORES ABOARD THAT DIFFER");
    print_differences(page, aboard);
  }

  page.heading("EACH WITH ITS OWN STORES");
  std::vector<Row> rows;
  for (std::size_t i = 0; i < comparison.options.size(); ++i)
    rows.push_back({i + 1, &comparison.options[i].own.figures});
  print_table(page, rows);
  print_equal(page, comparison);

  page.heading("WHAT SETS THEM APART");
  const auto lists = conclusions(comparison);
  for (std::size_t i = 0; i < lists.size(); ++i) {
    if (i > 0) page.line();
    for (const std::string& sentence : lists[i]) page.item(page.outside(sentence, 1000));
  }

  page.heading("UNDER COMMON FUTURES");
  if (!comparison.no_futures.empty()) page.paragraph(comparison.no_futures, "  ", "  ");
  for (std::size_t i = 1; i < comparison.options.size(); ++i)
    if (comparison.options[i].futures)
      for (const std::string& sentence :
           futures_sentences(*comparison.options[i].futures, "option 1", fmt::format("option {}", i + 1)))
        page.item(sentence);

  bool cautioned = false;
  for (std::size_t i = 0; i < comparison.options.size(); ++i)
    for (const scenario::Diagnostic& caution : comparison.options[i].own.scenario->cautions) {
      if (!cautioned) page.heading("CAUTIONS");
      cautioned = true;
      page.item(fmt::format("option {}: {}: {}", i + 1, page.outside(caution.pointer),
                            page.outside(caution.message)));
    }
  page.line();
  page.paragraph(standing_notice);
  page.paragraph(standing_advice);
  return page.text();
}

}  // namespace bide::report
