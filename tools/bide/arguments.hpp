// The arguments of a command: each is read strictly and put into a variable of the command's own.
//
// CLI11 stands behind this in one file: its headers cost several seconds in every file that includes them.
#pragma once

#include <cstdint>
#include <functional>
#include <limits>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "manual.hpp"

namespace CLI {
class Option;
}  // namespace CLI

namespace bide::tool {

// Exit codes: 0 done; 1 wrong usage; 2 an input was refused; 3 the run failed (a ledger did not close);
// 4 an output could not be written.
enum ExitCode {
  exit_ok = 0,
  exit_usage = 1,
  exit_input_refused = 2,
  exit_run_failed = 3,
  exit_cannot_write = 4
};

// Both ends belong to it.
template <class T>
struct Allowed {
  T low, high;
};
// Of the field of a scenario at this pointer. Throws std::logic_error for a pointer that is no number's.
Allowed<double> range_of(std::string_view pointer);
inline constexpr Allowed<int> any_threads{0, 1024};
inline constexpr Allowed<std::uint64_t> any_seed{0, std::numeric_limits<std::uint64_t>::max()};

// One argument of a command, for what is said of it beside its value.
class Argument {
 public:
  explicit Argument(CLI::Option* option) : option_(option) {}
  Argument& required();
  Argument& excludes(const Argument& other);
  Argument& needs(const Argument& other);

 private:
  CLI::Option* option_;
};

// A command while it is being declared. `names` as they are typed, "-n,--futures"; without a dash the
// argument stands by itself. Variables must outlive the command. One that is not empty before is shown as the
// default.
class Command {
 public:
  Command(CLI::App* app, int* exit_code) : app_(app), exit_code_(exit_code) {}

  Argument text(const std::string& names, std::string& to, const std::string& help);
  Argument text(const std::string& names, std::optional<std::string>& to, const std::string& help);
  // A file for JSON or a table; "-" is standard output (output.hpp).
  Argument result(const std::string& names, std::string& to, const std::string& help);
  // One or more, each by itself; with a dash the option is repeated.
  Argument texts(const std::string& names, std::vector<std::string>& to, const std::string& help);
  Argument word(const std::string& names, std::string& to, const std::vector<std::string>& allowed,
                const std::string& help);
  Argument word(const std::string& names, std::optional<std::string>& to,
                const std::vector<std::string>& allowed, const std::string& help);
  Argument flag(const std::string& names, bool& to, const std::string& help);

  // Anything but a whole decimal number (or a finite decimal number, for double) in the range is refused.
  Argument number(const std::string& names, int& to, Allowed<int> allowed, const std::string& help);
  Argument number(const std::string& names, std::uint64_t& to, Allowed<std::uint64_t> allowed,
                  const std::string& help);
  Argument number(const std::string& names, std::optional<int>& to, Allowed<int> allowed,
                  const std::string& help);
  Argument number(const std::string& names, std::optional<std::uint64_t>& to, Allowed<std::uint64_t> allowed,
                  const std::string& help);
  Argument number(const std::string& names, std::optional<double>& to, Allowed<double> allowed,
                  const std::string& help);

  // A length of time, "7d", "36h" or "90min".
  // @param allowed h
  Argument span(const std::string& names, std::optional<double>& to_h, Allowed<double> allowed,
                const std::string& help);

  Command& footer(std::string_view text);
  // Done once everything is read; gives the exit code.
  void does(const std::function<int()>& work);

 private:
  CLI::App* app_;
  int* exit_code_;
};

class Program {
 public:
  // @param examples for the manual page
  Program(const std::string& name, const std::string& help, std::string_view footer,
          std::vector<Example> examples);
  ~Program();
  Program(const Program&) = delete;
  Program& operator=(const Program&) = delete;

  Command command(const std::string& name, const std::string& help);

  // Reads the arguments and does what the command named among them does; gives the exit code. `silent`: says
  // nothing of wrong usage or of help.
  int run(int argc, const char* const* argv, bool silent = false);

 private:
  std::unique_ptr<CLI::App> app_;
  int exit_code_ = exit_ok;
};

}  // namespace bide::tool
