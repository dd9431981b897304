#include <fcntl.h>
#include <fmt/format.h>
#include <stdio.h>

#include <algorithm>
#include <cerrno>
#include <stdexcept>
#include <string>
#include <system_error>

#include "bide/study/records/record_file.hpp"

namespace bide::study {
namespace {

using Path = std::filesystem::path;
using Fault = RecordFileError::Fault;

// Parts read side by side, lowest sample first.
class Parts {
 public:
  Parts(std::span<const Path> files, const CheckRecord& check) : files_(files), check_(check) {
    for (const Path& file : files) {
      readers_.emplace_back(file);
      if (const auto why = why_apart(readers_.back().kind(), readers_.front().kind()))
        throw RecordFileError(file, *why + " than " + files.front().string());
    }
    for (std::size_t i = 0; i < readers_.size(); ++i) heads_.push_back(next_of(i));
  }

  const RecordKind& kind() const { return readers_.front().kind(); }
  std::uint64_t total() const { return total_; }

  // Once from all parts that hold it.
  std::optional<Record> next() {
    const Record* lowest = nullptr;
    for (const Record* head : heads_)
      if (head && (!lowest || head->sample < lowest->sample)) lowest = head;
    if (!lowest) return std::nullopt;
    const Record taken = *lowest;
    for (std::size_t i = 0; i < heads_.size(); ++i) {
      if (!heads_[i] || heads_[i]->sample != taken.sample) continue;
      if (heads_[i]->payload != taken.payload)
        throw RecordFileError(files_[i],
                              fmt::format("sample {} has other results than in another part", taken.sample));
      heads_[i] = next_of(i);
    }
    return taken;
  }

 private:
  const Record* next_of(std::size_t i) {
    if (const Record* record = readers_[i].next()) {
      try {
        check_(*record);
      } catch (const std::invalid_argument& wrong) {
        throw RecordFileError(files_[i], fmt::format("sample {}: {}", record->sample, wrong.what()));
      }
      return record;
    }
    readers_[i].expect_whole();
    total_ = std::max(total_, readers_[i].end_mark()->total);
    return nullptr;
  }

  std::span<const Path> files_;
  const CheckRecord& check_;
  std::vector<RecordReader> readers_;
  std::vector<const Record*> heads_;
  std::uint64_t total_ = 0;
};

[[noreturn]] void lacks(const Path& merged, std::uint64_t from, std::uint64_t to) {
  const std::string which =
      from == to ? fmt::format("sample {} is", from) : fmt::format("samples {} to {} are", from, to);
  throw RecordFileError(merged, "cannot be made: " + which + " in none of the parts");
}

// Over nothing: what got the name meanwhile stays.
void rename_to(const Path& from, const Path& to) {
#ifdef RENAME_NOREPLACE  // Linux's own
  int failed = ::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE);
  if (failed != 0 && (errno == EINVAL || errno == ENOSYS)) failed = ::rename(from.c_str(), to.c_str());
#else
  const int failed = ::rename(from.c_str(), to.c_str());
#endif
  if (failed != 0)
    throw RecordFileError(to, "cannot rename to: " + std::generic_category().message(errno),
                          Fault::cannot_be_written);
}

}  // namespace

std::uint64_t merge_records(std::span<const Path> files, const Path& merged, const CheckRecord& check) {
  if (files.empty()) throw std::invalid_argument("nothing to merge");
  std::error_code error;
  if (std::filesystem::exists(merged, error))
    throw RecordFileError(merged, "is there already", Fault::cannot_be_written);
  Parts parts(files, check);
  Path whole = merged;
  whole += ".merging";
  std::uint64_t count = 0;
  {
    RecordWriter writer(whole, parts.kind());
    try {
      writer.restart();
      while (const auto record = parts.next()) {
        if (record->sample != count) lacks(merged, count, record->sample - 1);
        writer.add(record->sample, record->payload);
        ++count;
      }
      if (count < parts.total()) lacks(merged, count, parts.total() - 1);
      writer.finish({count, count});
      rename_to(whole, merged);
    } catch (...) {
      std::filesystem::remove(whole, error);
      throw;
    }
  }
  sync_folder_of(merged);
  return count;
}

}  // namespace bide::study
