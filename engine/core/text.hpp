// Small work on texts of ASCII.
#pragma once

#include <cctype>
#include <string>
#include <string_view>
#include <vector>

namespace bide {

// The parts between the letters `at`: one more than there are of these.
inline std::vector<std::string> split(std::string_view text, char at) {
  std::vector<std::string> out(1);
  for (const char letter : text) {
    if (letter == at)
      out.emplace_back();
    else
      out.back() += letter;
  }
  return out;
}

inline std::string lower_case(std::string_view text) {
  std::string out(text);
  for (char& letter : out) letter = static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
  return out;
}

// A name for files and columns: letters and digits, and one underscore for any run of others between them.
inline std::string underscored(std::string_view text) {
  std::string out;
  bool between = false;
  for (const char letter : text) {
    const auto byte = static_cast<unsigned char>(letter);
    if (byte >= 128 || !std::isalnum(byte)) {
      between = true;
      continue;
    }
    if (between && !out.empty()) out += '_';
    between = false;
    out += letter;
  }
  return out;
}

}  // namespace bide
