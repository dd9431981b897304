#include "bide/core/printable.hpp"

#include <fmt/format.h>
#include <utf8proc.h>

#include <algorithm>

namespace bide {
namespace {

// JSON's escape: codes beyond four digits as a pair of surrogates (RFC 8259, section 7).
void append_escape(std::string& out, std::int32_t code) {
  constexpr std::int32_t first_of_pairs = 0x10000, high = 0xD800, low = 0xDC00, bits = 10, mask = 0x3FF;
  if (code < first_of_pairs) {
    out += fmt::format("\\u{:04X}", code);
    return;
  }
  const std::int32_t rest = code - first_of_pairs;
  out += fmt::format("\\u{:04X}\\u{:04X}", high + (rest >> bits), low + (rest & mask));
}

std::string escaped(std::string_view text, bool line_feeds_stay) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t i = 0; i < text.size();) {
    const Letter letter = letter_at(text, i);
    const std::string_view bytes = text.substr(i, letter.bytes);
    i += letter.bytes;
    if (prints(letter.code) || (line_feeds_stay && letter.code == '\n'))
      out += bytes;
    else if (letter.code < 0)
      out += fmt::format("\\x{:02X}", static_cast<unsigned char>(bytes.front()));
    else
      append_escape(out, letter.code);
  }
  return out;
}

}  // namespace

Letter letter_at(std::string_view text, std::size_t at) {
  constexpr unsigned char first_beyond_ascii = 0x80;
  const auto lead = static_cast<unsigned char>(text[at]);
  if (lead < first_beyond_ascii) return {lead, 1};
  const auto* from = reinterpret_cast<const utf8proc_uint8_t*>(text.data()) + at;
  constexpr std::size_t longest = 4;
  utf8proc_int32_t code = -1;
  const auto bytes =
      utf8proc_iterate(from, static_cast<utf8proc_ssize_t>(std::min(longest, text.size() - at)), &code);
  return bytes > 0 ? Letter{code, static_cast<std::size_t>(bytes)} : Letter{};
}

bool prints(std::int32_t code) {
  constexpr std::int32_t first_printing = 0x20, last_printing = 0x7E;
  if (code >= first_printing && code <= last_printing) return true;
  if (code < 0) return false;
  switch (utf8proc_category(code)) {
    case UTF8PROC_CATEGORY_CN:
    case UTF8PROC_CATEGORY_CC:
    case UTF8PROC_CATEGORY_CF:
    case UTF8PROC_CATEGORY_CS:
    case UTF8PROC_CATEGORY_CO:
    case UTF8PROC_CATEGORY_ZL:
    case UTF8PROC_CATEGORY_ZP:
      return false;
    default:
      return true;
  }
}

bool is_blank(std::int32_t code) {
  return code == ' ' || (code >= 0 && utf8proc_category(code) == UTF8PROC_CATEGORY_ZS);
}

int columns_of(std::int32_t code) {
  return code < 0 ? 1 : utf8proc_charwidth(code);
}

std::string printable(std::string_view text) {
  return escaped(text, false);
}

std::string printable_lines(std::string_view text) {
  return escaped(text, true);
}

std::optional<std::size_t> first_byte_not_utf8(std::string_view text) {
  for (std::size_t i = 0; i < text.size();) {
    const Letter letter = letter_at(text, i);
    if (letter.code < 0) return i;
    i += letter.bytes;
  }
  return std::nullopt;
}

std::optional<std::string> why_not_utf8(std::string_view text) {
  const std::optional<std::size_t> bad = first_byte_not_utf8(text);
  if (!bad) return std::nullopt;
  return fmt::format("found byte 0x{:02X} at offset {}, which is not UTF-8",
                     static_cast<unsigned char>(text[*bad]), *bad);
}

}  // namespace bide
