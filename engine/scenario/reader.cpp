#include "bide/scenario/reader.hpp"

namespace bide::scenario {

std::string range_words(const Field& field) {
  return fmt::format("{} to {}{}{}", field.low, field.high, field.unit.empty() ? "" : " ", field.unit);
}

std::string joined(const std::vector<std::string_view>& words) {
  return fmt::format("{}", fmt::join(words, ", "));
}

bool Reader::sound(std::string_view pointer) const {
  for (std::size_t end = pointer.size();; end = pointer.rfind('/', end - 1)) {
    if (unsound_.contains(pointer.substr(0, end))) return false;
    if (end == 0 || end == std::string_view::npos) return true;
  }
}

}  // namespace bide::scenario
