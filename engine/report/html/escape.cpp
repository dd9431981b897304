#include "bide/report/html/escape.hpp"

#include "bide/report/words/text.hpp"

namespace bide::report::html {

std::string printable(std::string_view text) {
  constexpr std::size_t most_letters = 5000;
  return plain(text, Letters::utf8, most_letters);
}

std::string escaped(std::string_view text) {
  std::string out;
  for (const char letter : printable(text)) {
    switch (letter) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&#39;";
        break;
      default:
        out += letter;
    }
  }
  return out;
}

std::string script_data(const nlohmann::ordered_json& data) {
  constexpr bool ascii_only = true;
  const std::string json = data.dump(-1, ' ', ascii_only, nlohmann::ordered_json::error_handler_t::replace);
  std::string out;
  for (const char letter : json) {
    switch (letter) {
      case '<':
        out += "\\u003c";
        break;
      case '>':
        out += "\\u003e";
        break;
      case '&':
        out += "\\u0026";
        break;
      default:
        out += letter;
    }
  }
  return out;
}

}  // namespace bide::report::html
