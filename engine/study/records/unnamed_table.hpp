// Numbers in rows and columns in one file without a name, which is gone when the program ends: a row is added
// at once, a column is read at once, and memory is that of a block of rows.
//
// States: the file. Throws std::system_error when it cannot be made, written or read.
#pragma once

#include <cstddef>
#include <cstdio>
#include <functional>
#include <memory>
#include <vector>

namespace bide::study {

class UnnamedTable {
 public:
  // @param rows     number of rows that will be added
  // @param columns  numbers in a row
  UnnamedTable(std::size_t rows, std::size_t columns);

  // Throws std::invalid_argument for a row of another length, and for one row too many.
  void add(const std::vector<double>& row);

  std::size_t columns() const { return columns_; }

  // Calls `visit` with the numbers of one column, in the order in which the rows were added.
  void each(std::size_t column, const std::function<void(double)>& visit);

 private:
  struct Close {
    void operator()(std::FILE* file) const { std::fclose(file); }
  };

  void write_block();
  void seek(std::size_t column, std::size_t row);

  std::unique_ptr<std::FILE, Close> file_;  // column by column
  std::size_t rows_, columns_;
  std::size_t written_ = 0;    // rows in the file
  std::vector<double> block_;  // rows to be written
};

}  // namespace bide::study
