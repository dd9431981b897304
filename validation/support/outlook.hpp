// The whole program's run of a case, with its dated limits: for findings about what ends ability first.
#pragma once

#include <string>

#include "bide/timeline/series.hpp"

namespace bide::validation {

// Throws std::runtime_error if the scenario is refused or a ledger does not close.
timeline::Timeline timeline_of(const std::string& scenario_json);

// Mean of a column over output times within [from_h, to_h].
double mean_over(const timeline::Timeline& run, const std::vector<double>& column, double from_h,
                 double to_h);

}  // namespace bide::validation
