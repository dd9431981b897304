// Whole runs that any person's body must pass, as rows that the judge's likelihood counts beside the studies.
// They are rules of physiology, not measurements: they have no vote in the comparison.
#pragma once

#include <vector>

#include "validation/row.hpp"

namespace bide::validation {

std::vector<Row> whole_run_rows();

}  // namespace bide::validation
