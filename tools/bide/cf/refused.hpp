// What a reader of climate files throws when it cannot use one.
#pragma once

#include <fmt/format.h>

#include <stdexcept>
#include <string>
#include <utility>

namespace bide::tool::cf {

// what() says where in the file (variable, attribute or dimension), what was found and what is allowed,
// without the file's name.
struct Refused : std::runtime_error {
  using std::runtime_error::runtime_error;
};

template <class... Parts>
[[noreturn]] void refuse(fmt::format_string<Parts...> text, Parts&&... parts) {
  throw Refused(fmt::format(text, std::forward<Parts>(parts)...));
}

}  // namespace bide::tool::cf
