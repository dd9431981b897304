#include "validation/topics.hpp"

#include <iterator>

namespace bide::validation {

std::vector<Row> all_rows() {
  std::vector<Row> out;
  for (const auto topic : topics) {
    std::vector<Row> rows = topic();
    out.insert(out.end(), std::make_move_iterator(rows.begin()), std::make_move_iterator(rows.end()));
  }
  return out;
}

}  // namespace bide::validation
