// One scenario in several versions: values put in at JSON pointers, every combination of them.
//
// States: none. Inputs: texts such as "/raft/capacity_persons=4,6,8", and a scenario that was validated
// before. Each version goes through the ordinary validation of its changed document. Validity: at most
// `most_versions` of them.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "bide/scenario/validate.hpp"

namespace bide::scenario {

inline constexpr std::size_t most_versions = 64;

struct Variation {
  std::string pointer;
  std::vector<Value> values;
  std::vector<std::string> written;  // the values as they were written
};

// From "POINTER=value,value..."; the pointer must lead to a field that holds a value, the values must be of
// its kind. Otherwise what is wrong, for the option of this name.
std::variant<Variation, Diagnostic> read_variation(const std::string& text, const std::string& option);

// The combinations in the order written, the last variation changing fastest; `file` of each says what was
// put in. Everything wrong with any of them is in the list.
std::variant<std::vector<ValidScenario>, Diagnostics> versions(const ValidScenario& base,
                                                               const std::vector<Variation>& variations);

// `other` with everything that `first` has aboard in place of its own pack and bag.
Validated with_stores_of(const ValidScenario& first, const ValidScenario& other);

// The same raft at one end of what nobody has measured, canopy heat loss and leakage together: 0 the lowest
// loss, 1 the highest. A position that the file states stays.
Validated at_end_of_ranges(const ValidScenario& scenario, double position);

}  // namespace bide::scenario
