#include "bide/report/html/page.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/core/notice.hpp"
#include "bide/report/html/elements.hpp"
#include "bide/report/html/escape.hpp"
#include "bide/report/words/glossary.hpp"
#include "bide/report/words/made_by.hpp"
#include "bide/report/words/text.hpp"

namespace bide::report::html {

using document::Block;
using document::Chart;
using document::Facts;
using document::List;
using document::Page;
using document::Paragraph;
using document::Section;
using document::Table;

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

struct WriteHtml {
  std::string operator()(const Paragraph& paragraph) const {
    const char* look = paragraph.large ? " class=\"large\"" : paragraph.on_paper ? "" : " class=\"screen\"";
    return fmt::format("<p{}>{}</p>\n", look, escaped(paragraph.text));
  }
  std::string operator()(const List& list) const {
    std::string out = list.to_tick ? "<ul class=\"to-tick\">\n" : "<ul>\n";
    for (const std::string& item : list.items) out += "<li>" + escaped(item) + "</li>\n";
    return out + "</ul>\n";
  }
  std::string operator()(const Table& table) const { return table_html(table); }
  std::string operator()(const Chart& chart) const {
    if (!chart.folded) return chart_html(chart);
    return fmt::format("<details class=\"folded\"><summary>{}</summary>\n{}</details>\n",
                       escaped(chart.title), chart_html(chart));
  }
  std::string operator()(const Facts& facts) const {
    std::string out = facts.large ? "<dl class=\"facts large\">\n" : "<dl class=\"facts\">\n";
    for (std::size_t i = 0; i < facts.lines.size(); ++i) {
      if (!continues(facts.lines, i)) out += fmt::format("<div><dt>{}</dt>", escaped(facts.lines[i].asks));
      out += fmt::format("<dd>{}</dd>", escaped(facts.lines[i].says));
      if (!continues(facts.lines, i + 1)) out += "</div>\n";
    }
    return out + "</dl>\n";
  }
};

// Text for a string of CSS inside a style element.
std::string css_string(std::string_view text) {
  std::string out;
  for (const char letter : ascii(text)) {
    const bool plain =
        letter >= ' ' && letter <= '~' && std::string_view("\"\\<>&'").find(letter) == std::string_view::npos;
    out += plain ? letter : '?';
  }
  return "\"" + out + "\"";
}

// Page numbers, and which run this is, on paper.
std::string print_margins(const Page& page) {
  return fmt::format(
      "@page {{ @bottom-left {{ content: {}; font-size: 7pt; }} @bottom-right {{ content: \"page \" "
      "counter(page) \" of \" counter(pages); font-size: 7pt; }} }}\n",
      css_string(page.foot));
}

// Nothing of it would be on paper but its title.
bool all_folded(const Section& section) {
  return !section.blocks.empty() &&
         std::all_of(section.blocks.begin(), section.blocks.end(), [](const Block& block) {
           const auto* chart = std::get_if<Chart>(&block);
           const auto* table = std::get_if<Table>(&block);
           const auto* paragraph = std::get_if<Paragraph>(&block);
           return (chart && chart->folded) || (table && (table->folded || !table->on_paper)) ||
                  (paragraph && !paragraph->on_paper);
         });
}

std::string glossary_html() {
  std::string out = "<details class=\"glossary\"><summary>Words used here</summary>\n<dl class=\"facts\">\n";
  for (const Term& each : glossary())
    out += fmt::format("<div><dt>{}</dt><dd>{}</dd></div>\n", escaped(each.word), escaped(each.meaning));
  return out + "</dl></details>\n";
}

// Nothing may be loaded, and no script may run but the one this program wrote. Pictures are those it makes
// itself, of a chart that is saved.
std::string head(const Page& page) {
  const std::string script = embedded::charts_script.empty()
                                 ? std::string("'none'")
                                 : fmt::format("'sha256-{}'", embedded::charts_hash);
  return fmt::format(
      "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src {}; "
      "style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'\">\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
      "<meta name=\"color-scheme\" content=\"light dark\">\n"
      "<meta name=\"referrer\" content=\"no-referrer\">\n<title>{}</title>\n<style>\n{}{}</style>\n</head>\n",
      script, escaped(page.title), embedded::style, print_margins(page));
}

std::string contents(const Page& page, std::size_t begin) {
  if (page.sections.size() < begin + 3) return "";
  std::string out = "<nav aria-label=\"Contents\"><ul>\n";
  for (std::size_t i = begin; i < page.sections.size(); ++i)
    out += fmt::format("<li><a href=\"#section-{}\">{}</a></li>\n", i + 1, escaped(page.sections[i].title));
  return out + "</ul></nav>\n";
}

}  // namespace

std::string blocks_html(const Section& section) {
  std::string out;
  for (const Block& block : section.blocks) out += std::visit(WriteHtml{}, block);
  return out;
}

std::string to_html(const Page& page) {
  std::string out = head(page);
  out += fmt::format("<body>\n<header>\n{}<h1>{}</h1>\n<p class=\"lead\">{}</p>\n</header>\n<main>\n",
                     cautions(), escaped(page.title), escaped(page.lead));
  if (embedded::charts_script.empty())
    out += "<p>This program was built without its drawing script: each chart is a table here.</p>\n";
  const std::size_t begin = !page.sections.empty() && page.sections.front().first_screen ? 1 : 0;
  for (std::size_t i = 0; i < page.sections.size(); ++i) {
    const Section& section = page.sections[i];
    if (i == begin) out += contents(page, begin);
    out += fmt::format("<section id=\"section-{}\"{}>\n<h2>{}</h2>\n", i + 1,
                       section.first_screen  ? " class=\"first\""
                       : all_folded(section) ? " class=\"screen\""
                       : section.own_page    ? " class=\"own-page\""
                                             : "",
                       escaped(section.title));
    out += blocks_html(section) + "</section>\n";
  }
  out += fmt::format("</main>\n<footer>\n{}<p class=\"foot\">{}</p>\n<p class=\"foot\">{}</p>\n{}</footer>\n",
                     glossary_html(), escaped(page.foot), escaped(made_by_line()), cautions());
  if (!embedded::charts_script.empty()) out += fmt::format("<script>{}</script>\n", embedded::charts_script);
  return out + "</body>\n</html>\n";
}

}  // namespace bide::report::html
