// The answer to a question in about ten lines, one for each thing that a reader asks first. Filled once,
// printed on the terminal and at the top of a page.
#pragma once

#include <string>
#include <vector>

namespace bide::report {

struct AnswerLine {
  std::string asks;  // "Able until", at most 11 letters; empty: the line goes on with the one before
  std::string says;
};
using Answer = std::vector<AnswerLine>;

// Whether a line goes on with what the one before asks.
// @param i place of the line; the one after the last goes on with nothing
inline bool continues(const Answer& lines, std::size_t i) {
  return i > 0 && i < lines.size() && lines[i].asks.empty();
}

}  // namespace bide::report
