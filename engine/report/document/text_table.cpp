#include <algorithm>
#include <numeric>
#include <vector>

#include "bide/report/document/text_parts.hpp"

namespace bide::report::document {
namespace {

using Row = std::vector<std::string>;
using Widths = std::vector<int>;

constexpr int between = 2;       // blanks between columns
constexpr int narrow = 16;       // a column of text that is broken within less is hard to read
constexpr std::size_t tall = 5;  // a row of more lines reads better as an item of a list

int sum_of(const Widths& widths) {
  return std::accumulate(widths.begin(), widths.end(), between * (static_cast<int>(widths.size()) - 1));
}

// Columns as wide as their cells; where they do not fit, the widest give way, all to the same width.
Widths widths_of(const std::vector<Row>& rows, int room) {
  Widths out(rows.front().size(), 0);
  for (const Row& row : rows)
    for (std::size_t i = 0; i < row.size(); ++i) out[i] = std::max(out[i], columns(row[i]));
  while (sum_of(out) > room) {
    int& widest = *std::max_element(out.begin(), out.end());
    if (widest <= 1) break;
    --widest;
  }
  return out;
}

bool broken_too_narrow(const std::vector<Row>& rows, const Widths& widths) {
  for (const Row& row : rows)
    for (std::size_t i = 0; i < row.size(); ++i)
      if (columns(row[i]) > widths[i] && widths[i] < narrow) return true;
  return false;
}

std::size_t tallest(const std::vector<Row>& rows, const Widths& widths) {
  std::size_t out = 0;
  for (const Row& row : rows)
    for (std::size_t i = 0; i < row.size(); ++i) out = std::max(out, wrap(row[i], widths[i]).size());
  return out;
}

void write_rows(TextLines& to, const std::vector<Row>& rows, const Widths& widths,
                const std::vector<bool>& number, std::string_view indent) {
  for (const Row& row : rows) {
    if (std::all_of(row.begin(), row.end(), [](const std::string& cell) { return cell.empty(); })) continue;
    std::vector<std::vector<std::string>> cells;
    std::size_t lines = 0;
    for (std::size_t i = 0; i < row.size(); ++i) {
      cells.push_back(wrap(row[i], widths[i]));
      lines = std::max(lines, cells.back().size());
    }
    for (std::size_t line = 0; line < lines; ++line) {
      std::string text(indent);
      int begins = static_cast<int>(indent.size());
      for (std::size_t i = 0; i < cells.size(); ++i) {
        const std::string cell = line < cells[i].size() ? cells[i][line] : "";
        const int at = begins + (number[i] ? std::max(0, widths[i] - columns(cell)) : 0);
        text.append(static_cast<std::size_t>(std::max(0, at - columns(text))), ' ');
        text += cell;
        begins += widths[i] + between;
      }
      text.erase(text.find_last_not_of(' ') + 1);
      to.line(text);
    }
  }
}

void write_list(TextLines& to, const std::vector<Row>& rows, std::string_view indent) {
  const std::string first = std::string(indent) + "- ", rest = std::string(indent) + "  ";
  const Row& names = rows.front();
  for (std::size_t r = 1; r < rows.size(); ++r) {
    std::string text = rows[r].front();
    for (std::size_t i = 1; i < rows[r].size(); ++i)
      if (!rows[r][i].empty())
        text += (i == 1 ? ": " : "; ") + (names[i].empty() ? rows[r][i] : names[i] + ": " + rows[r][i]);
    to.paragraph(text, first, rest);
  }
}

// The first column and some of the others.
std::vector<Row> part_of(const std::vector<Row>& rows, std::size_t from, std::size_t to) {
  std::vector<Row> out;
  for (const Row& row : rows) {
    out.push_back({row.front()});
    for (std::size_t i = from; i < to; ++i) out.back().push_back(row[i]);
  }
  return out;
}

}  // namespace

void write_table(TextLines& to, const Table& table, std::string_view indent) {
  if (!table.caption.empty()) to.paragraph(table.caption, indent, indent);
  std::vector<Row> rows(1);
  for (const Column& column : table.columns) rows.front().push_back(to.fit(column.name));
  for (const std::vector<std::string>& row : table.rows) {
    rows.emplace_back();
    for (const std::string& cell : row) rows.back().push_back(to.fit(cell));
  }
  const int room = to.width() - static_cast<int>(indent.size());
  const std::size_t others = table.columns.size() - 1;
  // As many columns abreast as can be read, beginning with all of them.
  std::size_t abreast = others;
  Widths widths = widths_of(rows, room);
  while (abreast > 1 && broken_too_narrow(part_of(rows, 1, 1 + abreast), widths)) {
    --abreast;
    widths = widths_of(part_of(rows, 1, 1 + abreast), room);
  }
  if (tallest(part_of(rows, 1, 1 + abreast), widths) > tall) return write_list(to, rows, indent);
  for (std::size_t from = 1; from < table.columns.size(); from += abreast) {
    if (from > 1) to.line();
    const std::size_t end = std::min(from + abreast, table.columns.size());
    std::vector<bool> number{table.columns.front().number};
    for (std::size_t i = from; i < end; ++i) number.push_back(table.columns[i].number);
    const std::vector<Row> part = part_of(rows, from, end);
    write_rows(to, part, widths_of(part, room), number, indent);
  }
}

}  // namespace bide::report::document
