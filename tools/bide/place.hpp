// Places as people type them: "58,-12", the name of a sea, "Biscay in February".
#pragma once

#include <optional>
#include <stdexcept>
#include <string>

#include "bide/climate/climate.hpp"

namespace bide::tool {

// An answer that cannot be used; what() says why.
struct BadAnswer : std::runtime_error {
  using std::runtime_error::runtime_error;
};

struct Place {
  climate::Point point;
  std::string words;
};

// Throws BadAnswer.
Place place_of(const std::string& text);

// "Biscay in February": takes the month off the end of the place.
// @return 1 to 12, or empty when no month is named
std::optional<int> take_month(std::string& place);

}  // namespace bide::tool
