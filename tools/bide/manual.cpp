#include "manual.hpp"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cctype>
#include <string_view>

#include "bide/core/text.hpp"

namespace bide::tool {
namespace {

ListedArgument listed(const CLI::Option& option) {
  ListedArgument out;
  for (const std::string& name : option.get_snames()) out.flags.push_back("-" + name);
  for (const std::string& name : option.get_lnames()) out.flags.push_back("--" + name);
  if (out.flags.empty()) out.name = option.get_name(true);
  if (option.get_items_expected_max() > 0) out.value = option.get_type_name();
  // CLI11 writes allowed words behind the type: "TEXT:{dry,swim}".
  const std::size_t open = out.value.find(":{"), close = out.value.find('}');
  if (open != std::string::npos && close != std::string::npos) {
    out.allowed = split(out.value.substr(open + 2, close - open - 2), ',');
    out.value = fmt::format("{}", fmt::join(out.allowed, "|"));
  }
  out.help = option.get_description();
  out.usual = option.get_default_str();
  out.required = option.get_required();
  return out;
}

ListedCommand listed(const CLI::App& app) {
  ListedCommand out{app.get_name(), app.get_description(), {}};
  for (const CLI::Option* option : app.get_options()) out.arguments.push_back(listed(*option));
  return out;
}

// Text of roff: no letter is taken for a request or an escape.
std::string roff(std::string_view text) {
  std::string out;
  for (const char letter : text) {
    const bool begins = out.empty() || out.back() == '\n';
    if (begins && (letter == '.' || letter == '\'')) out += "\\&";
    if (letter == '\\')
      out += "\\e";
    else if (letter == '-')
      out += "\\-";
    else
      out += letter;
  }
  return out;
}

std::string paragraphs(const std::string& text) {
  std::string out;
  for (const std::string& line : split(text, '\n')) out += line.empty() ? ".PP\n" : roff(line) + "\n";
  return out;
}

std::string sentence(const ListedArgument& argument) {
  std::string out = argument.help;
  if (argument.required) out += " (required)";
  if (!argument.usual.empty()) out += fmt::format(" (default: {})", argument.usual);
  return out;
}

// What asks for help is told once, of the program.
std::string section(const ListedCommand& command, bool with_help) {
  std::string out;
  for (const ListedArgument& argument : command.arguments) {
    if (!with_help && !argument.flags.empty() && argument.flags.back() == "--help") continue;
    const std::string names =
        argument.flags.empty() ? argument.name : fmt::format("{}", fmt::join(argument.flags, ", "));
    out += fmt::format(".TP\n.B {}\n", roff(names));
    if (!argument.flags.empty() && !argument.value.empty())
      out.insert(out.size() - 1, fmt::format(" \\fI{}\\fR", roff(argument.value)));
    out += roff(sentence(argument)) + "\n";
  }
  return out;
}

// What stands behind the name of a command, "scenario [options]".
std::string synopsis(const ListedCommand& command) {
  std::string out;
  for (const ListedArgument& argument : command.arguments)
    if (argument.flags.empty()) {
      const std::string name = "\\fI" + roff(argument.name) + "\\fR";
      out += argument.required ? " " + name : " [" + name + "]";
    }
  return out + " [options]";
}

std::string flags_of(const ListedCommand& command) {
  std::string out;
  for (const ListedArgument& argument : command.arguments)
    for (const std::string& flag : argument.flags) out += (out.empty() ? "" : " ") + flag;
  return out;
}

std::string upper(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char letter) { return static_cast<char>(std::toupper(letter)); });
  return text;
}

}  // namespace

std::vector<ListedCommand> list(const CLI::App& app) {
  std::vector<ListedCommand> out{listed(app)};
  for (const CLI::App* command : app.get_subcommands([](const CLI::App*) { return true; }))
    out.push_back(listed(*command));
  return out;
}

std::string man_page(const std::vector<ListedCommand>& commands, const std::vector<Example>& examples,
                     const std::string& footer, const std::string& version) {
  const ListedCommand& program = commands.front();
  const std::size_t colon = program.help.find(": ");
  std::string what = colon == std::string::npos ? program.help : program.help.substr(colon + 2);
  if (what.ends_with('.')) what.pop_back();
  std::string out =
      fmt::format(".TH {} 1 \"\" \"{}\" \"User commands\"\n", upper(program.name), roff(version));
  out += fmt::format(".SH NAME\n{} \\- {}\n", program.name, roff(what));
  out += fmt::format(".SH SYNOPSIS\n.B {}\n.I command\n[\\fIarguments\\fR]\n", program.name);
  out += ".SH OPTIONS\n" + section(program, true) +
         ".PP\nBehind a command, \\-\\-help prints what stands here of it.\n.SH COMMANDS\n";
  for (auto command = commands.begin() + 1; command != commands.end(); ++command)
    out += fmt::format(".SS {0} {1}\n{2}.\n.PP\n\\fB{0} {1}\\fR{3}\n", program.name, command->name,
                       roff(command->help), synopsis(*command)) +
           section(*command, false);
  out += ".SH EXAMPLES\n";
  for (const Example& example : examples)
    out += fmt::format(".TP\n.B {}\n{}\n", roff(example.command), roff(example.does));
  return out + ".SH NOTES\n" + paragraphs(footer);
}

std::string bash_completion(const std::vector<ListedCommand>& commands) {
  const std::string& program = commands.front().name;
  std::string names;
  for (auto command = commands.begin() + 1; command != commands.end(); ++command)
    names += (names.empty() ? "" : " ") + command->name;
  std::string out = fmt::format(
      "# Completion of {0} for bash.\n"
      "_{0}() {{\n"
      "  local current=${{COMP_WORDS[COMP_CWORD]}} before=${{COMP_WORDS[COMP_CWORD-1]}}\n"
      "  if [ \"$COMP_CWORD\" -eq 1 ]; then\n"
      "    mapfile -t COMPREPLY < <(compgen -W '{1} {2}' -- \"$current\")\n"
      "    return\n"
      "  fi\n"
      "  local words=\n"
      "  case \"${{COMP_WORDS[1]}} $before\" in\n",
      program, names, flags_of(commands.front()));
  for (const ListedCommand& command : commands)
    for (const ListedArgument& argument : command.arguments)
      for (const std::string& flag : argument.flags)
        if (!argument.allowed.empty())
          out += fmt::format("    '{} {}') words='{}' ;;\n", command.name, flag,
                             fmt::join(argument.allowed, " "));
  out += "  esac\n  if [ -z \"$words\" ] && [[ $current == -* ]]; then\n    case ${COMP_WORDS[1]} in\n";
  for (auto command = commands.begin() + 1; command != commands.end(); ++command)
    out += fmt::format("      {}) words='{}' ;;\n", command->name, flags_of(*command));
  return out + fmt::format(
                   "    esac\n"
                   "  fi\n"
                   "  [ -z \"$words\" ] || mapfile -t COMPREPLY < <(compgen -W \"$words\" -- \"$current\")\n"
                   "}}\n"
                   "complete -o default -F _{0} {0}\n",
                   program);
}

}  // namespace bide::tool
