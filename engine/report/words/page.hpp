// Plain text built line by line within a width.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>

#include "bide/report/words/answer.hpp"
#include "bide/report/words/text.hpp"

namespace bide::report {

// A page of text.
class Page {
 public:
  // @param width   terminal columns; limited to [40, 80]
  // @param letters what may be printed
  Page(int width, Letters letters) : width_(std::clamp(width, 40, 80)), letters_(letters) {}

  int width() const { return width_; }
  Letters letters() const { return letters_; }

  // One line, cut at the width.
  void line(std::string_view text = "") {
    text_ += letters_ == Letters::utf8 ? cut(text, width_) : cut(ascii(text), width_);
    text_ += '\n';
  }
  // A line after an empty one.
  void heading(std::string_view text) {
    line();
    line(text);
  }
  // A paragraph, broken into lines. Text from outside must pass through outside() first.
  // @param text  one line of plain text
  // @param first begins the first line
  // @param rest  begins each later line
  void paragraph(std::string_view text, std::string_view first = "", std::string_view rest = "") {
    for (const std::string& row : wrap(text, width_, first, rest)) line(row);
  }
  // An item of a list.
  void item(std::string_view text) { paragraph(text, "  - ", "    "); }
  // What is asked on the left, what is said beside it.
  void answer(const Answer& answer) {
    constexpr std::size_t column = 12;
    for (const AnswerLine& each : answer) {
      std::string asks = each.asks;
      asks.resize(column, ' ');
      paragraph(outside(each.says, 1000), asks, std::string(column, ' '));
    }
  }

  // Text from outside made fit to print; see plain().
  std::string outside(std::string_view text, std::size_t most_letters = 400) const {
    return plain(text, letters_, most_letters);
  }
  const std::string& text() const { return text_; }

 private:
  int width_;
  Letters letters_;
  std::string text_;
};

}  // namespace bide::report
