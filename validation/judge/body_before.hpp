// What the body before the one in force gives for the judged rows: the table body_before.csv, as its own tree
// printed them.
#pragma once

#include <string>
#include <vector>

#include "validation/judge/conditions.hpp"
#include "validation/judge/score.hpp"

namespace bide::validation {

struct ValueBefore {
  std::string topic, quantity;
  double published = 0, low = 0, high = 0;  // of the row in that tree
  double model = 0;
};

// The whole table. Throws std::runtime_error where it cannot be read.
std::vector<ValueBefore> values_before();

// A forecast by a single value, as of the model in force. Empty where the table has no such row, or has it
// with another published value or interval: that was another question.
Scores of_values(const std::vector<JudgedRow>& rows, const std::vector<ValueBefore>& values);

}  // namespace bide::validation
