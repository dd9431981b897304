// One scenario in several versions: values put in at JSON pointers, in every combination.
//
// States: none. Inputs: texts such as "/raft/capacity_persons=4,6,8", and a validated scenario. The changed
// document of each version is validated like a file. Validity: at most `most_versions` of them.
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

// A scenario to compare: a file as it is, or with values put in.
struct Version : ValidScenario {
  struct PutIn {
    std::string pointer, written;
  };
  std::vector<PutIn> put_in;  // empty: as it is
};

// Reads "POINTER=value,value..."; the pointer must lead to a field that holds a value, and the values must be
// of its kind.
// @param text   the argument
// @param option name of the option, for messages
// @return the variation, or what is wrong with it
std::variant<Variation, Diagnostic> read_variation(const std::string& text, const std::string& option);

// The combinations in the order written, the last variation changing fastest; `file` of each says what was
// put in. Everything wrong with any of them is in the list.
std::variant<std::vector<Version>, Diagnostics> versions(const ValidScenario& base,
                                                         const std::vector<Variation>& variations);

// `other` with everything that `first` has aboard in place of its own pack and bag.
Validated with_stores_of(const ValidScenario& first, const ValidScenario& other);

}  // namespace bide::scenario
