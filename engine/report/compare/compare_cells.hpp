// Cells that the text and the page of a comparison share.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bide/outcome/compare.hpp"
#include "bide/report/document/document.hpp"
#include "bide/study/questions/compare.hpp"

namespace bide::report {

// One table of a comparison: a column for each option, a row for each figure.
struct ComparedFigures {
  std::string name;  // "option 1"
  const outcome::Figures* figures;
  const study::Option* ranges;  // null: none to show
};
enum class Rows { asked_first, all };
document::Table figures_table(const std::string& caption, const std::vector<ComparedFigures>& shown,
                              Rows rows);

// "Four in a raft (four.json)"; of a version of one file what was put in: "raft: capacity 4 persons".
std::string option_title(const study::Option& option);

std::string cell(const std::optional<double>& at_s, double horizon_s);  // "48 h", "not in 3 d"
std::string ended_by(const outcome::Endurance& crew);         // "cold"; "nothing; nearest water loss, ..."
std::string stores_out(const outcome::Figures& figures);      // "water 48 h, lamp 60 h"
std::string coldest_inside(const outcome::Figures& figures);  // "-3 °C, night"
std::string foul_air(const outcome::Figures& figures);        // "14 h", "never", "no cabin"

}  // namespace bide::report
