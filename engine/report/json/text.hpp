// How numbers and text stand in every JSON that this program writes.
#pragma once

#include <cmath>
#include <nlohmann/json.hpp>
#include <string>

namespace bide::report {

// A number with six significant digits, because more would be noise; null when not finite.
inline nlohmann::ordered_json json_number(double value) {
  if (!std::isfinite(value)) return nullptr;
  if (value == 0) return 0.0;
  const double scale = std::pow(10.0, 5 - std::floor(std::log10(std::abs(value))));
  if (!std::isfinite(scale) || scale == 0) return value;
  return std::round(value * scale) / scale;
}

// JSON as text: ASCII only, "<" escaped as well, with a line end at the end.
inline std::string json_text(const nlohmann::ordered_json& json) {
  const std::string ascii = json.dump(1, ' ', true);
  std::string out;
  out.reserve(ascii.size() + 1);
  for (const char letter : ascii) {  // "<" occurs inside strings only
    if (letter == '<') {
      out += "\\u003c";
    } else {
      out += letter;
    }
  }
  return out + "\n";
}

}  // namespace bide::report
