// Strings from outside made fit to print: no control or escape characters, known width.
//
// Inputs: any bytes. Which letters print, and how wide they are, is core/printable.hpp's.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace bide::report {

enum class Letters { utf8, ascii };

// One line of printable text: control characters (also C1), bidirectional and zero-width marks become blanks,
// runs of blanks one blank, broken UTF-8 and, for ascii, what ascii() has no sign for "?". Cut after
// `most_letters` with "..." in place of the rest.
std::string plain(std::string_view text, Letters letters = Letters::utf8, std::size_t most_letters = 200);

// The same text in ASCII: "33 °C" is "33 C", "4 m²" is "4 m2", any other letter beyond ASCII "?".
std::string ascii(std::string_view text);

// Width of plain text, terminal columns.
int columns(std::string_view text);

// Plain text cut to at most `width` terminal columns.
std::string cut(std::string_view text, int width);

// Breaks plain text into lines, at blanks where there are any, but not between a number and its unit.
// @param text  one line
// @param width of a line, terminal columns
// @param first begins the first line
// @param rest  begins each later line
std::vector<std::string> wrap(std::string_view text, int width, std::string_view first = "",
                              std::string_view rest = "");

}  // namespace bide::report
