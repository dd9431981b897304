// A document as one self-contained HTML file: style, script and data are inside it, nothing is fetched, and
// every chart has its values in a table behind it.
//
// Validity: a page whose series hold some 20,000 points together stays within 1.5 MB; callers with more thin
// them out.
#pragma once

#include <string>

#include "bide/report/document/document.hpp"

namespace bide::report::html {

// With the standing notice and advice at the top and at the bottom, and the glossary at the foot.
std::string to_html(const document::Page& page);

}  // namespace bide::report::html
