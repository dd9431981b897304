#include "terminal.hpp"

#include <fmt/format.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cctype>
#include <cstdio>
#include <cstdlib>

#include "arguments.hpp"
#include "bide/core/printable.hpp"
#include "bide/core/text.hpp"
#include "bide/core/units.hpp"
#include "bide/report/words/units.hpp"

namespace bide::tool {

namespace {

bool utf8_locale() {
  for (const char* name : {"LC_ALL", "LC_CTYPE", "LANG"}) {
    const char* value = std::getenv(name);
    if (value == nullptr || *value == '\0') continue;
    const std::string locale = lower_case(value);
    return locale.find("utf-8") != std::string::npos || locale.find("utf8") != std::string::npos;
  }
  return false;
}

}  // namespace

report::Letters letters(bool ascii_only) {
  return utf8_locale() && !ascii_only ? report::Letters::utf8 : report::Letters::ascii;
}

std::string shown(const std::string& text) {
  const std::string signs = report::unit_signs(text);
  return letters(false) == report::Letters::utf8 ? signs : report::ascii(signs);
}

std::string with_signs(const std::string& text, report::Letters letters) {
  return letters == report::Letters::utf8 ? report::unit_signs(text) : text;
}

int terminal_width() {
  constexpr int widest = 80;
  winsize size{};
  if (::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0 || size.ws_col == 0) return widest;
  return std::min<int>(size.ws_col, widest);
}

void say_text(const std::string& text) {
  const std::string shown = printable_lines(text);
  std::fwrite(shown.data(), 1, shown.size(), stderr);
}

void print(const scenario::Diagnostics& diagnostics, report::Letters letters, const char* before) {
  constexpr std::size_t most_letters = 1000;
  for (const scenario::Diagnostic& each : diagnostics) {
    say("{}{}\n", before, report::plain(with_signs(to_string(each), letters), letters, most_letters));
  }
}

int cannot_write(const std::string& path, const std::string& why, report::Letters letters) {
  say("{}: cannot be written: {}\n", report::plain(path, letters), report::plain(why, letters));
  return exit_cannot_write;
}

ProgressLine::ProgressLine(bool asked)
    : on_terminal_(::isatty(STDERR_FILENO) == 1), shown_(asked || on_terminal_) {}

void ProgressLine::operator()(double fraction, const std::string& more) {
  (*this)(fmt::format("{:.0f} %{}", 100 * fraction, more));
}

void ProgressLine::operator()(std::uint64_t done, std::uint64_t left, const std::string& more) {
  const std::chrono::duration<double> so_far = Clock::now() - start_;
  const double left_s =
      so_far.count() * static_cast<double>(left) / static_cast<double>(std::max<std::uint64_t>(done, 1));
  constexpr double in_minutes_from_s = 100;
  const std::string span = left_s < in_minutes_from_s ? fmt::format("{:.0f} s", left_s)
                                                      : fmt::format("{:.0f} min", left_s / minute_s);
  (*this)(fmt::format("about {} left{}", span, more));
}

void ProgressLine::operator()(const std::string& what) {
  if (!shown_) return;
  const auto now = Clock::now();
  const std::chrono::duration<double> since_start = now - start_, since_last = now - last_;
  if (since_start.count() < 1 || since_last.count() < (on_terminal_ ? 0.2 : 1.0)) return;
  last_ = now;
  written_ = true;
  fmt::print(stderr, "{}running: {}{}", on_terminal_ ? "\r" : "", what, on_terminal_ ? "" : "\n");
  std::fflush(stderr);
}

void ProgressLine::finish() const {
  if (written_ && on_terminal_) fmt::print(stderr, "\r{:60}\r", "");
}

}  // namespace bide::tool
