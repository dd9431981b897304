#include "validation/curve.hpp"

#include <algorithm>
#include <iterator>
#include <stdexcept>

#include "validation/topics.hpp"

namespace bide::validation {

std::vector<Row> rows_named(const std::vector<Row>& rows, const std::string& start) {
  std::vector<Row> out;
  std::copy_if(rows.begin(), rows.end(), std::back_inserter(out),
               [&](const Row& row) { return row.quantity.rfind(start, 0) == 0; });
  if (out.empty()) throw std::runtime_error("no row is named " + start);
  return out;
}

Curve against_water(const std::vector<Row>& rows, const std::string& start, const char* y_label,
                    const char* y_unit) {
  Curve out;
  out.x_label = "water temperature", out.x_unit = "degC";
  out.y_label = y_label, out.y_unit = y_unit;
  out.y_from_zero = true;
  Condition all;
  for (const Row& row : rows_named(rows, start)) {
    all.published.push_back(published_of(row));
    all.model.push_back(model_of(row));
  }
  out.conditions = {all};
  return out;
}

Curve by_category(const std::vector<Row>& rows) {
  Curve out;
  Condition all;
  for (Row row : rows) {
    row.at = static_cast<double>(out.categories.size());
    out.categories.push_back(row.quantity);
    all.published.push_back(published_of(row));
    all.model.push_back(model_of(row));
  }
  out.topic = rows.at(0).topic;
  out.y_unit = rows.at(0).unit;
  out.conditions = {all};
  return out;
}

std::vector<Curve> all_curves(const std::vector<Row>& rows) {
  std::vector<Curve> out;
  for (const Topic& topic : topics) {
    if (!topic.curves) continue;
    std::vector<Row> own;
    std::copy_if(rows.begin(), rows.end(), std::back_inserter(own),
                 [&](const Row& row) { return row.topic == topic.name; });
    std::vector<Curve> curves = topic.curves(own);
    for (Curve& curve : curves) curve.topic = topic.name;
    out.insert(out.end(), std::make_move_iterator(curves.begin()), std::make_move_iterator(curves.end()));
  }
  return out;
}

}  // namespace bide::validation
