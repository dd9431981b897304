// The list of topics. One folder each: README.md (source, conditions, digitisation, trust), data, case.cpp.
#pragma once

#include "validation/row.hpp"

namespace bide::validation {

std::vector<Row> cabin_air_rows();  // cabin_air/

using Topic = std::vector<Row> (*)();
inline constexpr Topic topics[] = {cabin_air_rows};

}  // namespace bide::validation
