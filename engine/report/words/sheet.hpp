// Tables for a spreadsheet: plain structs that a writer of files takes.
#pragma once

#include <string>
#include <variant>
#include <vector>

namespace bide::report {

using SheetCell = std::variant<std::string, double>;  // a number that is not finite is an empty cell

struct Sheet {
  std::string name;                // at most 31 letters
  std::vector<std::string> notes;  // lines above the table
  std::vector<std::string> columns;
  std::vector<std::vector<SheetCell>> rows;
};

}  // namespace bide::report
