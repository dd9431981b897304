#include "bide/core/csv.hpp"

#include <doctest/doctest.h>

#include <limits>

using namespace bide;

namespace {

std::vector<CsvRow> rows_of(std::string_view text) {
  const auto parsed = parse_csv(text);
  REQUIRE(std::holds_alternative<std::vector<CsvRow>>(parsed));
  return std::get<std::vector<CsvRow>>(parsed);
}

CsvError error_of(std::string_view text) {
  const auto parsed = parse_csv(text);
  REQUIRE(std::holds_alternative<CsvError>(parsed));
  return std::get<CsvError>(parsed);
}

}  // namespace

TEST_CASE("fields, quotes, line ends and the byte-order mark") {
  const auto rows =
      rows_of("\xEF\xBB\xBFname, value\r\n\"a,b\" , 1\n\r\n\"say \"\"x\"\"\",\r\"two\nlines\",2\nlast,3");
  REQUIRE(rows.size() == 5);
  CHECK(rows[0].fields == std::vector<std::string>{"name", "value"});
  CHECK(rows[1].fields == std::vector<std::string>{"a,b", "1"});
  CHECK(rows[1].line == 2);
  CHECK(rows[2].fields == std::vector<std::string>{"say \"x\"", ""});
  CHECK(rows[2].line == 4);
  CHECK(rows[3].fields == std::vector<std::string>{"two\nlines", "2"});
  CHECK(rows[3].line == 5);
  CHECK(rows[4].fields == std::vector<std::string>{"last", "3"});
  CHECK(rows[4].line == 7);
  CHECK(rows_of("").empty());
  CHECK(rows_of("\n\n").empty());
  CHECK(rows_of("a,\n").at(0).fields.size() == 2);
}

TEST_CASE("broken quoting is an error with its line") {
  CHECK(error_of("a,b\nc,\"open\nd").line == 2);
  CHECK(error_of("a,b\nc,x\"y\n").line == 2);
  CHECK(error_of("\"a\"b,c").line == 1);
}

TEST_CASE("cells are quoted where they must be, and no text is computed by a spreadsheet") {
  CHECK(csv_cell("plain words") == "plain words");
  CHECK(csv_cell("") == "");
  CHECK(csv_cell("a,b") == "\"a,b\"");
  CHECK(csv_cell("say \"x\"") == "\"say \"\"x\"\"\"");
  for (const char* text : {"=1+1", "+cmd", "-cmd", "@SUM(A1)", " =1+1", "-1+cmd|' /C calc'!A0",
                           "\xEF\xBC\x9D"
                           "1"})
    CHECK(csv_cell(text) == std::string("'") + text);
  CHECK(csv_cell("=HYPERLINK(\"x\",1)") == "\"'=HYPERLINK(\"\"x\"\",1)\"");
  for (const char* number : {"-1.5", "+3", "-2e-3"}) CHECK(csv_cell(number) == number);
  CHECK(csv_cell("\t=1") == "'\\u0009=1");
  CHECK(csv_cell("two\nlines\x1b[31m") == "two\\u000Alines\\u001B[31m");
}

TEST_CASE("a comment is one line that no spreadsheet computes") {
  CHECK(csv_comment("scenario: calm, -5 degC") == "# scenario: calm,' -5 degC\n");
  CHECK(csv_comment("scenario: calm, warm") == "# scenario: calm, warm\n");
  CHECK(csv_comment("a,=1+1;@x\t+y\nb") == "# a,'=1+1;'@x '+y\\u000Ab\n");
  CHECK(csv_comment("") == "# \n");
}

TEST_CASE("numbers are whole and finite") {
  CHECK(parse_number("-1.5e2") == -150.0);
  CHECK(parse_number("+3") == 3.0);
  CHECK(parse_number(".5") == 0.5);
  CHECK(parse_number("1.") == 1.0);
  CHECK(parse_number("5e-324") ==
        std::numeric_limits<double>::denorm_min());  // IEEE 754: 2^-1074 is 4.94e-324
  for (const char* text : {"", "nan", "inf", "1e999", "1e-999", "3 m", " 3", "3 ", "+-3", "++3", "-+3", "+",
                           ".", "1e", "0x10", "0x1p3", "1,5"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_number(text).has_value());
  }
}
