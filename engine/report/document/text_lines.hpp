// Plain text built line by line within a width.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>

#include "bide/report/words/text.hpp"

namespace bide::report::document {

class TextLines {
 public:
  // @param width   terminal columns; limited to [40, 80]
  // @param letters what may be printed
  TextLines(int width, Letters letters) : width_(std::clamp(width, 40, 80)), letters_(letters) {}

  int width() const { return width_; }
  Letters letters() const { return letters_; }

  // One line of plain text, cut at the width.
  void line(std::string_view text = "") {
    text_ += letters_ == Letters::utf8 ? cut(text, width_) : cut(ascii(text), width_);
    text_ += '\n';
  }
  // An empty line, unless there is one already or nothing stands above it.
  void apart() {
    if (!text_.empty() && !text_.ends_with("\n\n")) line();
  }
  // A paragraph of text from anywhere, broken into lines.
  // @param first begins the first line
  // @param rest  begins each later line
  void paragraph(std::string_view text, std::string_view first = "", std::string_view rest = "") {
    for (const std::string& row : wrap(fit(text), width_, first, rest)) line(row);
  }
  // Text from anywhere made fit to print; see plain().
  std::string fit(std::string_view text) const {
    constexpr std::size_t most_letters = 2000;
    return plain(text, letters_, most_letters);
  }
  const std::string& text() const { return text_; }

 private:
  int width_;
  Letters letters_;
  std::string text_;
};

}  // namespace bide::report::document
