// The coordinates of a variable: what each of its dimensions stands for.
#pragma once

#include "variable.hpp"

namespace bide::tool::cf {

// Fills in roles, times, places and versions. Throws Refused.
// @param file     where the variable stands
// @param variable with its field and head
void read_axes(const File& file, Variable& variable);

// Height or level that the file states for a variable, in words, when it is not among those allowed for the
// field; nothing when it is, or when the file states none.
std::optional<std::string> wrong_height(const File& file, Field field, const Head& head);

}  // namespace bide::tool::cf
