// Decimal digits with a comma between groups of three before the point: "15,000", "-1,234.5".
#pragma once

#include <algorithm>
#include <string>
#include <string_view>

namespace bide {

// Puts the commas in.
// @param digits a decimal number as text, with or without a minus sign and a point; no exponent
inline std::string with_thousands(std::string_view digits) {
  std::string out;
  const std::size_t whole = std::min(digits.find('.'), digits.size());
  for (std::size_t i = 0; i < digits.size(); ++i) {
    if (i > 0 && i < whole && (whole - i) % 3 == 0 && digits[i - 1] != '-') out.push_back(',');
    out.push_back(digits[i]);
  }
  return out;
}

}  // namespace bide
