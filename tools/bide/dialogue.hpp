// Questions on a terminal, one at a time: each answer is checked at once, a wrong one is asked again with the
// reason, "?" lists what may be answered, and earlier answers are kept.
#pragma once

#include <functional>
#include <optional>
#include <string>

namespace bide::tool {

struct Question {
  std::string text;
  std::string usual;                                       // taken for an empty answer
  std::function<std::string()> choices;                    // for "?", in words
  std::function<std::string(const std::string&)> wrong{};  // why an answer cannot be used; empty: it can
};

class Dialogue {
 public:
  // @param asks false: nobody is asked, what is usual stands
  explicit Dialogue(bool asks) : asks_(asks) {}
  bool asks() const { return asks_; }

  // @param given the answer if it was given before, which is not checked here
  std::string ask(const std::optional<std::string>& given, const Question& question) const;

 private:
  bool asks_;
};

}  // namespace bide::tool
