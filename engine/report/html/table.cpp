#include <fmt/format.h>

#include "bide/report/html/elements.hpp"
#include "bide/report/html/escape.hpp"

namespace bide::report::html {

using document::Column;
using document::Table;

namespace {

// More columns than this do not fit a phone: there each row becomes a small list of names and values. That
// takes the table's meaning away from a screen reader, so the roles are spelled out.
constexpr std::size_t columns_on_a_phone = 3;

std::string attributes(const Column& column, bool wide, bool first) {
  std::string out = first ? " scope=\"row\"" : "";
  if (column.number) out += " class=\"number\"";
  if (!wide) return out;
  out += first ? " role=\"rowheader\"" : " role=\"cell\"";
  if (!first) out += fmt::format(" data-name=\"{}\"", escaped(column.name));
  return out;
}

}  // namespace

std::string table_html(const Table& table) {
  const bool wide = table.columns.size() > columns_on_a_phone;
  const auto role = [wide](const char* name) {
    return wide ? fmt::format(" role=\"{}\"", name) : std::string();
  };
  const std::string classes = std::string(wide ? "wide" : "") + (table.on_paper ? "" : " screen");
  std::string out =
      fmt::format("<table{}{}>", role("table"), classes.empty() ? "" : " class=\"" + classes + "\"");
  if (!table.folded && !table.caption.empty())
    out += fmt::format("<caption>{}</caption>", escaped(table.caption));
  out += fmt::format("<thead{}><tr{}>", role("rowgroup"), role("row"));
  for (const Column& column : table.columns) {
    out += fmt::format("<th scope=\"col\"{}{}>{}</th>", role("columnheader"),
                       column.number ? " class=\"number\"" : "", escaped(column.name));
  }
  out += fmt::format("</tr></thead>\n<tbody{}>\n", role("rowgroup"));
  for (const std::vector<std::string>& row : table.rows) {
    out += fmt::format("<tr{}>", role("row"));
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
      const char* element = i == 0 ? "th" : "td";
      out += fmt::format("<{0}{1}>{2}</{0}>", element, attributes(table.columns[i], wide, i == 0),
                         escaped(row.at(i)));
    }
    out += "</tr>\n";
  }
  out += "</tbody></table>\n";
  if (!table.folded) return out;
  return fmt::format("<details><summary>{}</summary>\n{}</details>\n", escaped(table.caption), out);
}

}  // namespace bide::report::html
