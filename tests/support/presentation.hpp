// What every output must keep to, whatever its form.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <cctype>
#include <string>

namespace bide::test {

// Escape sequences, C1 controls, a bidirectional override, broken UTF-8, line ends, and the letters that mean
// something to CSV, JSON and HTML.
inline const std::string hostile =
    "x\x1b[2J\x1b]0;t\x07\r\n\t,\"quoted\",'=1+1' <script>alert(1)</script> \xC2\x9B"
    "31m \xE2\x80\xAE \xFF\xFE {\"a\":1} \\ end";

// The text on one line, runs of blanks as one.
inline std::string unwrapped(const std::string& text) {
  std::string out;
  for (const char letter : text) {
    const bool blank = letter == ' ' || letter == '\n';
    if (!blank) {
      out += letter;
    } else if (out.empty() || out.back() != ' ') {
      out += ' ';
    }
  }
  return out;
}

inline void check_no_promise(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char letter) { return static_cast<char>(std::tolower(letter)); });
  for (const char* word : {"safe", "surviv", "guarantee", "will live", "no risk"}) {
    INFO(word);
    CHECK(text.find(word) == std::string::npos);
  }
}

}  // namespace bide::test
