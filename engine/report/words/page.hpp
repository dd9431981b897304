// Plain text built line by line within a width.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>

#include "bide/report/words/text.hpp"

namespace bide::report {

class Page {
 public:
  Page(int width, Letters letters) : width_(std::clamp(width, 40, 80)), letters_(letters) {}

  int width() const { return width_; }
  Letters letters() const { return letters_; }

  void line(std::string_view text = "") {
    text_ += cut(text, width_);
    text_ += '\n';
  }
  void heading(std::string_view text) {
    line();
    line(text);
  }
  // A paragraph; later lines are indented by `rest`. Text from outside must pass through outside() first.
  void paragraph(std::string_view text, std::string_view first = "", std::string_view rest = "") {
    for (const std::string& row : wrap(text, width_, first, rest)) line(row);
  }
  void item(std::string_view text) { paragraph(text, "  - ", "    "); }

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
