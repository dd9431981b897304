// A page as Markdown, for documents that others write: the same sections, each chart as its sentence and its
// table of values.
#pragma once

#include <string>

#include "bide/report/html/page.hpp"

namespace bide::report::html {

// With the standing notice and advice at the top and the glossary left out.
std::string to_markdown(const Page& page);

}  // namespace bide::report::html
