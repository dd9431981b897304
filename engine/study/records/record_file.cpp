#include "bide/study/records/record_file.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <boost/crc.hpp>
#include <boost/endian/conversion.hpp>
#include <cerrno>
#include <cstring>
#include <system_error>
#include <utility>

namespace bide::study {
namespace {

using Path = std::filesystem::path;
using Bytes = std::vector<std::byte>;

constexpr std::string_view mark = "bidestd1";
constexpr std::size_t header_bytes = 24, summed_header_bytes = 20, block_head_bytes = 8, sample_bytes = 8;
// A length that no writer makes is a torn or foreign block, and is not worth the memory.
constexpr std::uint64_t most_block_bytes = std::uint64_t{1} << 28;

[[noreturn]] void fail(const Path& file, const std::string& doing) {
  throw RecordFileError(file, doing + ": " + std::generic_category().message(errno));
}

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

// Up to out.size() bytes from `at`; fewer only at the end of the file.
std::size_t read_at(const Path& file, int descriptor, std::uint64_t at, std::span<std::byte> out) {
  std::size_t done = 0;
  while (done < out.size()) {
    const auto got = ::pread(descriptor, out.data() + done, out.size() - done, static_cast<off_t>(at + done));
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) fail(file, "cannot read");
    if (got == 0) break;
    done += static_cast<std::size_t>(got);
  }
  return done;
}

void write_at(const Path& file, int descriptor, std::uint64_t at, std::span<const std::byte> bytes) {
  std::size_t done = 0;
  while (done < bytes.size()) {
    const auto put =
        ::pwrite(descriptor, bytes.data() + done, bytes.size() - done, static_cast<off_t>(at + done));
    if (put < 0 && errno == EINTR) continue;
    if (put < 0) fail(file, "cannot write");
    done += static_cast<std::size_t>(put);
  }
}

// So that a rename outlives a power cut.
void sync_folder_of(const Path& file) {
  const Path folder = file.has_parent_path() ? file.parent_path() : Path(".");
  const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (descriptor < 0 || ::fsync(descriptor) != 0) {
    const int reason = errno;
    if (descriptor >= 0) ::close(descriptor);
    errno = reason;
    fail(folder, "cannot write the folder");
  }
  ::close(descriptor);
}

Path beside(const Path& file) {
  Path other = file;
  other += ".part";
  return other;
}

void make_header(const Path& file, const RecordKind& kind) {
  std::array<std::byte, header_bytes> header;
  std::memcpy(header.data(), mark.data(), mark.size());
  put(header.data() + 8, kind.study);
  put(header.data() + 16, kind.payload_bytes);
  put(header.data() + summed_header_bytes, sum({header.data(), summed_header_bytes}));
  const Path part = beside(file);
  const int descriptor = ::open(part.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644);
  if (descriptor < 0) fail(part, "cannot make");
  try {
    write_at(part, descriptor, 0, header);
    if (::fsync(descriptor) != 0) fail(part, "cannot write");
  } catch (...) {
    ::close(descriptor);
    throw;
  }
  ::close(descriptor);
  if (::rename(part.c_str(), file.c_str()) != 0) fail(file, "cannot rename to");
  sync_folder_of(file);
}

}  // namespace

RecordFileError::RecordFileError(const Path& file, const std::string& what)
    : std::runtime_error(file.string() + ": " + what) {}

RecordReader::RecordReader(const Path& file) : file_(file) {
  std::array<std::byte, header_bytes> header;
  descriptor_ = ::open(file.c_str(), O_RDONLY | O_CLOEXEC);
  if (descriptor_ < 0) fail(file, "cannot open");
  const bool whole =
      read_at(file, descriptor_, 0, header) == header_bytes &&
      std::memcmp(header.data(), mark.data(), mark.size()) == 0 &&
      get<std::uint32_t>(header.data() + summed_header_bytes) == sum({header.data(), summed_header_bytes});
  if (!whole) {
    ::close(descriptor_);
    throw RecordFileError(file, "not a file of study results, or its header is damaged");
  }
  kind_ = {get<std::uint64_t>(header.data() + 8), get<std::uint32_t>(header.data() + 16)};
  whole_ = header_bytes;
}

RecordReader::~RecordReader() {
  if (descriptor_ >= 0) ::close(descriptor_);
}

RecordReader::RecordReader(RecordReader&& other) noexcept
    : file_(std::move(other.file_)),
      descriptor_(std::exchange(other.descriptor_, -1)),
      kind_(other.kind_),
      whole_(other.whole_),
      block_(std::move(other.block_)),
      at_(other.at_),
      last_(other.last_),
      record_(std::move(other.record_)) {}

bool RecordReader::read_block() {
  std::array<std::byte, block_head_bytes> head;
  if (read_at(file_, descriptor_, whole_, head) < head.size()) return false;
  const std::uint64_t bytes =
      std::uint64_t{get<std::uint32_t>(head.data())} * (sample_bytes + kind_.payload_bytes);
  if (bytes == 0 || bytes > most_block_bytes) return false;
  block_.resize(bytes);
  if (read_at(file_, descriptor_, whole_ + head.size(), block_) < bytes) return false;
  if (get<std::uint32_t>(head.data() + 4) != sum({head.data(), 4}, block_)) return false;
  whole_ += head.size() + bytes;
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
  record_.payload.assign(from + sample_bytes, from + sample_bytes + kind_.payload_bytes);
  at_ += sample_bytes + kind_.payload_bytes;
  if (last_ && record_.sample <= *last_) throw RecordFileError(file_, "its samples do not ascend");
  last_ = record_.sample;
  return &record_;
}

RecordWriter::RecordWriter(const Path& file, const RecordKind& kind, std::size_t block_records)
    : file_(file), kind_(kind), per_block_(block_records) {
  if (per_block_ == 0 || per_block_ > most_block_bytes / (sample_bytes + kind.payload_bytes)) {
    throw std::invalid_argument("a block holds at least one record, and at most 256 MiB");
  }
  if (!std::filesystem::exists(file)) make_header(file, kind);
  descriptor_ = ::open(file.c_str(), O_RDWR | O_CLOEXEC);
  if (descriptor_ < 0) fail(file, "cannot open");
  try {
    if (::flock(descriptor_, LOCK_EX | LOCK_NB) != 0) fail(file, "another process writes to it");
    RecordReader reader(file);
    if (reader.kind() != kind) throw RecordFileError(file, "holds results of another study");
    while (const Record* record = reader.next()) last_ = record->sample;
    end_ = reader.whole_bytes();
    struct stat status {};
    if (::fstat(descriptor_, &status) != 0) fail(file, "cannot read");
    cut_off_ = static_cast<std::uint64_t>(status.st_size) - end_;
    if (cut_off_ > 0 && ::ftruncate(descriptor_, static_cast<off_t>(end_)) != 0) fail(file, "cannot cut");
  } catch (...) {
    ::close(descriptor_);
    throw;
  }
  block_.resize(block_head_bytes);
}

RecordWriter::~RecordWriter() {
  ::close(descriptor_);
}

void RecordWriter::add(std::uint64_t sample, std::span<const std::byte> payload) {
  if (last_ && sample <= *last_) throw std::invalid_argument("samples are added in ascending order");
  if (payload.size() != kind_.payload_bytes) throw std::invalid_argument("a record of another size");
  const std::size_t at = block_.size();
  block_.resize(at + sample_bytes);
  put(block_.data() + at, sample);
  block_.insert(block_.end(), payload.begin(), payload.end());
  last_ = sample;
  if (++waiting_ == per_block_) flush();
}

void RecordWriter::flush() {
  if (waiting_ == 0) return;
  put(block_.data(), waiting_);
  const std::span<const std::byte> all(block_);
  put(block_.data() + 4, sum(all.first(4), all.subspan(block_head_bytes)));
  write_at(file_, descriptor_, end_, block_);
  if (::fdatasync(descriptor_) != 0) fail(file_, "cannot write");
  end_ += block_.size();
  waiting_ = 0;
  block_.resize(block_head_bytes);
}

std::uint64_t merge_records(std::span<const Path> parts, const Path& merged) {
  if (parts.empty()) throw std::invalid_argument("nothing to merge");
  if (std::filesystem::exists(merged)) throw RecordFileError(merged, "is there already");
  std::vector<RecordReader> readers;
  std::vector<const Record*> heads;
  for (const Path& part : parts) {
    readers.emplace_back(part);
    if (readers.back().kind() != readers.front().kind()) {
      throw RecordFileError(part, "holds results of another study than " + parts.front().string());
    }
  }
  for (auto& reader : readers) heads.push_back(reader.next());
  Path whole = merged;
  whole += ".merging";
  std::filesystem::remove(whole);
  std::uint64_t count = 0;
  {
    RecordWriter writer(whole, readers.front().kind());
    while (true) {
      const Record* lowest = nullptr;
      for (const Record* head : heads) {
        if (head && (!lowest || head->sample < lowest->sample)) lowest = head;
      }
      if (!lowest) break;
      const Record taken = *lowest;
      for (std::size_t i = 0; i < heads.size(); ++i) {
        if (!heads[i] || heads[i]->sample != taken.sample) continue;
        if (heads[i]->payload != taken.payload) {
          throw RecordFileError(
              parts[i], "sample " + std::to_string(taken.sample) + " has other results than in another part");
        }
        heads[i] = readers[i].next();
      }
      writer.add(taken.sample, taken.payload);
      ++count;
    }
    writer.flush();
  }
  if (::rename(whole.c_str(), merged.c_str()) != 0) fail(merged, "cannot rename to");
  sync_folder_of(merged);
  return count;
}

}  // namespace bide::study
