#include "validation/topics.hpp"

#include <iterator>

#include "validation/conflicts.hpp"

namespace bide::validation {

std::vector<Row> all_rows() {
  std::vector<Row> out;
  for (const Topic& topic : topics) {
    std::vector<Row> rows = topic.rows();
    out.insert(out.end(), std::make_move_iterator(rows.begin()), std::make_move_iterator(rows.end()));
  }
  name_conflicts(out);
  return out;
}

}  // namespace bide::validation
