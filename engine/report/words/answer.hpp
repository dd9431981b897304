// The answer to a question in about ten lines, one for each thing that a reader asks first. Filled once,
// printed on the terminal and at the top of a page.
#pragma once

#include <string>
#include <vector>

namespace bide::report {

struct AnswerLine {
  std::string asks;  // "Able until", at most 11 letters
  std::string says;
};
using Answer = std::vector<AnswerLine>;

}  // namespace bide::report
