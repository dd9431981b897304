#include "bide/report/html/page.hpp"

#include <fmt/format.h>

#include "bide/core/notice.hpp"
#include "bide/report/html/elements.hpp"
#include "bide/report/html/escape.hpp"

namespace bide::report::html {

// Written at build time: see engine/report/html/charts/bundle.mjs and CMakeLists.txt.
namespace embedded {
extern const std::string_view style;
extern const std::string_view charts_script;
extern const std::string_view charts_hash;  // of the script, SHA-256 in base 64
}  // namespace embedded

namespace {

std::string cautions() {
  return fmt::format("<p class=\"notice\">{}</p>\n<p class=\"advice\">{}</p>\n", escaped(standing_notice),
                     escaped(standing_advice));
}

struct Write {
  std::string operator()(const Paragraph& paragraph) const {
    return (paragraph.large ? "<p class=\"large\">" : "<p>") + escaped(paragraph.text) + "</p>\n";
  }
  std::string operator()(const List& list) const {
    std::string out = list.to_tick ? "<ul class=\"to-tick\">\n" : "<ul>\n";
    for (const std::string& item : list.items) out += "<li>" + escaped(item) + "</li>\n";
    return out + "</ul>\n";
  }
  std::string operator()(const Table& table) const { return table_html(table); }
  std::string operator()(const Chart& chart) const { return chart_html(chart); }
};

// Nothing may be loaded, and no script may run but the one this program wrote.
std::string head(const Page& page) {
  const std::string script = embedded::charts_script.empty()
                                 ? std::string("'none'")
                                 : fmt::format("'sha256-{}'", embedded::charts_hash);
  return fmt::format(
      "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src {}; "
      "style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'\">\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
      "<meta name=\"color-scheme\" content=\"light dark\">\n"
      "<meta name=\"referrer\" content=\"no-referrer\">\n<title>{}</title>\n<style>\n{}</style>\n</head>\n",
      script, escaped(page.title), embedded::style);
}

std::string contents(const Page& page) {
  if (page.sections.size() < 3) return "";
  std::string out = "<nav aria-label=\"Contents\"><ul>\n";
  for (std::size_t i = 0; i < page.sections.size(); ++i)
    out += fmt::format("<li><a href=\"#section-{}\">{}</a></li>\n", i + 1, escaped(page.sections[i].title));
  return out + "</ul></nav>\n";
}

}  // namespace

std::string to_html(const Page& page) {
  std::string out = head(page);
  out += fmt::format("<body>\n<header>\n{}<h1>{}</h1>\n<p class=\"lead\">{}</p>\n{}</header>\n<main>\n",
                     cautions(), escaped(page.title), escaped(page.lead), contents(page));
  if (embedded::charts_script.empty())
    out += "<p>This program was built without its drawing script: each chart is a table here.</p>\n";
  for (std::size_t i = 0; i < page.sections.size(); ++i) {
    const Section& section = page.sections[i];
    out += fmt::format("<section id=\"section-{}\"{}>\n<h2>{}</h2>\n", i + 1,
                       section.own_page ? " class=\"own-page\"" : "", escaped(section.title));
    for (const Block& block : section.blocks) out += std::visit(Write{}, block);
    out += "</section>\n";
  }
  out += fmt::format("</main>\n<footer>\n{}</footer>\n", cautions());
  if (!embedded::charts_script.empty()) out += fmt::format("<script>{}</script>\n", embedded::charts_script);
  return out + "</body>\n</html>\n";
}

}  // namespace bide::report::html
