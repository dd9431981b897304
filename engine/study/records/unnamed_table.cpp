#include "bide/study/records/unnamed_table.hpp"

#include <algorithm>
#include <array>
#include <cerrno>
#include <stdexcept>
#include <string>
#include <system_error>

namespace bide::study {
namespace {

constexpr std::size_t block_rows = 128;

[[noreturn]] void fail(const char* doing) {
  throw std::system_error(errno, std::generic_category(), std::string("temporary file: ") + doing);
}

}  // namespace

UnnamedTable::UnnamedTable(std::size_t rows, std::size_t columns)
    : file_(std::tmpfile()), rows_(rows), columns_(columns) {
  if (!file_) fail("cannot be made");
}

void UnnamedTable::add(const std::vector<double>& row) {
  if (row.size() != columns_ || columns_ == 0) throw std::invalid_argument("table: a row of another length");
  if (written_ + block_.size() / columns_ >= rows_) throw std::invalid_argument("table: a row too many");
  block_.insert(block_.end(), row.begin(), row.end());
  if (block_.size() == block_rows * columns_) write_block();
}

void UnnamedTable::each(std::size_t column, const std::function<void(double)>& visit) {
  write_block();
  seek(column, 0);
  std::array<double, 1024> numbers{};
  for (std::size_t left = written_; left > 0;) {
    const std::size_t wanted = std::min(left, numbers.size());
    if (std::fread(numbers.data(), sizeof(double), wanted, file_.get()) != wanted) fail("cannot be read");
    for (std::size_t i = 0; i < wanted; ++i) visit(numbers[i]);
    left -= wanted;
  }
}

void UnnamedTable::write_block() {
  if (block_.empty()) return;
  const std::size_t rows = block_.size() / columns_;
  std::vector<double> column(rows);
  for (std::size_t j = 0; j < columns_; ++j) {
    for (std::size_t i = 0; i < rows; ++i) column[i] = block_[i * columns_ + j];
    seek(j, written_);
    if (std::fwrite(column.data(), sizeof(double), rows, file_.get()) != rows) fail("cannot be written");
  }
  written_ += rows;
  block_.clear();
}

void UnnamedTable::seek(std::size_t column, std::size_t row) {
  const std::size_t at = (column * rows_ + row) * sizeof(double);
  if (std::fseek(file_.get(), static_cast<long>(at), SEEK_SET) != 0) fail("cannot be read");
}

}  // namespace bide::study
