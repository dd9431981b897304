// Signs of units for people: "°C" and "m²" for the ASCII in which fields and files have them.
#pragma once

#include <string>

namespace bide::report {

// Whole words of a text alone, and none within quotes, where a file's own words stand: "20 degC" -> "20 °C",
// "kg/m2" -> "kg/m²"; "air_degC" stays. ascii() (text.hpp) takes the signs back for a terminal without them.
std::string unit_signs(const std::string& text);

}  // namespace bide::report
