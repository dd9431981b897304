// Bare faces in cold wind.
#pragma once

#include <vector>

#include "validation/support/rest.hpp"

namespace bide::validation::hands {

// Adds the rows of the trial with faces. Conditions: README.md of this topic.
void faces(std::vector<Row>& all);

}  // namespace bide::validation::hands
