#include "dialogue.hpp"

#include <iostream>

#include "terminal.hpp"

namespace bide::tool {

std::string Dialogue::ask(const std::optional<std::string>& given, const Question& question) const {
  if (given) return *given;
  if (!asks_) return question.usual;
  for (;;) {
    say("{} [{}] (? lists the choices): ", question.text, question.usual);
    std::string line;
    if (!std::getline(std::cin, line) || line.empty()) return question.usual;
    if (line == "?") {
      say("{}\n", question.choices());
      continue;
    }
    const std::string wrong = question.wrong ? question.wrong(line) : std::string();
    if (wrong.empty()) return line;
    say("  {}\n", wrong);
  }
}

}  // namespace bide::tool
