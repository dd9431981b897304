// A document as plain text for a terminal: no colour, no line wider than asked for. A curve is a small
// drawing, any other chart its values; what a page folds is named alone.
#pragma once

#include <string>
#include <vector>

#include "bide/report/document/document.hpp"
#include "bide/report/words/text.hpp"

namespace bide::report::document {

struct TextOptions {
  int width = 80;  // of a line, terminal columns; limited to [40, 80]
  Letters letters = Letters::utf8;
  bool full = false;               // every section; else the first and brief ones, without charts
  std::vector<Section> also = {};  // after it in any case, before the notice
};

// Title, lead and sections, with the standing notice and advice at the end.
std::string to_text(const Page& page, const TextOptions& options);

}  // namespace bide::report::document
