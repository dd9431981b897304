#include "bide/report/choose/choose.hpp"

#include <fmt/format.h>

#include "bide/core/csv.hpp"
#include "bide/core/notice.hpp"
#include "bide/report/choose/choose_words.hpp"
#include "bide/report/words/made_by.hpp"

namespace bide::report {

using study::Choice;
using study::ChoiceCell;

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
