#include "bide/core/csv.hpp"

#include <cerrno>
#include <charconv>
#include <cmath>
#include <cstdlib>

#include "bide/core/printable.hpp"

namespace bide {
namespace {

constexpr std::string_view blanks = " \t";

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(blanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

// The number that a text is from end to end.
std::optional<double> whole_number(const char* begin, const char* end) {
#ifdef __cpp_lib_to_chars
  double value = 0;
  const auto [stopped, code] = std::from_chars(begin, end, value);
  if (code != std::errc() || stopped != end) return std::nullopt;
  return value;
#else
  // The library of the browser's build reads no double that way. strtod would take more than decimal numbers.
  const std::string text(begin, end);
  if (text.empty() || text.front() == '+' || text.find_first_not_of("0123456789.+-eE") != std::string::npos)
    return std::nullopt;
  char* stopped = nullptr;
  errno = 0;
  const double value = std::strtod(text.c_str(), &stopped);
  if (stopped != text.c_str() + text.size() || (errno == ERANGE && value == 0)) return std::nullopt;
  return value;
#endif
}

// Reads field by field; `at` is the next character, `line` the line it is on.
struct Reader {
  std::string_view text;
  std::size_t at = 0;
  int line = 1;
  std::optional<CsvError> error;

  bool done() const { return at >= text.size(); }
  bool at_line_end() const { return done() || text[at] == '\n' || text[at] == '\r'; }

  void skip_line_end() {
    if (done()) return;
    if (text[at] == '\r' && at + 1 < text.size() && text[at + 1] == '\n') ++at;
    ++at;
    ++line;
  }

  void skip_blanks() {
    while (!done() && blanks.find(text[at]) != std::string_view::npos) ++at;
  }

  std::string quoted_field() {
    const int opened = line;
    std::string field;
    for (++at; !done(); ++at) {
      if (text[at] == '\n') ++line;
      if (text[at] != '"') {
        field += text[at];
      } else if (at + 1 < text.size() && text[at + 1] == '"') {
        field += text[at++];
      } else {
        ++at;
        skip_blanks();
        if (!at_line_end() && text[at] != ',') error = {line, "text after a closing quote"};
        return field;
      }
    }
    error = {opened, "a quote is never closed"};
    return field;
  }

  std::string field() {
    skip_blanks();
    if (!done() && text[at] == '"') return quoted_field();
    const std::size_t begin = at;
    while (!at_line_end() && text[at] != ',') {
      if (text[at] == '"') error = {line, "a quote inside an unquoted field"};
      ++at;
    }
    return std::string(trimmed(text.substr(begin, at - begin)));
  }
};

// Whether a spreadsheet would compute the cell; the wide forms of the signs count in some languages.
bool computed(std::string_view cell) {
  const std::string_view text = trimmed(cell);
  if (text.empty() || parse_number(text)) return false;
  switch (letter_at(text, 0).code) {
    case '=':
    case '+':
    case '-':
    case '@':
    case 0xFF1D:
    case 0xFF0B:
    case 0xFF0D:
    case 0xFF20:
      return true;
    default:
      return false;
  }
}

}  // namespace

std::variant<std::vector<CsvRow>, CsvError> parse_csv(std::string_view text) {
  constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
  if (text.substr(0, byte_order_mark.size()) == byte_order_mark) text.remove_prefix(byte_order_mark.size());
  Reader reader{text, 0, 1, std::nullopt};
  std::vector<CsvRow> rows;
  while (!reader.done()) {
    CsvRow row;
    row.line = reader.line;
    row.fields.push_back(reader.field());
    while (!reader.error && !reader.done() && reader.text[reader.at] == ',') {
      ++reader.at;
      row.fields.push_back(reader.field());
    }
    if (reader.error) return *reader.error;
    reader.skip_line_end();
    if (row.fields.size() > 1 || !row.fields.front().empty()) rows.push_back(std::move(row));
  }
  return rows;
}

std::optional<double> parse_number(std::string_view text) {
  const char* end = text.data() + text.size();
  const char* begin = text.data();
  if (text.size() > 1 && text.front() == '+' && text[1] != '-') ++begin;
  const std::optional<double> value = whole_number(begin, end);
  return value && std::isfinite(*value) ? value : std::nullopt;
}

std::string csv_cell(std::string_view text) {
  const std::string shown = (computed(text) ? "'" : "") + printable(text);
  if (shown.find_first_of(",;\"") == std::string::npos) return shown;
  std::string out = "\"";
  for (const char letter : shown) out += letter == '"' ? "\"\"" : std::string(1, letter);
  return out + "\"";
}

std::string csv_comment(std::string_view text) {
  std::string out = "# ";
  for (std::size_t begin = 0; begin <= text.size();) {
    const std::size_t end = std::min(text.find_first_of(",;\t", begin), text.size());
    const std::string_view part = text.substr(begin, end - begin);
    out += (computed(part) ? "'" : "") + printable(part);
    if (end < text.size()) out += text[end] == '\t' ? ' ' : text[end];
    begin = end + 1;
  }
  return out + "\n";
}

}  // namespace bide
