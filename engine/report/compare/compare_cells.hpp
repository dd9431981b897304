// Cells that the text and the page of a comparison share.
#pragma once

#include <optional>
#include <string>

#include "bide/outcome/compare.hpp"

namespace bide::report {

std::string cell(const std::optional<double>& at_s, double horizon_s);  // "48 h", "not in 3 d"
std::string ended_by(const outcome::Figures& figures);                  // "cold", "next: water loss"
std::string stores_out(const outcome::Figures& figures);                // "water 48 h, lamp 60 h"
std::string coldest_inside(const outcome::Figures& figures);            // "-3 C, night"
std::string foul_air(const outcome::Figures& figures);                  // "14 h", "never", "no cabin"

}  // namespace bide::report
