// What made a result, for those who must repeat it: in one line of text, and as JSON. Every file of results
// holds one of them.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

namespace bide::report {

// "Made by bide 0.1.0, model 0a1b..., compiled by GNU 12.2.0 for x86-64-v3": ASCII, without a line end.
std::string made_by_line();
nlohmann::ordered_json made_by();

}  // namespace bide::report
