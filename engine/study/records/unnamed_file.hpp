// Records in an unnamed temporary file that disappears when the program ends, so that a million of them take
// no more memory than a thousand.
//
// States: the file. Inputs: records that are trivially copyable: their bytes are written as they are.
#pragma once

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstddef>
#include <cstdio>
#include <memory>
#include <string>
#include <system_error>
#include <type_traits>

namespace bide::study {

// A file in the system's folder for temporary files. Throws std::system_error when it cannot be made, written
// or read.
template <class Record>
class UnnamedFile {
  static_assert(std::is_trivially_copyable_v<Record>);

 public:
  UnnamedFile() : file_(std::tmpfile()) {
    if (!file_) fail("cannot be made");
  }

  // Appends a record.
  void add(const Record& record) {
    if (std::fwrite(&record, sizeof record, 1, file_.get()) != 1) fail("cannot be written");
    ++size_;
  }

  std::size_t size() const { return size_; }  // records

  // Calls `visit` with every record, in the order in which they were added.
  template <class Visit>
  void each(const Visit& visit) const {
    std::FILE* file = file_.get();
    if (std::fflush(file) != 0) fail("cannot be written");
    std::rewind(file);
    std::array<Record, 1024> block;
    for (std::size_t left = size_; left > 0;) {
      const std::size_t wanted = std::min(left, block.size());
      if (std::fread(block.data(), sizeof(Record), wanted, file) != wanted) fail("cannot be read");
      for (std::size_t i = 0; i < wanted; ++i) visit(block[i]);
      left -= wanted;
    }
    if (std::fseek(file, 0, SEEK_END) != 0) fail("cannot be read");
  }

 private:
  struct Close {
    void operator()(std::FILE* file) const { std::fclose(file); }
  };
  std::unique_ptr<std::FILE, Close> file_;
  std::size_t size_ = 0;

  [[noreturn]] static void fail(const char* doing) {
    throw std::system_error(errno, std::generic_category(), std::string("temporary file: ") + doing);
  }
};

}  // namespace bide::study
