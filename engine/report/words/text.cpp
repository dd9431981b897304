#include "bide/report/words/text.hpp"

#include <algorithm>
#include <cstdint>

namespace bide::report {
namespace {

struct Letter {
  std::uint32_t code = 0;
  std::size_t bytes = 0;  // 0: broken UTF-8, skip one byte
};

// Decodes the letter at `at`, refusing overlong forms, surrogates and codes beyond Unicode (RFC 3629).
Letter letter_at(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) {
    return static_cast<std::uint32_t>(static_cast<unsigned char>(text[i]));
  };
  const std::uint32_t lead = byte(at);
  if (lead < 0x80) return {lead, 1};
  const std::size_t length = lead >= 0xF0 && lead < 0xF5   ? 4
                             : lead >= 0xE0 && lead < 0xF0 ? 3
                             : lead >= 0xC2 && lead < 0xE0 ? 2
                                                           : 0;
  if (length == 0 || at + length > text.size()) return {};
  std::uint32_t code = lead & (0xFFu >> (length + 1));
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(at + i) & 0xC0u) != 0x80) return {};
    code = (code << 6) | (byte(at + i) & 0x3Fu);
  }
  constexpr std::uint32_t smallest[] = {0, 0, 0x80, 0x800, 0x10000};
  if (code < smallest[length] || code > 0x10FFFF || (code >= 0xD800 && code < 0xE000)) return {};
  return {code, length};
}

struct Range {
  std::uint32_t from, to;
};
template <std::size_t N>
bool within(std::uint32_t code, const Range (&ranges)[N]) {
  return std::any_of(std::begin(ranges), std::end(ranges),
                     [code](Range r) { return code >= r.from && code <= r.to; });
}

// Controls, line separators, and the marks that reorder or hide text.
constexpr Range hidden[] = {{0, 0x20},        {0x7F, 0xA0},       {0xAD, 0xAD},     {0x61C, 0x61C},
                            {0x180E, 0x180E}, {0x2000, 0x200F},   {0x2028, 0x202F}, {0x205F, 0x206F},
                            {0x3000, 0x3000}, {0xFE00, 0xFE0F},   {0xFEFF, 0xFEFF}, {0xFFF0, 0xFFFF},
                            {0xE000, 0xF8FF}, {0xE0000, 0x10FFFF}};
constexpr Range combining[] = {{0x300, 0x36F},   {0x483, 0x489},   {0x591, 0x5BD},
                               {0x610, 0x61A},   {0x64B, 0x65F},   {0x1AB0, 0x1AFF},
                               {0x1DC0, 0x1DFF}, {0x20D0, 0x20FF}, {0xFE20, 0xFE2F}};
constexpr Range wide[] = {{0x1100, 0x115F},   {0x231A, 0x231B},   {0x2329, 0x232A},  {0x23E9, 0x23F3},
                          {0x25FD, 0x25FE},   {0x2614, 0x27BF},   {0x2B1B, 0x2B55},  {0x2E80, 0x303E},
                          {0x3041, 0xA4CF},   {0xA960, 0xA97F},   {0xAC00, 0xD7A3},  {0xF900, 0xFAFF},
                          {0xFE30, 0xFE6F},   {0xFF00, 0xFF60},   {0xFFE0, 0xFFE6},  {0x16FE0, 0x18CFF},
                          {0x1B000, 0x1B2FF}, {0x1F000, 0x1FAFF}, {0x20000, 0x3FFFD}};

constexpr std::size_t longest_unit = 4;

bool is_number(std::string_view word) {
  return !word.empty() && word.find_first_not_of("0123456789.,-") == std::string_view::npos;
}

int width_of(std::uint32_t code) {
  if (within(code, combining)) return 0;
  return within(code, wide) ? 2 : 1;
}

}  // namespace

std::string plain(std::string_view text, Letters letters, std::size_t most_letters) {
  std::string out;
  std::size_t count = 0;
  bool blank = false;
  for (std::size_t i = 0; i < text.size();) {
    const Letter letter = letter_at(text, i);
    const std::string_view bytes = text.substr(i, std::max<std::size_t>(letter.bytes, 1));
    i += bytes.size();
    if (letter.bytes != 0 && within(letter.code, hidden)) {
      blank = true;
      continue;
    }
    if (count == most_letters) return out + "...";
    if (blank && !out.empty()) {
      out += ' ';
      ++count;
    }
    blank = false;
    const bool printable = letter.bytes == 1 || (letter.bytes > 1 && letters == Letters::utf8);
    if (printable) {
      out += bytes;
    } else {
      out += '?';
    }
    ++count;
  }
  return out;
}

int columns(std::string_view text) {
  int sum = 0;
  for (std::size_t i = 0; i < text.size();) {
    const Letter letter = letter_at(text, i);
    sum += width_of(letter.code);
    i += std::max<std::size_t>(letter.bytes, 1);
  }
  return sum;
}

std::string cut(std::string_view text, int width) {
  int sum = 0;
  std::size_t i = 0;
  while (i < text.size()) {
    const Letter letter = letter_at(text, i);
    sum += width_of(letter.code);
    if (sum > width) break;
    i += std::max<std::size_t>(letter.bytes, 1);
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
