#include "bide/report/document/text.hpp"

#include <algorithm>
#include <cctype>

#include "bide/core/notice.hpp"
#include "bide/report/document/text_parts.hpp"

namespace bide::report::document {
namespace {

// Of a section that has a heading, everything stands a little to the right.
constexpr std::string_view inner = "  ";

std::string upper(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char letter) { return static_cast<char>(std::toupper(letter)); });
  return text;
}

void write_facts(TextLines& to, const Answer& lines) {
  constexpr std::size_t column = 12;
  for (const AnswerLine& each : lines) {
    std::string asks = each.asks;
    asks.resize(column, ' ');
    to.paragraph(each.says, asks, std::string(column, ' '));
  }
}

class WriteBlock {
 public:
  WriteBlock(TextLines& to, std::string_view indent, bool charts)
      : to_(to), indent_(indent), charts_(charts) {}

  void operator()(const Paragraph& each) { to_.paragraph(each.text, indent_, indent_); }
  void operator()(const List& each) {
    for (const std::string& item : each.items)
      to_.paragraph(item, each.to_tick ? "  [ ] " : "  - ", each.to_tick ? "      " : "    ");
  }
  void operator()(const Facts& each) { write_facts(to_, each.lines); }
  void operator()(const Table& each) { write_table(to_, each, indent_); }
  void operator()(const Chart& each) { write_chart(to_, each, indent_); }

  // Whether it is written here; what is folded is kept for name_folded().
  bool shows(const Block& block) {
    const auto* chart = std::get_if<Chart>(&block);
    const auto* table = std::get_if<Table>(&block);
    const bool folded = (chart && chart->folded) || (table && table->folded);
    if (folded) folded_.push_back(chart ? chart->title : table->caption);
    return !folded && (!chart || (charts_ && !chart->told));
  }
  // What a page has behind a title, by those titles.
  void name_folded() {
    if (!charts_ || folded_.empty()) return;
    std::string all;
    for (const std::string& each : folded_) all += (all.empty() ? "" : "; ") + each;
    to_.paragraph("On the page alone (--report): " + all + ".", indent_, indent_);
  }

 private:
  TextLines& to_;
  std::string_view indent_;
  bool charts_;
  std::vector<std::string> folded_;
};

// Paragraphs stand together, and so does a list with what leads to it; all else is set apart.
bool together(const Block& before, const Block& block) {
  const bool text = std::holds_alternative<Paragraph>(before) || std::holds_alternative<List>(before);
  if (std::holds_alternative<Facts>(before)) return std::holds_alternative<Facts>(block);
  return text && (std::holds_alternative<Paragraph>(block) || std::holds_alternative<List>(block));
}

void write_blocks(TextLines& to, const Section& section, std::string_view indent, bool charts) {
  WriteBlock write(to, indent, charts);
  const Block* before = nullptr;
  for (const Block& block : section.blocks) {
    if (!write.shows(block)) continue;
    if (before && !together(*before, block)) to.apart();
    std::visit(write, block);
    before = &block;
  }
  write.name_folded();
}

// Whether anything of it is written or named.
bool shows(const Section& section) {
  return std::any_of(section.blocks.begin(), section.blocks.end(), [](const Block& block) {
    const auto* chart = std::get_if<Chart>(&block);
    return !chart || chart->folded || !chart->told;
  });
}

void write_section(TextLines& to, const Section& section) {
  if (!shows(section)) return;
  to.apart();
  to.paragraph(upper(section.title));
  write_blocks(to, section, inner, true);
}

}  // namespace

std::string to_text(const Page& page, const TextOptions& options) {
  TextLines to(options.width, options.letters);
  to.paragraph(page.title);
  if (!page.lead.empty()) to.paragraph(page.lead);
  for (std::size_t i = 0; i < page.sections.size(); ++i) {
    if (i > 0 && (options.full || page.sections[i].brief)) write_section(to, page.sections[i]);
    if (i > 0) continue;
    to.apart();
    write_blocks(to, page.sections.front(), "", options.full);
  }
  if (!options.full && !page.rest.empty()) to.paragraph(page.rest + ": --full.");
  for (const Section& each : options.also) write_section(to, each);
  to.apart();
  to.paragraph(standing_notice);
  to.paragraph(standing_advice);
  return to.text();
}

}  // namespace bide::report::document
