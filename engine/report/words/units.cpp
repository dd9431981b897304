#include "bide/report/words/units.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <string_view>
#include <utility>

namespace bide::report {
namespace {

constexpr std::array<std::pair<std::string_view, std::string_view>, 3> signs{
    {{"degC", "°C"}, {"m2", "m²"}, {"m3", "m³"}}};

bool of_word(char letter) {
  return std::isalnum(static_cast<unsigned char>(letter)) != 0 || letter == '_';
}

}  // namespace

std::string unit_signs(const std::string& text) {
  std::string out;
  bool quoted = false;
  for (std::size_t at = 0; at < text.size();) {
    if (!of_word(text[at])) {
      quoted = text[at] == '"' ? !quoted : quoted && text[at] != '\n';
      out += text[at++];
      continue;
    }
    std::size_t end = at;
    while (end < text.size() && of_word(text[end])) ++end;
    const std::string_view word = std::string_view(text).substr(at, end - at);
    const auto* const sign =
        std::find_if(signs.begin(), signs.end(), [&](const auto& each) { return each.first == word; });
    out += quoted || sign == signs.end() ? word : sign->second;
    at = end;
  }
  return out;
}

}  // namespace bide::report
