#include "bide/study/records/unnamed_table.hpp"

#include <doctest/doctest.h>

#include <stdexcept>
#include <vector>

using bide::study::UnnamedTable;

TEST_CASE("a table is filled by rows and read by columns, across blocks") {
  constexpr std::size_t rows = 300, columns = 3;
  UnnamedTable table(rows, columns);
  for (std::size_t i = 0; i < rows; ++i) {
    const auto number = static_cast<double>(i);
    table.add({number, -number, number * number});
  }
  for (const std::size_t column : {2U, 0U, 1U}) {
    std::vector<double> seen;
    table.each(column, [&](double each) { seen.push_back(each); });
    REQUIRE(seen.size() == rows);
    for (std::size_t i = 0; i < rows; ++i) {
      const auto number = static_cast<double>(i);
      CHECK(seen[i] == (column == 0 ? number : column == 1 ? -number : number * number));
    }
  }
  CHECK_THROWS_AS(table.add({1, 2, 3}), std::invalid_argument);  // one row too many
  CHECK_THROWS_AS(UnnamedTable(1, 2).add({1}), std::invalid_argument);
}
