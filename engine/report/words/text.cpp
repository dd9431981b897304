#include "bide/report/words/text.hpp"

#include <algorithm>

#include "bide/core/printable.hpp"

namespace bide::report {
namespace {

constexpr std::size_t longest_unit = 4;

bool is_number(std::string_view word) {
  return !word.empty() && word.find_first_not_of("0123456789.,-") == std::string_view::npos;
}

// Blanks, and what does not print: all stand as one blank.
bool blank_or_hidden(std::int32_t code) {
  return code >= 0 && (!prints(code) || is_blank(code));
}

// Signs of units, where only ASCII may be printed: "33 °C" is "33 C", "4 m²" is "4 m2".
std::string_view in_ascii(std::string_view letter) {
  if (letter == "°") return "";
  if (letter == "²") return "2";
  return "?";
}

}  // namespace

std::string ascii(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    const Letter letter = letter_at(text, i);
    const std::string_view bytes = text.substr(i, letter.bytes);
    i += letter.bytes;
    out += letter.code >= 0 && letter.bytes == 1 ? bytes : in_ascii(bytes);
  }
  return out;
}

std::string plain(std::string_view text, Letters letters, std::size_t most_letters) {
  std::string out;
  std::size_t count = 0;
  bool blank = false;
  for (std::size_t i = 0; i < text.size();) {
    const Letter letter = letter_at(text, i);
    const std::string_view bytes = text.substr(i, letter.bytes);
    i += letter.bytes;
    if (blank_or_hidden(letter.code)) {
      blank = true;
      continue;
    }
    if (count == most_letters) return out + "...";
    if (blank && !out.empty()) {
      out += ' ';
      ++count;
    }
    blank = false;
    const bool shown = letter.code >= 0 && (letter.bytes == 1 || letters == Letters::utf8);
    if (shown) {
      out += bytes;
    } else {
      out += in_ascii(bytes);
    }
    ++count;
  }
  return out;
}

int columns(std::string_view text) {
  int sum = 0;
  for (std::size_t i = 0; i < text.size();) {
    const Letter letter = letter_at(text, i);
    sum += columns_of(letter.code);
    i += letter.bytes;
  }
  return sum;
}

std::string cut(std::string_view text, int width) {
  int sum = 0;
  std::size_t i = 0;
  while (i < text.size()) {
    const Letter letter = letter_at(text, i);
    sum += columns_of(letter.code);
    if (sum > width) break;
    i += letter.bytes;
  }
  return std::string(text.substr(0, i));
}

std::vector<std::string> wrap(std::string_view text, int width, std::string_view first,
                              std::string_view rest) {
  std::vector<std::string> lines;
  std::string line(first);
  bool empty = true;  // nothing but the indent so far
  const auto flush = [&] {
    lines.push_back(line);
    line = rest;
    empty = true;
  };
  while (!text.empty()) {
    std::size_t end = text.find(' ');
    if (end != std::string_view::npos && is_number(text.substr(0, end))) {
      const std::size_t unit_end = text.find(' ', end + 1);  // a number is not parted from its unit
      if (std::min(unit_end, text.size()) - end <= longest_unit + 1) end = unit_end;
    }
    std::string word(text.substr(0, end));
    text = end == std::string_view::npos ? std::string_view() : text.substr(end + 1);
    if (word.empty()) continue;
    if (!empty && columns(line) + 1 + columns(word) > width) flush();
    while (columns(line) + columns(word) + (empty ? 0 : 1) > width) {
      const std::string piece = cut(word, std::max(2, width - columns(line)));
      if (piece.empty()) break;
      line += piece;
      word.erase(0, piece.size());
      flush();
      if (word.empty()) break;
    }
    if (word.empty()) continue;
    if (!empty) line += ' ';
    line += word;
    empty = false;
  }
  if (!empty || lines.empty()) lines.push_back(line);
  return lines;
}

}  // namespace bide::report
