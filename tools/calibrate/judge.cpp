// Judges the model by studies that it is not fitted to: error, coverage and width of ways to forecast them.
#include <fmt/format.h>

#include <cstring>
#include <exception>
#include <fstream>
#include <stdexcept>
#include <string>

#include "validation/judge/report.hpp"

namespace {

void write(const std::string& path, const std::string& text) {
  std::ofstream out(path, std::ios::binary);
  out << text;
  out.close();
  if (!out) throw std::runtime_error(path + ": cannot be written");
}

}  // namespace

int main(int count, char** words) try {
  using namespace bide::validation;
  std::string csv, table;
  for (int i = 1; i < count; i += 2) {
    const bool known = std::strcmp(words[i], "--csv") == 0 || std::strcmp(words[i], "--table") == 0;
    if (!known || i + 1 == count) {
      fmt::print(stderr,
                 "bide_judge [--csv FILE] [--table FILE]: the table is engine/constants/left_out.hpp\n");
      return 2;
    }
    (std::strcmp(words[i], "--csv") == 0 ? csv : table) = words[i + 1];
  }
  const Judgement judgement = judge();
  fmt::print("{}", judge_text(judgement));
  if (!csv.empty()) write(csv, judge_csv(judgement));
  if (!table.empty())
    write(table,
          left_out_text(judgement.runs, judgement.candidates[model_with_error].scores, judgement.widths));
  return 0;
} catch (const std::exception& wrong) {
  fmt::print(stderr, "bide_judge: {}\n", wrong.what());
  return 1;
}
