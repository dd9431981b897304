// The parts of a page as HTML text.
#pragma once

#include "bide/report/document/document.hpp"

namespace bide::report::html {

// What stands in a section, without its title.
std::string blocks_html(const document::Section& section);

// A table with its caption.
std::string table_html(const document::Table& table);

// A figure: title, the place where the script draws, the sentence, the table of values, the data.
std::string chart_html(const document::Chart& chart);

}  // namespace bide::report::html
