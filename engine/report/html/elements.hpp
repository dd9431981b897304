// The parts of a page as HTML text.
#pragma once

#include "bide/report/html/page.hpp"

namespace bide::report::html {

// What stands in a section, without its title.
std::string blocks_html(const Section& section);

// A table with its caption.
std::string table_html(const Table& table);

// A figure: title, the place where the script draws, the sentence, the table of values, the data.
std::string chart_html(const Chart& chart);

// Table of every value of a chart: a row for each x (or category), a column for each series.
Table values_of(const Chart& chart);

}  // namespace bide::report::html
