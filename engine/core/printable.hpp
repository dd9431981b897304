// The one gate for text from outside (files, arguments, paths) on its way to a terminal or a log: which
// letters may be printed, and what stands for the others.
//
// States: none. Inputs: any bytes. Validity: categories and widths of the Unicode version of libutf8proc;
// terminals with other tables may count columns differently.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace bide {

struct Letter {
  std::int32_t code = -1;  // Unicode code point; -1: a byte that is not UTF-8
  std::size_t bytes = 1;
};

// The letter that starts at byte `at`. Overlong forms, surrogates and codes beyond Unicode are not UTF-8.
// @param at  [0, text.size())
Letter letter_at(std::string_view text, std::size_t at);

// False for controls (C0, C1), marks without a shape (which reverse or hide what follows), line and paragraph
// separators, private and unassigned codes, and bytes that are not UTF-8.
bool prints(std::int32_t code);

// A space of any width.
bool is_blank(std::int32_t code);

// Terminal columns of a letter that prints: 2 for wide letters, 0 for combining marks, else 1.
int columns_of(std::int32_t code);

// The text with a JSON escape (\u001B) in place of every letter that does not print, and \xFF in place of
// bytes that are not UTF-8: so that JSON in UTF-8 stays the same JSON. One line.
std::string printable(std::string_view text);

// The same for a text of several lines: line feeds stay.
std::string printable_lines(std::string_view text);

// Place of the first byte that is not UTF-8; nothing when there is none.
std::optional<std::size_t> first_byte_not_utf8(std::string_view text);
// The same in words, "found byte 0xFF at offset 3, which is not UTF-8".
std::optional<std::string> why_not_utf8(std::string_view text);

}  // namespace bide
