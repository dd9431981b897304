// Published findings that contradict each other: no model can be expected to meet both.
#pragma once

#include <vector>

#include "validation/row.hpp"

namespace bide::validation {

// Fills `conflicts_with` on both sides. Throws std::runtime_error if a row that is named does not exist.
void name_conflicts(std::vector<Row>& rows);

// The most independent rows that could hold at once. Of two that contradict each other one is given up,
// unless both hold now: the model then shows that they can.
int attainable(const std::vector<Row>& rows);

}  // namespace bide::validation
