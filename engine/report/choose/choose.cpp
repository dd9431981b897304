#include "bide/report/choose/choose.hpp"

#include <fmt/format.h>

#include "bide/core/csv.hpp"
#include "bide/core/notice.hpp"
#include "bide/report/choose/choose_words.hpp"
#include "bide/report/words/made_by.hpp"
#include "bide/report/words/page.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
namespace {

using study::Choice;
using study::ChoiceCell;

// A row of cells under each other: the range, and what ends it.
void print_cells(Page& page, const std::string& before, const std::vector<ChoiceCell>& cells) {
  const std::size_t column = (static_cast<std::size_t>(page.width()) - before.size()) / cells.size();
  std::string ranges = before, causes = fmt::format("{:<{}}", "  ended by", before.size());
  for (const ChoiceCell& cell : cells) {
    ranges += fmt::format("{:<{}}", range_words(cell.chance), column);
    causes += fmt::format("{:<{}}", cut(cause_words(cell), static_cast<int>(column) - 1), column);
  }
  page.line(ranges.substr(0, ranges.find_last_not_of(' ') + 1));
  page.line(causes.substr(0, causes.find_last_not_of(' ') + 1));
}

void print_table(Page& page, const study::Chosen& chosen, const study::Water& water) {
  constexpr std::size_t names = 12;
  const auto& hours = chosen.question.help_h;
  std::string head = fmt::format("{:<{}}", "help after", names);
  const std::size_t column = (static_cast<std::size_t>(page.width()) - names) / hours.size();
  for (const double help_h : hours) head += fmt::format("{:<{}}", help_words(help_h), column);
  page.line(head.substr(0, head.find_last_not_of(' ') + 1));
  for (const auto& [state, cells] : {std::pair{"able", &Choice::able}, {"alive", &Choice::alive}})
    for (std::size_t c = 0; c < water.choices.size(); ++c)
      print_cells(page, fmt::format("{:<7}{:<5}", c == 0 ? state : "", c + 1), water.choices[c].*cells);
}

}  // namespace

std::string choose_text(const study::Chosen& chosen, Letters letters, int width) {
  Page page(width, letters);
  page.paragraph(choose_title(chosen) + ": the chance that all are able, and alive, when help comes.");
  page.line();
  const auto& choices = chosen.waters.front().choices;
  for (std::size_t c = 0; c < choices.size(); ++c)
    page.paragraph(fmt::format("{}  {}", c + 1, choice_words(choices[c])), "  ", "     ");
  for (const study::Water& water : chosen.waters) {
    page.line();
    page.paragraph(page.outside(water_words(water)) + ".");
    for (const std::string& verdict : verdict_sentences(chosen, water)) page.item(verdict);
    print_table(page, chosen, water);
  }
  page.line();
  for (const std::string& each : about_choices(chosen)) page.item(each);
  page.line();
  page.paragraph(standing_notice);
  page.paragraph(standing_advice);
  return page.text();
}

std::string choose_csv(const study::Chosen& chosen) {
  std::string out = csv_comment(fmt::format("{} possible futures, not a forecast", chosen.question.futures)) +
                    csv_comment(standing_notice) + csv_comment(standing_advice) + csv_comment(made_by_line());
  out += "water,choice,raft,two_one_lost,pack,help_h,futures";
  for (const char* state : {"able", "alive"})
    out += fmt::format(
        ",{0},{0}_low,{0}_high,{0}_ended_by,{0}_ended_by_futures,{0}_more_than_first,"
        "{0}_fewer_than_first,{0}_apart",
        state);
  out += '\n';
  for (const study::Water& water : chosen.waters)
    for (std::size_t c = 0; c < water.choices.size(); ++c) {
      const Choice& choice = water.choices[c];
      for (std::size_t h = 0; h < chosen.question.help_h.size(); ++h) {
        out += fmt::format("{},{},{},{},{},{:.6g},{}", csv_cell(water.scenario.scenario.name), c + 1,
                           choice.raft.kind, choice.raft.one_of_two ? "yes" : "no", choice.pack,
                           chosen.question.help_h[h], water.futures);
        for (const ChoiceCell* cell : {&choice.able[h], &choice.alive[h]})
          out += fmt::format(",{:.6g},{:.6g},{:.6g},{},{},{},{},{}", cell->chance.share,
                             cell->chance.interval.low, cell->chance.interval.high,
                             csv_cell(cause_words(*cell)), cell->ended_by.futures, cell->against_first.more,
                             cell->against_first.fewer, cell->against_first.apart ? "yes" : "no");
        out += '\n';
      }
    }
  return out;
}

}  // namespace bide::report
