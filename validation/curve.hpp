// What a topic can show as a chart: published points with their spread, and the model's line or points beside
// them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "validation/row.hpp"

namespace bide::validation {

struct CurvePoint {
  double x, y;
  std::optional<double> low,
      high;  // of a published point: what its row allows, or the spread that the text names
};

// Published and model under one condition; they share a colour.
struct Condition {
  std::string name;  // empty where there is one
  std::vector<CurvePoint> published;
  std::vector<CurvePoint>
      model;  // a point's spread here is a range the engine carries because nobody measured it
};

struct Curve {
  std::string topic, title;
  std::string says;  // what is compared, whose it is, what the whiskers are
  std::string x_label, x_unit, y_label, y_unit;
  bool y_from_zero = false;
  std::vector<std::string> categories;  // not empty: x is a position in it
  std::vector<Condition> conditions;
};

// A row as a point at its place, its interval as the spread.
inline CurvePoint published_of(const Row& row) {
  return {row.at, row.published, row.low, row.high};
}
inline CurvePoint model_of(const Row& row) {
  return {row.at, row.model, {}, {}};
}

// The rows whose quantity starts so, in their order; there must be some.
std::vector<Row> rows_named(const std::vector<Row>& rows, const std::string& start);

// The rows whose quantity starts so, over the temperature of the water at which they stand.
Curve against_water(const std::vector<Row>& rows, const std::string& start, const char* y_label,
                    const char* y_unit);

// Rows as categories, by the names of their quantities.
Curve by_category(const std::vector<Row>& rows);

// Every topic that has any, in the order of the table. `rows` are those of all_rows(): what they hold is not
// computed again.
std::vector<Curve> all_curves(const std::vector<Row>& rows);

}  // namespace bide::validation
