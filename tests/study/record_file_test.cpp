#include "bide/study/records/record_file.hpp"

#include <doctest/doctest.h>
#include <unistd.h>

#include <cstring>
#include <fstream>
#include <iterator>
#include <string>

using namespace bide::study;
namespace fs = std::filesystem;

namespace {

// A folder of its own, gone at the end.
struct Folder {
  fs::path path = fs::temp_directory_path() / ("bide_record_file_" + std::to_string(::getpid()));
  Folder() { fs::create_directories(path); }
  ~Folder() { fs::remove_all(path); }
  fs::path operator/(const char* name) const { return path / name; }
};

constexpr RecordKind kind{0x1122334455667788U, 16};

std::vector<std::byte> payload(std::uint64_t sample) {
  std::vector<std::byte> bytes(16);
  const std::uint64_t square = sample * sample;
  std::memcpy(bytes.data(), &sample, 8);
  std::memcpy(bytes.data() + 8, &square, 8);
  return bytes;
}

void write(const fs::path& file, std::uint64_t from, std::uint64_t to, std::uint64_t step,
           std::size_t per_block) {
  RecordWriter writer(file, kind, per_block);
  for (std::uint64_t k = from; k < to; k += step) writer.add(k, payload(k));
  writer.flush();
}

std::vector<std::uint64_t> samples(const fs::path& file) {
  std::vector<std::uint64_t> found;
  RecordReader reader(file);
  while (const Record* record = reader.next()) {
    CHECK(record->payload == payload(record->sample));
    found.push_back(record->sample);
  }
  return found;
}

std::vector<std::uint64_t> counted(std::uint64_t to) {
  std::vector<std::uint64_t> all;
  for (std::uint64_t k = 0; k < to; ++k) all.push_back(k);
  return all;
}

std::string text_of(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

void put_text(const fs::path& file, const std::string& text) {
  std::ofstream(file, std::ios::binary | std::ios::trunc) << text;
}

}  // namespace

TEST_CASE("the file is laid out as its description says") {
  const Folder folder;
  write(folder / "a", 0, 5, 1, 3);
  const std::string text = text_of(folder / "a");
  // Header 24; a block of three and one of two records of 8 + 16 bytes, each with 8 bytes before it.
  CHECK(text.size() == 24 + 8 + 3 * 24 + 8 + 2 * 24);
  CHECK(text.substr(0, 8) == "bidestd1");
  CHECK(text[8] == '\x88');
  CHECK(text[16] == '\x10');
  CHECK(text[24] == '\x03');
  CHECK(text[24 + 8 + 24] == '\x01');  // sample 1
  CHECK_FALSE(fs::exists(folder / "a.part"));
}

TEST_CASE("cut at any byte of the last block, a file is taken up again with nothing lost or doubled") {
  const Folder folder;
  write(folder / "a", 0, 7, 1, 3);  // blocks of 3, 3 and 1 records
  write(folder / "a", 7, 9, 1, 3);  // and one of 2
  const std::string text = text_of(folder / "a");
  const std::size_t last_block = text.size() - (8 + 2 * 24);
  for (std::size_t cut = last_block; cut <= text.size(); ++cut) {
    CAPTURE(cut);
    put_text(folder / "b", text.substr(0, cut));
    const bool whole = cut == text.size();
    CHECK(samples(folder / "b") == counted(whole ? 9 : 7));  // reading alone does not mind the torn end
    {
      RecordWriter writer(folder / "b", kind, 4);
      CHECK(writer.last() == (whole ? 8U : 6U));
      CHECK(writer.bytes_cut_off() == (whole ? 0 : cut - last_block));
      CHECK(fs::file_size(folder / "b") == (whole ? cut : last_block));
      for (std::uint64_t k = *writer.last() + 1; k < 20; ++k) writer.add(k, payload(k));
      writer.flush();
    }
    CHECK(samples(folder / "b") == counted(20));
  }
}

TEST_CASE("a bit that turned ends the file at the block before") {
  const Folder folder;
  write(folder / "a", 0, 6, 1, 3);
  const std::string text = text_of(folder / "a");
  for (std::size_t at = text.size() - (8 + 3 * 24); at < text.size(); ++at) {
    std::string turned = text;
    turned[at] = static_cast<char>(turned[at] ^ 0x10);
    put_text(folder / "b", turned);
    CHECK(samples(folder / "b") == counted(3));
  }
  for (std::size_t at = 0; at < 24; ++at) {
    std::string turned = text;
    turned[at] = static_cast<char>(turned[at] ^ 0x10);
    put_text(folder / "b", turned);
    CHECK_THROWS_AS(RecordReader(folder / "b"), RecordFileError);
  }
  for (std::size_t cut = 0; cut < 24; ++cut) {
    put_text(folder / "b", text.substr(0, cut));
    CHECK_THROWS_AS(RecordWriter(folder / "b", kind), RecordFileError);
  }
}

TEST_CASE("what is not flushed is not there; a second writer and another study are refused") {
  const Folder folder;
  {
    RecordWriter writer(folder / "a", kind, 4);
    for (std::uint64_t k = 0; k < 6; ++k) writer.add(k, payload(k));
    CHECK_THROWS_AS(writer.add(5, payload(5)), std::invalid_argument);
    CHECK_THROWS_AS(writer.add(6, std::vector<std::byte>(15)), std::invalid_argument);
    CHECK_THROWS_AS(RecordWriter(folder / "a", kind), RecordFileError);
  }
  CHECK(samples(folder / "a") == counted(4));
  CHECK_THROWS_AS(RecordWriter(folder / "a", {kind.study + 1, 16}), RecordFileError);
  CHECK_THROWS_AS(RecordWriter(folder / "a", {kind.study, 24}), RecordFileError);
  CHECK_THROWS_AS(RecordReader(folder / "none"), RecordFileError);
  CHECK_THROWS_AS(RecordWriter(folder / "no/such/folder", kind), RecordFileError);
}

TEST_CASE("parts are merged in sample order, a sample in two parts once") {
  const Folder folder;
  write(folder / "0", 0, 1000, 3, 7);
  write(folder / "1", 1, 1000, 3, 64);
  write(folder / "2", 2, 1000, 3, records_per_block);
  write(folder / "again", 0, 1000, 2, 10);
  const std::vector<fs::path> parts{folder / "2", folder / "0", folder / "again", folder / "1"};
  CHECK(merge_records(parts, folder / "merged") == 1000);
  CHECK(samples(folder / "merged") == counted(1000));
  CHECK_THROWS_AS(merge_records(parts, folder / "merged"), RecordFileError);  // is there already
  // The order of the parts leaves no trace.
  const std::vector<fs::path> turned{folder / "1", folder / "again", folder / "0", folder / "2"};
  merge_records(turned, folder / "other");
  CHECK(text_of(folder / "merged") == text_of(folder / "other"));

  {
    RecordWriter writer(folder / "differs", kind);
    writer.add(6, payload(7));
    writer.flush();
  }
  const std::vector<fs::path> clash{folder / "0", folder / "differs"};
  CHECK_THROWS_AS(merge_records(clash, folder / "clash"), RecordFileError);
  CHECK_FALSE(fs::exists(folder / "clash"));
  RecordWriter(folder / "foreign", {1, 16}).flush();
  const std::vector<fs::path> mixed{folder / "0", folder / "foreign"};
  CHECK_THROWS_AS(merge_records(mixed, folder / "mixed"), RecordFileError);
}
