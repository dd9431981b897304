// What the terminal can show, and telling it how far a long command has come.
#pragma once

#include <fmt/core.h>

#include <chrono>
#include <cstdint>
#include <string>
#include <utility>

#include "bide/report/words/text.hpp"
#include "bide/scenario/validate.hpp"

namespace bide::tool {

// As the locale says, unless only ASCII is asked for.
report::Letters letters(bool ascii_only);

// Text with the signs of units where the locale has them ("°C" for "degC"), else in ASCII.
std::string shown(const std::string& text);

// A message with the signs of units where the letters have them, else as it is.
std::string with_signs(const std::string& text, report::Letters letters);

// Of standard output; 80 columns at most and when it is no terminal.
int terminal_width();

// To standard error, through the gate of core/printable.hpp: every word of a command that does not go through
// put() (output.hpp) goes through here.
void say_text(const std::string& text);
template <class... Parts>
void say(fmt::format_string<Parts...> text, Parts&&... parts) {
  say_text(fmt::format(text, std::forward<Parts>(parts)...));
}

// To standard error, as "file: /pointer: message".
void print(const scenario::Diagnostics& diagnostics, report::Letters letters, const char* before = "");

// "path: cannot be written: why" on standard error; the exit code for it.
int cannot_write(const std::string& path, const std::string& why, report::Letters letters);

// Tells on standard error how far a command of more than a second has come: in place on a terminal, else in
// lines, and then only when asked.
class ProgressLine {
 public:
  explicit ProgressLine(bool asked);
  void operator()(double fraction, const std::string& more = "");
  // Where what is left is an estimate: tells about how long it takes, at the pace so far.
  void operator()(std::uint64_t done, std::uint64_t left, const std::string& more);
  // Where the end is not known.
  void operator()(const std::string& what);
  void finish() const;

 private:
  using Clock = std::chrono::steady_clock;
  bool on_terminal_, shown_, written_ = false;
  Clock::time_point start_ = Clock::now(), last_ = start_;
};

}  // namespace bide::tool
