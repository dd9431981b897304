#include "bide/report/document/markdown.hpp"

#include <fmt/format.h>

#include "bide/core/notice.hpp"
#include "bide/report/document/values.hpp"
#include "bide/report/words/made_by.hpp"
#include "bide/report/words/text.hpp"

namespace bide::report::document {
namespace {

// Text of any origin as plain words of Markdown: nothing in it is a mark.
std::string plain_words(std::string_view text) {
  constexpr std::size_t most_letters = 5000;
  std::string out;
  for (const char letter : plain(text, Letters::utf8, most_letters)) {
    if (letter == '<' || letter == '>' || letter == '&') {  // Markdown lets HTML through
      out += letter == '<' ? "&lt;" : letter == '>' ? "&gt;" : "&amp;";
      continue;
    }
    if (std::string_view("\\`*_{}[]#|~!").find(letter) != std::string_view::npos) out += '\\';
    out += letter;
  }
  return out;
}

std::string table(const Table& table) {
  std::string out = table.caption.empty() ? "" : fmt::format("*{}*\n\n", plain_words(table.caption));
  std::string rule = "|";
  out += '|';
  for (const Column& column : table.columns) {
    out += fmt::format(" {} |", plain_words(column.name));
    rule += column.number ? " ---: |" : " --- |";
  }
  out += '\n' + rule + '\n';
  for (const std::vector<std::string>& row : table.rows) {
    out += '|';
    for (const std::string& cell : row) out += fmt::format(" {} |", plain_words(cell));
    out += '\n';
  }
  return out + '\n';
}

// Of a long curve some values, evenly spaced, with the last.
Table some_of(Table values) {
  constexpr std::size_t most = 12;
  const std::size_t every = (values.rows.size() + most - 1) / most;
  std::vector<std::vector<std::string>> kept;
  for (std::size_t i = 0; i < values.rows.size(); ++i)
    if (i % every == 0 || i + 1 == values.rows.size()) kept.push_back(std::move(values.rows[i]));
  values.rows = std::move(kept);
  return values;
}

struct WriteMarkdown {
  std::string operator()(const Paragraph& paragraph) const {
    const char* mark = paragraph.large ? "**" : "";
    return fmt::format("{0}{1}{0}\n\n", mark, plain_words(paragraph.text));
  }
  std::string operator()(const List& list) const {
    std::string out;
    for (const std::string& item : list.items)
      out += fmt::format("- {}{}\n", list.to_tick ? "[ ] " : "", plain_words(item));
    return out + '\n';
  }
  std::string operator()(const Table& each) const { return table(each); }
  std::string operator()(const Chart& chart) const {
    if (chart.folded || chart.told) return "";
    return fmt::format("### {}\n\n{}\n\n{}", plain_words(chart.title), plain_words(chart.sentence),
                       table(some_of(values_of(chart))));
  }
  std::string operator()(const Facts& facts) const {
    std::string out;
    for (std::size_t i = 0; i < facts.lines.size(); ++i) {
      const std::string says = plain_words(facts.lines[i].says);
      out += continues(facts.lines, i)
                 ? fmt::format("  - {}\n", says)
                 : fmt::format("- **{}**: {}\n", plain_words(facts.lines[i].asks), says);
    }
    return out + '\n';
  }
};

}  // namespace

std::string to_markdown(const Page& page) {
  std::string out = fmt::format("# {}\n\n{}\n\n> {}\n> {}\n\n", plain_words(page.title),
                                plain_words(page.lead), standing_notice, standing_advice);
  for (const Section& section : page.sections) {
    out += fmt::format("## {}\n\n", plain_words(section.title));
    for (const Block& block : section.blocks) out += std::visit(WriteMarkdown{}, block);
  }
  if (!page.foot.empty()) out += plain_words(page.foot) + "\n\n";
  return out + plain_words(made_by_line()) + '\n';
}

}  // namespace bide::report::document
