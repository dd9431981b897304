// The futures of an ensemble, in a file without a name that is gone when the program ends, so that a million
// of them take no more memory than a thousand.
#pragma once

#include <cstddef>
#include <cstdio>
#include <memory>

#include "study/future.hpp"

namespace bide::study {

// Made in the system's folder for temporary files. Throws std::system_error when that cannot be written or
// read.
class FutureFile {
 public:
  FutureFile();
  void add(const Future& future);
  std::size_t size() const { return size_; }
  // Every future, in the order in which they were added.
  void each(const VisitFuture& visit) const;

 private:
  struct Close {
    void operator()(std::FILE* file) const { std::fclose(file); }
  };
  std::unique_ptr<std::FILE, Close> file_;
  std::size_t size_ = 0;
};

}  // namespace bide::study
