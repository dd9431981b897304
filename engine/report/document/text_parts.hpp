// The parts of a document as plain text.
#pragma once

#include <string_view>

#include "bide/report/document/document.hpp"
#include "bide/report/document/text_lines.hpp"

namespace bide::report::document {

// A table, its cells broken within their columns; as many columns abreast as can be read. One with cells too
// long for that becomes a list, a row to an item.
// @param indent begins each line
void write_table(TextLines& to, const Table& table, std::string_view indent);

// Curves against time as small drawings; all else as the values behind it.
void write_chart(TextLines& to, const Chart& chart, std::string_view indent);

}  // namespace bide::report::document
