#include "arguments.hpp"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <charconv>
#include <limits>
#include <sstream>
#include <stdexcept>
#include <type_traits>

#include "bide/scenario/moment.hpp"
#include "bide/scenario/write.hpp"
#include "bide/study/records/fingerprint.hpp"
#include "output.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

using Results = CLI::results_t;

template <class T>
struct IsOptional : std::false_type {};
template <class T>
struct IsOptional<std::optional<T>> : std::true_type {};

// What stands in the help beside an argument that may be left out; nothing when that is nothing.
template <class To>
std::string usual(const To& to) {
  if constexpr (IsOptional<To>::value)
    return to ? fmt::format("{}", *to) : "";
  else
    return fmt::format("{}", to);
}

template <class Number, class To>
Argument add_number(CLI::App& app, const std::string& names, To& to, Allowed<Number> allowed,
                    const std::string& help) {
  const std::string range = fmt::format("{} to {}", allowed.low, allowed.high);
  const auto read = [&to, allowed, range, names](const Results& given) {
    const std::string& text = given.front();
    const char* const end = text.data() + text.size();
    Number value{};
    const auto [stop, wrong] = std::from_chars(text.data(), end, value);
    // Not a number is in no range.
    if (wrong != std::errc() || stop != end || !(value >= allowed.low && value <= allowed.high))
      throw CLI::ValidationError(names, fmt::format("found \"{}\"; allowed {}", text, range));
    to = value;
    return true;
  };
  CLI::Option* option = app.add_option(names, read, help);
  option->type_name(range)->expected(1)->default_str(usual(to));
  return Argument(option);
}

template <class To>
Argument add_text(CLI::App& app, const std::string& names, To& to, const std::string& help,
                  const std::vector<std::string>& allowed = {}, const char* kind = "TEXT") {
  const auto read = [&to](const Results& given) {
    to = given.front();
    return true;
  };
  CLI::Option* option = app.add_option(names, read, help);
  option->type_name(kind)->expected(1)->default_str(usual(to));
  if (!allowed.empty()) option->check(CLI::IsMember(allowed));
  return Argument(option);
}

}  // namespace

Allowed<double> range_of(std::string_view pointer) {
  for (const scenario::FieldLine& line : scenario::field_lines())
    if (line.is_number && line.pointer == pointer) return {line.low, line.high};
  throw std::logic_error(fmt::format("{} is no number of a scenario", pointer));
}

Argument& Argument::required() {
  option_->required();
  return *this;
}
Argument& Argument::excludes(const Argument& other) {
  option_->excludes(other.option_);
  return *this;
}
Argument& Argument::needs(const Argument& other) {
  option_->needs(other.option_);
  return *this;
}

Argument Command::text(const std::string& names, std::string& to, const std::string& help) {
  return add_text(*app_, names, to, help);
}
Argument Command::text(const std::string& names, std::optional<std::string>& to, const std::string& help) {
  return add_text(*app_, names, to, help);
}
Argument Command::result(const std::string& names, std::string& to, const std::string& help) {
  return add_text(*app_, names, to, help + "; - for standard output, with nothing else on it", {}, "FILE");
}
Argument Command::texts(const std::string& names, std::vector<std::string>& to, const std::string& help) {
  CLI::Option* option = app_->add_option(names, to, help);
  if (names.front() == '-') option->expected(1)->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  return Argument(option);
}
Argument Command::word(const std::string& names, std::string& to, const std::vector<std::string>& allowed,
                       const std::string& help) {
  return add_text(*app_, names, to, help, allowed);
}
Argument Command::word(const std::string& names, std::optional<std::string>& to,
                       const std::vector<std::string>& allowed, const std::string& help) {
  return add_text(*app_, names, to, help, allowed);
}
Argument Command::flag(const std::string& names, bool& to, const std::string& help) {
  return Argument(app_->add_flag(names, to, help));
}
Argument Command::number(const std::string& names, int& to, Allowed<int> allowed, const std::string& help) {
  return add_number(*app_, names, to, allowed, help);
}
Argument Command::number(const std::string& names, std::uint64_t& to, Allowed<std::uint64_t> allowed,
                         const std::string& help) {
  return add_number(*app_, names, to, allowed, help);
}
Argument Command::number(const std::string& names, std::optional<int>& to, Allowed<int> allowed,
                         const std::string& help) {
  return add_number(*app_, names, to, allowed, help);
}
Argument Command::number(const std::string& names, std::optional<std::uint64_t>& to,
                         Allowed<std::uint64_t> allowed, const std::string& help) {
  return add_number(*app_, names, to, allowed, help);
}
Argument Command::number(const std::string& names, std::optional<double>& to, Allowed<double> allowed,
                         const std::string& help) {
  return add_number(*app_, names, to, allowed, help);
}

Argument Command::span(const std::string& names, std::optional<double>& to_h, Allowed<double> allowed,
                       const std::string& help) {
  const std::string range = fmt::format("{} to {} h", allowed.low, allowed.high);
  const auto read = [&to_h, allowed, range, names](const Results& given) {
    const std::string& text = given.front();
    const auto value_h = scenario::parse_hours(text);
    if (!value_h || *value_h < allowed.low || *value_h > allowed.high)
      throw CLI::ValidationError(names,
                                 fmt::format("found \"{}\"; allowed {}, as 7d, 36h or 90min", text, range));
    to_h = value_h;
    return true;
  };
  CLI::Option* option = app_->add_option(names, read, help);
  option->type_name("SPAN")->expected(1);
  return Argument(option);
}

Command& Command::footer(std::string_view text) {
  app_->footer(std::string(text));
  return *this;
}

void Command::does(const std::function<int()>& work) {
  app_->callback([work, exit_code = exit_code_] { *exit_code = work(); });
}

Program::Program(const std::string& name, const std::string& help, std::string_view footer,
                 std::vector<Example> examples)
    : app_(std::make_unique<CLI::App>(help, name)) {
  app_->footer(std::string(footer));
  app_->require_subcommand(1);
  const study::Build build = study::build();
  const std::string version = fmt::format("{} {}\nmodel {}\ncompiled by {} for {}", name, build.version,
                                          build.fingerprint, build.compiler, build.instruction_set);
  app_->set_version_flag("--version", version,
                         "Print version, fingerprint of the model, compiler and instruction set");
  // Printed as the version is; asked for when every command has been added.
  const auto prints = [this](const char* flag, const char* sentence, auto text) {
    app_->add_flag_callback(
            flag, [text] { throw CLI::CallForVersion(text(), 0); }, sentence)
        ->group("For packages");
  };
  prints("--man", "Print the manual page",
         [this, examples = std::move(examples), footer = std::string(footer),
          version = fmt::format("{} {}", name, build.version)] {
           return man_page(list(*app_), examples, footer, version);
         });
  prints("--bash-completion", "Print the completion for bash",
         [this] { return bash_completion(list(*app_)); });
}

Program::~Program() = default;

Command Program::command(const std::string& name, const std::string& help) {
  return {app_->add_subcommand(name, help), &exit_code_};
}

int Program::run(int argc, const char* const* argv, bool silent) {
  try {
    app_->parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    std::ostringstream help, wrong;
    const bool asked_for_help = app_->exit(error, help, wrong) == 0;
    if (silent) return asked_for_help ? exit_ok : exit_usage;
    if (!wrong.str().empty()) say("{}", wrong.str());
    const bool for_people = error.get_name() == "CallForHelp";  // not a manual page, nor a completion
    const int written =
        help.str().empty() ? exit_ok : put(for_people ? shown(help.str()) : help.str(), "", false);
    return asked_for_help ? written : exit_usage;
  }
  return exit_code_;
}

}  // namespace bide::tool
