// The functions of libutf8proc that the engine uses (core/printable.cpp), from the Unicode tables that every
// browser has: the library itself is compiled for this machine alone, and its tables would weigh more than
// the page.
#include <emscripten.h>
#include <utf8proc.h>

// A backslash would not outlive the macro: String.fromCharCode(92).
// clang-format off
EM_JS(int, category_in_browser, (int code), {
  const letter = String.fromCodePoint(code);
  return ["Cn", "Cc", "Cf", "Cs", "Co", "Zl", "Zp", "Zs"].findIndex((name) => new RegExp(String.fromCharCode(92) + "p{" + name + "}", "u").test(letter));
});
EM_JS(int, width_in_browser, (int code), {
  const letter = String.fromCodePoint(code);
  const has = (names) => new RegExp("[" + names.map((name) => String.fromCharCode(92) + "p{" + name + "}").join("") + "]", "u").test(letter);
  if (has(["M"])) return 0;
  return has(["Script=Han", "Script=Hiragana", "Script=Katakana", "Script=Hangul", "Emoji_Presentation"]) ? 2 : 1;
});
// clang-format on

extern "C" {

// Those that do not print, and spaces; for all others the category of letters that do.
utf8proc_category_t utf8proc_category(utf8proc_int32_t code) {
  constexpr utf8proc_category_t told[] = {UTF8PROC_CATEGORY_CN, UTF8PROC_CATEGORY_CC, UTF8PROC_CATEGORY_CF,
                                          UTF8PROC_CATEGORY_CS, UTF8PROC_CATEGORY_CO, UTF8PROC_CATEGORY_ZL,
                                          UTF8PROC_CATEGORY_ZP, UTF8PROC_CATEGORY_ZS};
  const int found = category_in_browser(code);
  return found < 0 ? UTF8PROC_CATEGORY_LO : told[found];
}

int utf8proc_charwidth(utf8proc_int32_t code) {
  return width_in_browser(code);
}

// One letter of UTF-8 (RFC 3629): no overlong form, no surrogate, nothing beyond U+10FFFF.
utf8proc_ssize_t utf8proc_iterate(const utf8proc_uint8_t* text, utf8proc_ssize_t bytes,
                                  utf8proc_int32_t* code) {
  *code = -1;
  if (bytes < 1) return 0;
  const int lead = text[0];
  const int length = lead < 0x80   ? 1
                     : lead < 0xC2 ? 0
                     : lead < 0xE0 ? 2
                     : lead < 0xF0 ? 3
                     : lead < 0xF5 ? 4
                                   : 0;
  if (length == 0 || length > bytes) return UTF8PROC_ERROR_INVALIDUTF8;
  int value = length == 1 ? lead : lead & (0x7F >> length);
  for (int i = 1; i < length; ++i) {
    if ((text[i] & 0xC0) != 0x80) return UTF8PROC_ERROR_INVALIDUTF8;
    value = value * 0x40 + (text[i] & 0x3F);
  }
  const bool overlong = (length == 3 && value < 0x800) || (length == 4 && value < 0x10000);
  if (overlong || (value >= 0xD800 && value < 0xE000) || value > 0x10FFFF) return UTF8PROC_ERROR_INVALIDUTF8;
  *code = value;
  return length;
}
}
