// Results of a study on disk: one record of fixed size per sample, appended in blocks as they come. A study
// may be killed at any moment and taken up again from what the file holds; parts made elsewhere are merged;
// reading never holds more than a block of each file.
//
// The file: a header, written under another name and then renamed, so that it is there whole or not at all;
// then blocks. Numbers are little-endian.
//   header  8 bytes "bidestd1" | 8 study | 4 bytes of a record's payload | 4 CRC-32 of the 20 bytes before
//   block   4 records n | 4 CRC-32 of n and the records | n records, each 8 sample + payload
// Samples ascend strictly within a file. A block is whole or it is not there: the first block that is cut or
// whose sum is wrong ends the file, and opening it to append cuts it off there. What was lost is run again.
#pragma once

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <span>
#include <stdexcept>
#include <string>
#include <vector>

namespace bide::study {

// What went wrong with which file.
class RecordFileError : public std::runtime_error {
 public:
  RecordFileError(const std::filesystem::path& file, const std::string& what);
};

// What is lost at most when a study is killed, beside what is being computed.
inline constexpr std::size_t records_per_block = 64;

struct RecordKind {
  std::uint64_t study =
      0;  // stands for everything that the records depend on; records of two studies never mix
  std::uint32_t payload_bytes = 0;
  bool operator==(const RecordKind&) const = default;
};

struct Record {
  std::uint64_t sample = 0;
  std::vector<std::byte> payload;
};

// Reads the whole blocks of a file, in order.
class RecordReader {
 public:
  explicit RecordReader(const std::filesystem::path& file);
  ~RecordReader();
  RecordReader(RecordReader&&) noexcept;
  RecordReader& operator=(RecordReader&&) = delete;
  const RecordKind& kind() const { return kind_; }
  // The next record, valid until the next call; none after the last whole block.
  const Record* next();
  // End of the last whole block read so far, in bytes; after next() gave none, the length worth keeping.
  std::uint64_t whole_bytes() const { return whole_; }

 private:
  bool read_block();
  std::filesystem::path file_;
  int descriptor_ = -1;
  RecordKind kind_;
  std::uint64_t whole_ = 0;
  std::vector<std::byte> block_;
  std::size_t at_ = 0;
  std::optional<std::uint64_t> last_;
  Record record_;
};

// Appends to a file. One process at a time: a second one is refused.
class RecordWriter {
 public:
  // Makes the file, or opens it, checks that its records are of this kind, and cuts a torn end off.
  RecordWriter(const std::filesystem::path& file, const RecordKind& kind,
               std::size_t block_records = records_per_block);
  // Does not write what is not flushed: only flush() can say that it failed.
  ~RecordWriter();
  RecordWriter(const RecordWriter&) = delete;
  RecordWriter& operator=(const RecordWriter&) = delete;
  // The last sample that the file held when it was opened, or that was added since.
  std::optional<std::uint64_t> last() const { return last_; }
  std::uint64_t bytes_cut_off() const { return cut_off_; }
  // Throws when the sample does not come after last() or the payload has another size.
  void add(std::uint64_t sample, std::span<const std::byte> payload);
  // Writes what is waiting as a block and waits for the disk.
  void flush();

 private:
  std::filesystem::path file_;
  RecordKind kind_;
  std::size_t per_block_;
  int descriptor_ = -1;
  std::uint64_t end_ = 0;
  std::uint64_t cut_off_ = 0;
  std::optional<std::uint64_t> last_;
  std::uint32_t waiting_ = 0;
  std::vector<std::byte> block_;
};

// Merges files of one kind into a new one, in sample order. A sample that stands in several with the same
// bytes is taken once; with different bytes it is an error. The result appears under its name when it is
// whole. Returns the number of records.
std::uint64_t merge_records(std::span<const std::filesystem::path> parts,
                            const std::filesystem::path& merged);

}  // namespace bide::study
