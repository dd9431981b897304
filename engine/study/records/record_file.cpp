#include "bide/study/records/record_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <boost/crc.hpp>
#include <boost/endian/conversion.hpp>
#include <cstring>
#include <stdexcept>
#include <string>

namespace bide::study {
namespace {

using Path = std::filesystem::path;
using Fault = RecordFileError::Fault;

constexpr std::string_view mark_of_format = "bidestd4";
constexpr std::size_t header_bytes = 32, summed_header_bytes = 28, block_head_bytes = 8,
                      sample_number_bytes = 8, end_mark_bytes = 24;
// A length that no writer makes is a torn or foreign block.
constexpr std::uint64_t most_block_bytes = std::uint64_t{1} << 28;

using Header = std::array<std::byte, header_bytes>;

template <class T>
void put(std::byte* at, T value) {
  boost::endian::native_to_little_inplace(value);
  std::memcpy(at, &value, sizeof value);
}

template <class T>
T get(const std::byte* at) {
  T value;
  std::memcpy(&value, at, sizeof value);
  return boost::endian::little_to_native(value);
}

std::uint32_t sum(std::span<const std::byte> a, std::span<const std::byte> b = {}) {
  boost::crc_32_type crc;
  crc.process_bytes(a.data(), a.size());
  crc.process_bytes(b.data(), b.size());
  return crc.checksum();
}

Header header_of(const RecordKind& kind) {
  Header header;
  std::memcpy(header.data(), mark_of_format.data(), mark_of_format.size());
  put(header.data() + 8, kind.study);
  put(header.data() + 16, kind.math);
  put(header.data() + 24, kind.payload_bytes);
  put(header.data() + summed_header_bytes, sum({header.data(), summed_header_bytes}));
  return header;
}

// A new file gets its header, and so does one whose making was cut short: it is empty, begins as its header
// does and ends within it, or holds zeros, as some file systems leave after a power cut.
void write_missing_header(const Path& file, const Descriptor& descriptor, const RecordKind& kind) {
  const std::uint64_t size = bytes_in(file, descriptor);
  if (size > header_bytes) return;
  Header found{};
  const std::span<std::byte> begun(found.data(), read_at(file, descriptor, 0, found));
  const Header header = header_of(kind);
  const bool zeros = std::all_of(begun.begin(), begun.end(), [](std::byte b) { return b == std::byte{0}; });
  const bool cut_short =
      begun.size() < header_bytes && std::equal(begun.begin(), begun.end(), header.begin());
  if (!zeros && !cut_short) return;
  write_at(file, descriptor, 0, header);
  sync(file, descriptor);
  sync_folder_of(file);
}

}  // namespace

std::optional<std::string> why_apart(const RecordKind& found, const RecordKind& other) {
  if (found.study != other.study || found.payload_bytes != other.payload_bytes)
    return "holds results of another study, or of another build of the program,";
  if (found.math != other.math)
    return "was made where the C library rounds exp, log and the like differently (another version of it, or "
           "another kind of processor), and holds other last bits";
  return std::nullopt;
}

RecordReader::RecordReader(const Path& file)
    : file_(file), descriptor_(open_to_read(file)), size_(bytes_in(file, descriptor_)) {
  Header header;
  const bool whole =
      read_at(file, descriptor_, 0, header) == header_bytes &&
      std::memcmp(header.data(), mark_of_format.data(), mark_of_format.size()) == 0 &&
      get<std::uint32_t>(header.data() + summed_header_bytes) == sum({header.data(), summed_header_bytes});
  if (!whole) throw RecordFileError(file, "not a file of study results, or its header is damaged");
  kind_ = {get<std::uint64_t>(header.data() + 8), get<std::uint32_t>(header.data() + 24),
           get<std::uint64_t>(header.data() + 16)};
  blocks_ = whole_ = header_bytes;
}

bool RecordReader::read_mark(std::span<const std::byte> head) {
  std::array<std::byte, end_mark_bytes - block_head_bytes> rest;
  if (read_at(file_, descriptor_, whole_ + head.size(), rest) < rest.size()) return false;
  if (get<std::uint32_t>(head.data() + 4) != sum(head.first(4), rest)) return false;
  const EndMark mark{get<std::uint64_t>(rest.data()), get<std::uint64_t>(rest.data() + 8)};
  if (mark.end > mark.total || (last_ && *last_ >= mark.end))
    throw RecordFileError(file_, "its end mark does not fit its samples");
  mark_ = mark;
  whole_ += end_mark_bytes;
  return true;
}

bool RecordReader::read_block() {
  std::array<std::byte, block_head_bytes> head;
  if (mark_ || read_at(file_, descriptor_, whole_, head) < head.size()) return false;
  const std::uint64_t records = get<std::uint32_t>(head.data());
  if (records == 0) return read_mark(head), false;
  const std::uint64_t bytes = records * (sample_number_bytes + kind_.payload_bytes);
  if (bytes > most_block_bytes || bytes > size_ - std::min(size_, whole_)) return false;
  block_.resize(bytes);
  if (read_at(file_, descriptor_, whole_ + head.size(), block_) < bytes) return false;
  if (get<std::uint32_t>(head.data() + 4) != sum({head.data(), 4}, block_)) return false;
  whole_ += head.size() + bytes;
  blocks_ = whole_;
  at_ = 0;
  return true;
}

const Record* RecordReader::next() {
  if (at_ == block_.size() && !read_block()) {
    block_.clear();
    at_ = 0;
    return nullptr;
  }
  const std::byte* from = block_.data() + at_;
  record_.sample = get<std::uint64_t>(from);
  record_.payload.assign(from + sample_number_bytes, from + sample_number_bytes + kind_.payload_bytes);
  at_ += sample_number_bytes + kind_.payload_bytes;
  if (last_ && record_.sample <= *last_) throw RecordFileError(file_, "its samples do not ascend");
  last_ = record_.sample;
  return &record_;
}

void RecordReader::expect_whole() const {
  const std::string after = last_ ? fmt::format("after sample {}", *last_) : std::string("before any sample");
  if (whole_ < size_)
    throw RecordFileError(file_,
                          fmt::format("cut or damaged {}: {} bytes from byte {} on cannot be used; run "
                                      "this part again, which keeps what is whole",
                                      after, size_ - whole_, whole_));
  if (!mark_)
    throw RecordFileError(file_, fmt::format("not done: it ends {} without an end mark; run this part again, "
                                             "which takes it up there",
                                             after));
}

RecordWriter::RecordWriter(const Path& file, const RecordKind& kind, std::size_t block_records)
    : file_(file), kind_(kind), per_block_(block_records) {
  if (per_block_ == 0 || per_block_ > most_block_bytes / (sample_number_bytes + kind.payload_bytes)) {
    throw std::invalid_argument("a block holds at least one record, and at most 256 MiB");
  }
  descriptor_ = open_alone(file);
  write_missing_header(file, descriptor_, kind);
  RecordReader reader(file);
  if (const auto why = why_apart(reader.kind(), kind)) throw RecordFileError(file, *why + " than this one");
  while (const Record* record = reader.next()) last_ = record->sample;
  end_ = reader.block_bytes();
  mark_ = reader.end_mark();
  if (reader.file_bytes() > reader.whole_bytes()) cut_to(file, descriptor_, reader.whole_bytes());
  block_.resize(block_head_bytes);
}

void RecordWriter::add(std::uint64_t sample, std::span<const std::byte> payload) {
  if (last_ && sample <= *last_) throw std::invalid_argument("samples are added in ascending order");
  if (payload.size() != kind_.payload_bytes) throw std::invalid_argument("a record of another size");
  const std::size_t at = block_.size();
  block_.resize(at + sample_number_bytes);
  put(block_.data() + at, sample);
  block_.insert(block_.end(), payload.begin(), payload.end());
  last_ = sample;
  if (++waiting_ == per_block_) flush();
}

void RecordWriter::flush() {
  if (waiting_ == 0) return;
  if (mark_) cut_to(file_, descriptor_, end_);
  mark_.reset();
  put(block_.data(), waiting_);
  const std::span<const std::byte> all(block_);
  put(block_.data() + 4, sum(all.first(4), all.subspan(block_head_bytes)));
  write_at(file_, descriptor_, end_, block_);
  sync(file_, descriptor_);
  end_ += block_.size();
  waiting_ = 0;
  block_.resize(block_head_bytes);
}

void RecordWriter::finish(const EndMark& mark) {
  if (mark.end > mark.total || (last_ && *last_ >= mark.end))
    throw std::invalid_argument("an end mark stands after all samples");
  flush();
  if (mark_ == mark) return;
  std::array<std::byte, end_mark_bytes> bytes{};
  put(bytes.data() + 8, mark.end);
  put(bytes.data() + 16, mark.total);
  const std::span<const std::byte> all(bytes);
  put(bytes.data() + 4, sum(all.first(4), all.subspan(block_head_bytes)));
  write_at(file_, descriptor_, end_, bytes);
  sync(file_, descriptor_);
  mark_ = mark;
}

void RecordWriter::restart() {
  cut_to(file_, descriptor_, header_bytes);
  end_ = header_bytes;
  last_.reset();
  mark_.reset();
  waiting_ = 0;
  block_.resize(block_head_bytes);
}

}  // namespace bide::study
