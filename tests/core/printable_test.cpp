#include "bide/core/printable.hpp"

#include <doctest/doctest.h>

#include <random>
#include <string>

using namespace bide;

TEST_CASE("controls, escapes, reversing and hidden marks are shown as JSON writes them") {
  CHECK(printable("a\x1b[31mred\x07") == "a\\u001B[31mred\\u0007");
  CHECK(printable("c1 \xC2\x9B") == "c1 \\u009B");                     // a control sequence introducer of C1
  CHECK(printable("re\xE2\x80\xAEversed") == "re\\u202Eversed");       // right-to-left override
  CHECK(printable("\xE2\x81\xA6x\xE2\x81\xA9") == "\\u2066x\\u2069");  // isolates
  CHECK(printable("zero\xE2\x80\x8Bwidth\xEF\xBB\xBF") == "zero\\u200Bwidth\\uFEFF");
  CHECK(printable("line\nand\xE2\x80\xA8") == "line\\u000Aand\\u2028");
  CHECK(printable_lines("line\nand\r\n") == "line\nand\\u000D\n");
  CHECK(printable("\xEE\x80\x80") == "\\uE000");             // private use
  CHECK(printable("\xF3\xA0\x81\x81") == "\\uDB40\\uDC41");  // a tag, U+E0041, as a pair (RFC 8259)
  CHECK(printable(std::string("nul\0", 4)) == "nul\\u0000");
}

TEST_CASE("letters of any script stay, and so do blanks") {
  for (const char* text : {"plain \\ \"text\"", "Åse Ødegård", "漢字", "e\xCC\x81", "😀", "a\xC2\xA0 b", ""})
    CHECK(printable(text) == text);
}

TEST_CASE("bytes that are not UTF-8 are shown as bytes (RFC 3629)") {
  CHECK(printable("a\xFF") == "a\\xFF");
  CHECK(printable("\xC0\xAF") == "\\xC0\\xAF");           // overlong "/"
  CHECK(printable("\xED\xA0\x80") == "\\xED\\xA0\\x80");  // a surrogate
  CHECK(printable("cut \xE2\x82") == "cut \\xE2\\x82");
  CHECK_FALSE(first_byte_not_utf8("Åse"));
  CHECK(first_byte_not_utf8("Åse\xFFx") == 4U);
}

TEST_CASE("whatever the bytes, no control comes through, and a second pass changes nothing") {
  std::mt19937 random(11);
  for (int round = 0; round < 2000; ++round) {
    std::string bytes(random() % 40, ' ');
    for (char& byte : bytes) byte = static_cast<char>(random() & 0xFFu);
    const std::string text = printable(bytes);
    CHECK(printable(text) == text);
    CHECK_FALSE(first_byte_not_utf8(text));
    for (std::size_t i = 0; i < text.size();) {
      const Letter letter = letter_at(text, i);
      CHECK(letter.code >= 0x20);
      CHECK_FALSE((letter.code >= 0x7F && letter.code < 0xA0));
      CHECK_FALSE((letter.code >= 0x202A && letter.code <= 0x202E));
      i += letter.bytes;
    }
  }
}

TEST_CASE("columns of wide and combining letters") {
  CHECK(columns_of('a') == 1);
  CHECK(columns_of(0x6F22) == 2);  // a Han letter
  CHECK(columns_of(0x301) == 0);   // combining acute
  CHECK(columns_of(0x1F600) == 2);
}
