// Charts as drawings of their own, for other people's documents: SVG with title, legend, sentence and the
// standing notice in it, and with the page's colours (by day) written out, so that nothing else is needed.
//
// Inputs: a chart as pages have it. Output: SVG 1.1, the same bytes for the same chart. Validity: widths of
// letters are estimated, so a legend may stand a little looser than it needs to.
#pragma once

#include <string>
#include <vector>

#include "bide/report/document/document.hpp"

namespace bide::report::html {

std::string svg_of(const document::Chart& chart);

// A chart of a page, with a name for its file: "01_until_when".
struct NamedChart {
  std::string name;
  const document::Chart* chart = nullptr;
};
// Every chart of a page that has something in it, in order. Points into the page.
std::vector<NamedChart> charts_of(const document::Page& page);

}  // namespace bide::report::html
