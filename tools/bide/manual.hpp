// The command tree as a manual page and as completion for bash: one walk over the declared arguments.
#pragma once

#include <string>
#include <vector>

namespace CLI {
class App;
}  // namespace CLI

namespace bide::tool {

struct ListedArgument {
  std::vector<std::string> flags;    // "-n", "--futures"; empty: it stands by itself
  std::string name;                  // of one that stands by itself
  std::string value;                 // what it takes, "1 to 1024"; empty for a flag
  std::vector<std::string> allowed;  // words, where only some are
  std::string help, usual;
  bool required = false;
};

struct ListedCommand {
  std::string name, help;
  std::vector<ListedArgument> arguments;
};

// The program's own arguments first, under its own name, then every command.
std::vector<ListedCommand> list(const CLI::App& app);

struct Example {
  std::string command, does;  // as it is typed, and a sentence
};

// For man(7).
// @param commands from list()
// @param examples in the order in which they are tried
// @param footer   of the program's help
// @param version  shown at the foot of the page
std::string man_page(const std::vector<ListedCommand>& commands, const std::vector<Example>& examples,
                     const std::string& footer, const std::string& version);

// For bash: commands, then the flags of a command, the words of a flag, else files.
std::string bash_completion(const std::vector<ListedCommand>& commands);

}  // namespace bide::tool
