#include "pages.hpp"

#include <system_error>
#include <variant>

#include "bide/report/document/markdown.hpp"
#include "bide/report/document/text.hpp"
#include "bide/report/html/page.hpp"
#include "bide/report/html/svg.hpp"
#include "files.hpp"
#include "output.hpp"
#include "png.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

namespace fs = std::filesystem;

int write_charts(const report::document::Page& page, const fs::path& folder,
                 const std::vector<fs::path>& read) {
  const std::vector<report::html::NamedChart> charts = report::html::charts_of(page);
  Files files{read, {}};
  for (const report::html::NamedChart& each : charts)
    for (const char* ending : {".svg", ".png"}) files.written.push_back(folder / (each.name + ending));
  if (const int code = check(files); code != exit_ok) return code;
  for (const report::html::NamedChart& each : charts) {
    const std::string svg = report::html::svg_of(*each.chart);
    if (const int code = write_file(folder / (each.name + ".svg"), svg); code != exit_ok) return code;
    if (!can_draw_png()) continue;
    const auto png = png_of(svg);
    const fs::path path = folder / (each.name + ".png");
    if (const auto* why = std::get_if<PngRefused>(&png))
      return cannot_write(path.string(), why->reason, letters(true));
    if (const int code = write_file(path, std::get<std::string>(png)); code != exit_ok) return code;
  }
  return exit_ok;
}

}  // namespace

void add_page_options(Command& command, PageFiles& files) {
  command.text("--report", files.report,
               "Write a page for a browser or for print, as HTML; as Markdown if the name ends in .md");
  command.text("--charts", files.charts, "Write each chart of the page to this folder, as SVG and PNG");
}

int ready_pages(const PageFiles& files) {
  if (files.charts.empty()) return exit_ok;
  std::error_code error;
  const fs::path folder = files.charts;
  if (!fs::is_directory(folder, error)) fs::create_directory(folder, error);
  if (error) return cannot_write(folder.string(), error.message(), letters(true));
  if (!can_draw_png()) say("{}: SVG only; this program was built without librsvg\n", folder.string());
  return exit_ok;
}

int print_page(const report::document::Page& page, bool ascii, bool full) {
  return put(to_text(page, {terminal_width(), letters(ascii), full}), "", false);
}

int write_pages(const report::document::Page& page, const PageFiles& files,
                const std::vector<fs::path>& read) {
  if (!files.report.empty()) {
    const bool markdown = fs::path(files.report).extension() == ".md";
    const std::string text = markdown ? to_markdown(page) : report::html::to_html(page);
    if (const int code = write_file(files.report, text); code != exit_ok) return code;
  }
  return files.charts.empty() ? exit_ok : write_charts(page, files.charts, read);
}

}  // namespace bide::tool
