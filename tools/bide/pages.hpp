// Pages as a command prints them and writes them beside: --full, --report and --charts, the same for all.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "arguments.hpp"
#include "bide/report/document/document.hpp"

namespace bide::tool {

struct PageFiles {
  std::string report;  // HTML, or Markdown where it ends in .md
  std::string charts;  // a folder
  bool any() const { return !report.empty() || !charts.empty(); }
};

void add_page_options(Command& command, PageFiles& files);

// Before anything runs: makes the folder of the drawings if it is not there, and says where this program
// draws no PNG. Says what went wrong and returns an exit code.
int ready_pages(const PageFiles& files);

// Prints a page: its first section, or all of it. Says what went wrong and returns an exit code.
int print_page(const report::document::Page& page, bool ascii, bool full);

// Writes what was asked for. Each chart is an SVG and, where the program was built with librsvg, a PNG. Says
// what went wrong and returns an exit code.
// @param read what the command read, which no drawing may overwrite
int write_pages(const report::document::Page& page, const PageFiles& files,
                const std::vector<std::filesystem::path>& read);

}  // namespace bide::tool
