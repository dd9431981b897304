#include "bide/report/words/text.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>

using namespace bide::report;

TEST_CASE("control characters, escapes and hidden marks become blanks") {
  CHECK(plain("a\x1b[31mred\x07\r\nb") == "a [31mred b");
  CHECK(plain("tab\tand\x7f") == "tab and");
  CHECK(plain("c1 \xC2\x9B end") == "c1 end");            // U+009B, a control sequence introducer
  CHECK(plain("re\xE2\x80\xAEversed") == "re versed");    // U+202E, right-to-left override
  CHECK(plain("zero\xE2\x80\x8Bwidth") == "zero width");  // U+200B
  CHECK(plain(std::string("nul\0byte", 8)) == "nul byte");
  CHECK(plain("  trimmed  ") == "trimmed");
}

TEST_CASE("signs of units have letters in ASCII") {
  CHECK(ascii("below 33 °C over 4 m² µ") == "below 33 C over 4 m2 ?");
  CHECK(plain("33 °C, 4 m²", Letters::ascii) == "33 C, 4 m2");
  CHECK(plain("33 °C, 4 m²") == "33 °C, 4 m²");
}

TEST_CASE("broken UTF-8 becomes question marks") {
  CHECK(plain("a\xFF"
              "b") == "a?b");
  CHECK(plain("\xC0\xAF") == "??");       // overlong "/"
  CHECK(plain("\xED\xA0\x80") == "???");  // a surrogate
  CHECK(plain("cut \xE2\x82") == "cut ??");
  CHECK(plain("\xF5\x80\x80\x80") == "????");
}

TEST_CASE("whatever the bytes, the result is printable and a second pass changes nothing") {
  std::mt19937 random(7);
  for (int round = 0; round < 2000; ++round) {
    std::string bytes(random() % 40, ' ');
    for (char& byte : bytes) byte = static_cast<char>(random() & 0xFFu);
    const std::string text = plain(bytes);
    const bool printable = std::none_of(text.begin(), text.end(), [](char letter) {
      return static_cast<unsigned char>(letter) < 32 || letter == 127;
    });
    CHECK(printable);
    CHECK(plain(text) == text);
    const std::string ascii = plain(bytes, Letters::ascii);
    CHECK(columns(ascii) == static_cast<int>(ascii.size()));
  }
}

TEST_CASE("letters beyond ASCII stay or become question marks") {
  CHECK(plain("Åse") == "Åse");
  CHECK(plain("Åse", Letters::ascii) == "?se");
}

TEST_CASE("long text is cut and says so") {
  CHECK(plain("abcdef", Letters::utf8, 3) == "abc...");
  CHECK(plain("abc", Letters::utf8, 3) == "abc");
}

TEST_CASE("columns of wide and combining letters") {
  CHECK(columns("abc") == 3);
  CHECK(columns("Åse") == 3);
  CHECK(columns("漢字") == 4);
  CHECK(columns("e\xCC\x81") == 1);  // e and a combining acute
  CHECK(cut("漢字", 3) == "漢");
}

TEST_CASE("wrapped lines keep within the width, even for one long word") {
  const std::string word(95, 'x');
  for (const std::string& text :
       {std::string("some words that need several lines to be shown"), word, "start " + word + " end",
        std::string("漢字漢字漢字漢字漢字漢字漢字漢字")}) {
    std::string joined;
    for (const std::string& line : wrap(text, 20, "- ", "  ")) {
      CHECK(columns(line) <= 20);
      joined += line.substr(2);
    }
    const auto without_blanks = [](std::string s) {
      s.erase(std::remove(s.begin(), s.end(), ' '), s.end());
      return s;
    };
    CHECK(without_blanks(joined) == without_blanks(text));  // nothing lost
  }
  CHECK(wrap("able until 60 h and", 14) == std::vector<std::string>{"able until", "60 h and"});
  CHECK(wrap("", 20) == std::vector<std::string>{""});
}
