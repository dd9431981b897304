// Results of a study on disk: one record of fixed size per sample, appended in blocks as they come. A study
// may be killed at any moment and taken up again from what the file holds; parts made elsewhere are merged;
// reading never holds more than a block of each file.
//
// The file: a header, then blocks, then an end mark once all is done. Numbers are little-endian.
//   header  8 bytes "bidestd4" | 8 study | 8 math | 4 bytes of a record's payload | 4 CRC-32 of the 28 before
//   block   4 records n, 1 or more | 4 CRC-32 of n and the records | n records, each 8 sample + payload
//   end     4 zero | 4 CRC-32 of the zero and of what follows | 8 end | 8 total
// Samples ascend strictly within a file. A block is whole or it is not there: the first block that is cut or
// whose sum is wrong ends the file, and opening it to append cuts it off there. What was lost is run again.
// The end mark says that nothing of this file's part is missing before sample `end`, and that the study has
// `total` samples.
#pragma once

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <optional>
#include <span>
#include <vector>

#include "bide/study/records/disk.hpp"

namespace bide::study {

// What is lost at most when a study is killed, beside what is being computed.
inline constexpr std::size_t records_per_block = 64;

// Records of two kinds never mix.
struct RecordKind {
  std::uint64_t study = 0;  // stands for study and build, on which the records depend
  std::uint32_t payload_bytes = 0;
  std::uint64_t math = 0;  // and for the bits of exp, log and the like where they were made (math_bits.hpp)
  bool operator==(const RecordKind&) const = default;
};

// In what records differ from others, for a sentence that goes on with "than ..."; nothing where they mix.
std::optional<std::string> why_apart(const RecordKind& found, const RecordKind& other);

struct Record {
  std::uint64_t sample = 0;
  std::vector<std::byte> payload;
};

// The part that ends before sample `end` is whole, of a study of `total` samples.
struct EndMark {
  std::uint64_t end = 0, total = 0;
  bool operator==(const EndMark&) const = default;
};

// Reads the whole blocks of a file, in order. Whatever the bytes, it reads nothing beyond them and asks for
// no more memory than the file is long.
class RecordReader {
 public:
  // Throws RecordFileError when the file cannot be read or its header is not whole.
  explicit RecordReader(const std::filesystem::path& file);
  const RecordKind& kind() const { return kind_; }
  // The next record, valid until the next call; none after the last whole block. Throws RecordFileError when
  // samples do not ascend.
  const Record* next();
  // After next() gave none: the end mark, if there is one.
  const std::optional<EndMark>& end_mark() const { return mark_; }
  // Bytes of the whole blocks read so far with the header, and with the end mark.
  std::uint64_t block_bytes() const { return blocks_; }
  std::uint64_t whole_bytes() const { return whole_; }
  std::uint64_t file_bytes() const { return size_; }
  // After next() gave none. Throws RecordFileError, saying what is missing, unless the file ends with its end
  // mark and nothing after it.
  void expect_whole() const;

 private:
  bool read_block();
  bool read_mark(std::span<const std::byte> head);
  std::filesystem::path file_;
  Descriptor descriptor_;
  RecordKind kind_;
  std::uint64_t size_ = 0, blocks_ = 0, whole_ = 0;
  std::vector<std::byte> block_;
  std::size_t at_ = 0;
  std::optional<std::uint64_t> last_;
  std::optional<EndMark> mark_;
  Record record_;
};

// Appends to a file. One process at a time: the others are refused.
class RecordWriter {
 public:
  // Makes the file, or opens it, checks that its records are of this kind, and cuts a torn end off.
  RecordWriter(const std::filesystem::path& file, const RecordKind& kind,
               std::size_t block_records = records_per_block);
  // The last sample that the file held when it was opened, or that was added since.
  std::optional<std::uint64_t> last() const { return last_; }
  // Throws when the sample does not come after last() or the payload has another size.
  void add(std::uint64_t sample, std::span<const std::byte> payload);
  // Writes what is waiting as a block and waits for the disk. Nothing else says that this failed: what is not
  // flushed when the writer goes is not there.
  void flush();
  // Flushes, and marks the file as whole. Throws std::invalid_argument when it holds samples from `mark.end`
  // on.
  void finish(const EndMark& mark);
  // Throws away all records.
  void restart();

 private:
  std::filesystem::path file_;
  RecordKind kind_;
  std::size_t per_block_;
  Descriptor descriptor_;
  std::uint64_t end_ = 0;
  std::optional<std::uint64_t> last_;
  std::optional<EndMark> mark_;
  std::uint32_t waiting_ = 0;
  std::vector<std::byte> block_;
};

// Merges whole parts of one study into a new file, in sample order. A sample that stands in several with the
// same bytes is taken once; with different bytes it is an error. Throws RecordFileError, and leaves no file,
// when a part is cut, damaged or not done, when a record does not pass the check, and when the parts together
// lack a sample. The result appears under its name when it is whole. Returns the number of records.
// @param check of each record; throws std::invalid_argument for one that cannot be
using CheckRecord = std::function<void(const Record&)>;
std::uint64_t merge_records(std::span<const std::filesystem::path> parts, const std::filesystem::path& merged,
                            const CheckRecord& check);

}  // namespace bide::study
