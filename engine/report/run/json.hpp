// The result of one run as JSON, and the schema it obeys.
//
// Output: ASCII only (all else as \u escapes, also "<"), so that it can be printed, embedded or mailed as it
// is. Numbers that are not finite are null. `format` changes when a key changes its meaning.
#pragma once

#include <string>

#include "bide/outcome/outcome.hpp"
#include "bide/study/questions/unmeasured.hpp"

namespace bide::report {

inline constexpr const char* result_format = "bide result 1";

// @param members the same scenario over what is not known, for the range; may be none
std::string result_json(const outcome::Outcome& outcome, const timeline::Timeline& timeline,
                        const scenario::ValidScenario& scenario, const study::RangeMembers& members);

// JSON Schema 2020-12, using only words that draft 7 has too.
std::string result_schema();

}  // namespace bide::report
