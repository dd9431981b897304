// A page as Markdown, for documents that others write: the same sections, each chart as its sentence and some
// of its values; what a page folds away is left out, but for tables.
#pragma once

#include <string>

#include "bide/report/document/document.hpp"

namespace bide::report::document {

// With the standing notice and advice at the top and the glossary left out.
std::string to_markdown(const Page& page);

}  // namespace bide::report::document
