// Comma-separated text to fields, with line numbers; text to cells.
//
// States: none. Inputs: text with LF, CRLF or CR line ends, with or without a byte-order mark; a field may be
// quoted and then hold commas, line ends and doubled quotes. Validity: a quote inside an unquoted field, text
// after a closing quote and an unclosed quote are errors with their line. Source: RFC 4180 (2005).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace bide {

struct CsvRow {
  int line = 0;                     // where the row begins, from 1
  std::vector<std::string> fields;  // blanks around unquoted fields are dropped
};

struct CsvError {
  int line = 0;         // where the fault is, from 1
  std::string message;  // what is wrong, without file or line
};

// Splits a text into rows of fields; empty lines are left out.
// @param text the whole file
// @return the rows in order, or the first error
std::variant<std::vector<CsvRow>, CsvError> parse_csv(std::string_view text);

// Reads a decimal number.
// @param text the number and nothing else, without blanks around it
// @return the finite number; empty for any other text ("", "nan", "1e999", "3 m")
std::optional<double> parse_number(std::string_view text);

// A cell of text for a file that people open in a spreadsheet: one line of printable text, quoted where RFC
// 4180 asks for it. Text that a spreadsheet would compute (=, +, - or @ first, and no number) gets an
// apostrophe in front: common practice (OWASP, "CSV injection").
std::string csv_cell(std::string_view text);

// "# text" and a line end. What a spreadsheet would compute after a comma, semicolon or tab gets the
// apostrophe too: it splits comments as well.
std::string csv_comment(std::string_view text);

}  // namespace bide
