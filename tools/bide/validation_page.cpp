#include "validation_page.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <regex>
#include <sstream>
#include <string_view>
#include <utility>

#include "validation/tables.hpp"

namespace bide::validation::embedded {
extern const std::string_view README;
}

namespace bide::tool {

namespace {

using namespace report::document;
using validation::Row;

Table table_of(const validation::Cells& cells, const std::string& caption, bool folded) {
  Table out;
  out.caption = caption;
  out.folded = folded;
  for (std::size_t i = 0; i < cells.names.size(); ++i)
    out.columns.push_back({cells.names[i], cells.numbers[i]});
  out.rows = cells.rows;
  return out;
}

std::string named(const std::string& condition, const char* what) {
  return condition.empty() ? what : condition + ", " + what;
}

std::vector<Point> points_of(const std::vector<validation::CurvePoint>& points) {
  std::vector<Point> out;
  for (const validation::CurvePoint& p : points)
    out.push_back({p.x, p.y, p.low.value_or(Point::none), p.high.value_or(Point::none), ""});
  return out;
}

// The model's line with, where it carries one, its range as a band under it.
void add_model(Chart& chart, const validation::Condition& condition, int style, bool by_category) {
  if (condition.model.empty()) return;
  std::vector<Point> model = points_of(condition.model);
  if (condition.model.front().low) {
    Series band{named(condition.name, "model, range"), Kind::band, {}, style};
    for (Point& p : model) {
      band.points.push_back({p.x, Point::none, p.low, p.high, ""});
      p.low = p.high = Point::none;
    }
    chart.series.push_back(band);
  }
  chart.series.push_back(
      {named(condition.name, "model"), by_category ? Kind::points : Kind::line, std::move(model), style});
}

Chart chart_of(const validation::Curve& curve) {
  const bool by_category = !curve.categories.empty();
  Chart out;
  out.title = curve.title;
  out.sentence = curve.says;
  out.x = {curve.x_label, curve.x_unit};
  out.y = {curve.y_label, curve.y_unit, curve.y_from_zero};
  out.categories = curve.categories;
  for (std::size_t i = 0; i < curve.conditions.size(); ++i) {
    const validation::Condition& condition = curve.conditions[i];
    const int style = static_cast<int>(i);
    add_model(out, condition, by_category ? style + 1 : style, by_category);
    if (condition.published.empty()) continue;
    Series published{named(condition.name, "published"), by_category ? Kind::bars : Kind::points,
                     points_of(condition.published), style};
    // Bars lie under the points of the model.
    out.series.insert(by_category ? out.series.begin() : out.series.end(), published);
  }
  return out;
}

Section how_to_read() {
  return {
      "How to read this page",
      {List{
          {"A row sets one published finding beside what the model gives under the same conditions. It "
           "holds when the "
           "model lies within an interval that was fixed, with its reason, before the model was run.",
           "Rows that were used to set a number of the model are called calibrated. They hold because "
           "they were made to, "
           "and have no vote.",
           "A study has one vote, however many rows it has: it holds when more than half of its "
           "independent rows do.",
           "Error over trivial error is what is left of the error of a prediction that needs no model: "
           "nothing changes, or "
           "core temperature stays 37 degC. The same is said of Gagge's two-node model. Below 1 the "
           "model is nearer.",
           "Measured means seen on people, animals or a manikin; predicted by others means another "
           "model or table; a rule "
           "is a standard or a closed form, and checks the code rather than nature. An account is what "
           "befell a "
           "crew: it holds when what was told lies within the middle 95 % of the model's futures, and has no "
           "vote, since accounts are told of those who lived.",
           "A finding whose class is from memory was recalled, and its source not read. One that was seen "
           "before was known while a direction for the model was chosen.",
           "Published findings contradict each other here and there. Attainable is the number of rows that "
           "could hold at once.",
           "In the charts, lines are the model. Hollow points and bars are published; their whiskers "
           "are what the row "
           "allows, or the spread that the text names."}}}};
}

// The items of a list in validation/README.md, which says once for all what the rows come to.
List listed_under(std::string_view heading) {
  static const std::regex link(R"(\[([^\]]*)\]\([^)]*\))");
  const std::string_view text = validation::embedded::README;
  const std::size_t from = text.find(heading), to = text.find("\n## ", from + 1);
  std::istringstream lines{std::string(text.substr(from, to - from))};
  List out;
  for (std::string line; std::getline(lines, line);) {
    if (line.rfind("- ", 0) != 0) continue;
    line.erase(std::remove_if(line.begin(), line.end(), [](char c) { return c == '*' || c == '`'; }),
               line.end());
    out.items.push_back(std::regex_replace(line.substr(2), link, "$1"));
  }
  return out;
}

Section trust() {
  return {"What is trusted, weak, or without any data",
          {Paragraph{"Trusted: findings that were not used to set the model, which it meets within margins "
                     "that it could "
                     "have missed."},
           listed_under("## What is trusted"), Paragraph{"Weak:"}, listed_under("## What is weak"),
           Paragraph{"Without any data:"}, listed_under("## What has no data at all")}};
}

// Rows that miss for one reason stand together.
Section misses(const std::vector<Row>& rows) {
  std::vector<std::pair<std::string, std::string>> reasons;  // with their rows, in the order of the table
  for (const Row& r : rows) {
    if (r.holds()) continue;
    const std::string reason = r.topic + ": " + r.why + ". ";
    auto known =
        std::find_if(reasons.begin(), reasons.end(), [&](const auto& each) { return each.first == reason; });
    if (known == reasons.end()) known = reasons.insert(reasons.end(), {reason, ""});
    known->second += fmt::format("{}{}, {}{}: published {:.4g} ({:.4g} to {:.4g}), model {:.3g}",
                                 known->second.empty() ? "" : "; ", r.quantity, r.unit,
                                 r.calibrated ? " (calibrated)" : "", r.published, r.low, r.high, r.model);
  }
  List list;
  for (const auto& [reason, its_rows] : reasons) list.items.push_back(reason + its_rows + ".");
  return {"Misses, with their reasons", {list}};
}

Section charts(const std::vector<validation::Curve>& curves) {
  Section out{"Model and publication, as charts", {}};
  for (const validation::Curve& curve : curves) out.blocks.push_back(chart_of(curve));
  return out;
}

}  // namespace

Page validation_page(const std::vector<Row>& rows, const std::vector<validation::Curve>& curves) {
  Page out;
  out.title = "The model beside published findings";
  out.lead = validation::summary(rows);
  out.sections = {
      how_to_read(),
      trust(),
      charts(curves),
      {"By study", {table_of(validation::studies_cells(rows), "One vote a study", false)}},
      {"By topic",
       {table_of(validation::topics_cells(rows), "Rows that were not used to set a number", false)}},
      misses(rows),
      {"Every row", {table_of(validation::rows_cells(rows, false), "All rows of the comparison", true)}}};
  return out;
}

}  // namespace bide::tool
