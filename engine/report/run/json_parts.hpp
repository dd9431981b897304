// How numbers and text stand in every JSON this program writes.
#pragma once

#include <cmath>
#include <nlohmann/json.hpp>
#include <string>

namespace bide::report {

// Six significant digits: more would be noise. Null when not finite.
inline nlohmann::ordered_json json_number(double value) {
  if (!std::isfinite(value)) return nullptr;
  if (value == 0) return 0.0;
  const double scale = std::pow(10.0, 5 - std::floor(std::log10(std::abs(value))));
  if (!std::isfinite(scale) || scale == 0) return value;
  return std::round(value * scale) / scale;
}

// ASCII only, "<" as an escape too, ending in a line end.
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
