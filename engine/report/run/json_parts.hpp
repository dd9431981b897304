// Format of numbers and text in every JSON that this program writes.
#pragma once

#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>

#include "bide/core/units.hpp"
#include "bide/report/words/made_by.hpp"
#include "bide/report/words/text.hpp"
#include "bide/scenario/validate.hpp"

namespace bide::report {

// A number with six significant digits, because more would be noise; null when not finite.
inline nlohmann::ordered_json json_number(double value) {
  if (!std::isfinite(value)) return nullptr;
  if (value == 0) return 0.0;
  const double scale = std::pow(10.0, 5 - std::floor(std::log10(std::abs(value))));
  if (!std::isfinite(scale) || scale == 0) return value;
  return std::round(value * scale) / scale;
}

// A time in hours; null when it lies beyond the horizon.
// @param at_s s since the start
inline nlohmann::ordered_json json_hours(const std::optional<double>& at_s) {
  return at_s ? json_number(*at_s / hour_s) : nlohmann::ordered_json(nullptr);
}

// What is doubtful in a scenario.
inline nlohmann::ordered_json json_cautions(const scenario::Diagnostics& cautions) {
  constexpr std::size_t most_letters = 400;
  auto out = nlohmann::ordered_json::array();
  for (const scenario::Diagnostic& caution : cautions)
    out.push_back({{"pointer", plain(caution.pointer)},
                   {"message", plain(caution.message, Letters::utf8, most_letters)}});
  return out;
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
