// Text from anywhere made fit to stand in HTML, and data fit to stand in a script element.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

namespace bide::report::html {

// One line of printable text (report/text.hpp).
std::string printable(std::string_view text);

// Text escaped for an element's content or a quoted attribute.
std::string escaped(std::string_view text);

// JSON in ASCII in which no letter means anything to HTML: it cannot close its element.
std::string script_data(const nlohmann::ordered_json& data);

}  // namespace bide::report::html
