#include "validation/judge/body_before.hpp"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <variant>

#include "bide/core/csv.hpp"
#include "validation/judge/candidates.hpp"

namespace bide::validation {

namespace {

constexpr const char* body_file = BIDE_SOURCE_DIR "/validation/judge/body_before.csv";

[[noreturn]] void refuse_body(int line, const std::string& what) {
  throw std::runtime_error(std::string(body_file) + ":" + std::to_string(line) + ": " + what);
}

ValueBefore value_in(const CsvRow& row) {
  constexpr std::size_t columns = 6;
  if (row.fields.size() != columns) refuse_body(row.line, "allowed six fields");
  const auto number = [&](std::size_t column) {
    const auto read = parse_number(row.fields[column]);
    if (!read) refuse_body(row.line, "found \"" + row.fields[column] + "\"; allowed a number");
    return *read;
  };
  return {row.fields[0], row.fields[1], number(2), number(3), number(4), number(5)};
}

// As two builds of one expression may differ.
bool same(double one, double other) {
  constexpr double part = 1e-9;
  return std::abs(one - other) <= part * std::max(std::abs(one), std::abs(other));
}

}  // namespace

std::vector<ValueBefore> values_before() {
  std::ifstream in(body_file);
  if (!in) throw std::runtime_error(std::string(body_file) + ": cannot be read");
  std::string text, line;
  while (std::getline(in, line)) text += (line.starts_with('#') ? "" : line) + "\n";
  const auto parsed = parse_csv(text);
  if (const auto* wrong = std::get_if<CsvError>(&parsed)) refuse_body(wrong->line, wrong->message);
  const auto& rows = std::get<std::vector<CsvRow>>(parsed);
  std::vector<ValueBefore> out;
  for (std::size_t i = 1; i < rows.size(); ++i) out.push_back(value_in(rows[i]));
  return out;
}

Scores of_values(const std::vector<JudgedRow>& rows, const std::vector<ValueBefore>& values) {
  Scores out;
  for (const JudgedRow& row : rows) {
    const auto at = std::find_if(values.begin(), values.end(), [&](const ValueBefore& each) {
      return each.topic == row.row.topic && each.quantity == row.row.quantity &&
             same(each.published, row.row.published) && same(each.low, row.row.low) &&
             same(each.high, row.row.high);
    });
    out.push_back(at == values.end() ? std::nullopt
                                     : std::optional(score(row, single(at->model), row_scatter)));
  }
  return out;
}

}  // namespace bide::validation
