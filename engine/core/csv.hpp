// Comma-separated text to fields, with line numbers.
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
  int line = 0;                     // of its first character, from 1
  std::vector<std::string> fields;  // blanks around unquoted fields are dropped
};

struct CsvError {
  int line = 0;
  std::string message;
};

// Empty lines are left out.
std::variant<std::vector<CsvRow>, CsvError> parse_csv(std::string_view text);

// A whole finite decimal number; nothing for anything else (empty, "nan", "1e999", "3 m").
std::optional<double> parse_number(std::string_view text);

}  // namespace bide
