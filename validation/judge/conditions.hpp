// Under what conditions a row of the comparison was measured: the table conditions.csv.
//
// A row that stands in the table is judged: it is about a person's heat and water, and depends on conditions.
// Words and numbers are those of the row's own case, of the part of the trial that the row speaks about; what
// a source leaves out is a judgement, as in the topic's README.
#pragma once

#include <string>
#include <vector>

#include "bide/constants/regions.hpp"
#include "validation/row.hpp"

namespace bide::validation {

struct PlacedRow {
  std::string topic, quantity;
  // heat made, heat compared (of two groups or two ways, which says nothing of too much), heat lost, heat
  // stored, core, skin, hands, threshold, water
  std::string about;
  constants::Conditions at;
  double hours = 0;  // since its start, when it was read
};

// The whole table. Throws std::runtime_error where it cannot be read.
std::vector<PlacedRow> placed_rows();

// A row with its conditions.
struct JudgedRow {
  Row row;
  std::string about;
  constants::Conditions at;
  double hours = 0;  // since its start, when it was read
  constants::Region region;
  constants::Span span;

  // Half of the interval that counts as holding.
  double half() const { return (row.high - row.low) / 2; }
  // The published value lies inside its interval; else it is an end, and the row holds on one side of it.
  bool two_sided() const;
  // How far a value is from the published one, in half-intervals, [0, inf): at most 1 where the row holds.
  double error(double value) const;
};

// The independent measured rows that stand in the table. Throws std::runtime_error where the table names a
// row that is not there.
std::vector<JudgedRow> judged(const std::vector<Row>& rows, const std::vector<PlacedRow>& table);

}  // namespace bide::validation
