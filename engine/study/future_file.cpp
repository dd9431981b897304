#include "study/future_file.hpp"

#include <array>
#include <cerrno>
#include <system_error>
#include <type_traits>

namespace bide::study {
namespace {

static_assert(std::is_trivially_copyable_v<Future>, "futures are written as they lie in memory");

[[noreturn]] void fail(const char* doing) {
  throw std::system_error(errno, std::generic_category(),
                          std::string("temporary file of the futures: ") + doing);
}

}  // namespace

FutureFile::FutureFile() : file_(std::tmpfile()) {
  if (!file_) fail("cannot be made");
}

void FutureFile::add(const Future& future) {
  if (std::fwrite(&future, sizeof future, 1, file_.get()) != 1) fail("cannot be written");
  ++size_;
}

void FutureFile::each(const VisitFuture& visit) const {
  std::FILE* file = file_.get();
  if (std::fflush(file) != 0) fail("cannot be written");
  std::rewind(file);
  std::array<Future, 1024> block;
  for (std::size_t left = size_; left > 0;) {
    const std::size_t wanted = std::min(left, block.size());
    if (std::fread(block.data(), sizeof(Future), wanted, file) != wanted) fail("cannot be read");
    for (std::size_t i = 0; i < wanted; ++i) visit(block[i]);
    left -= wanted;
  }
  if (std::fseek(file, 0, SEEK_END) != 0) fail("cannot be read");
}

}  // namespace bide::study
