#include "bide/study/records/record_file.hpp"

#include <doctest/doctest.h>
#include <unistd.h>

#include <atomic>
#include <barrier>
#include <cstring>
#include <fstream>
#include <iterator>
#include <memory>
#include <string>
#include <thread>

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

constexpr RecordKind kind{0x1122334455667788U, 16, 0x99};

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

// A whole part of a study of 1000 samples.
void write_part(const fs::path& file, std::uint64_t from, std::uint64_t to, std::uint64_t step,
                std::size_t per_block = records_per_block) {
  RecordWriter writer(file, kind, per_block);
  for (std::uint64_t k = from; k < to; k += step) writer.add(k, payload(k));
  writer.finish({to, 1000});
}

std::string refusal(std::span<const fs::path> parts, const fs::path& merged) {
  try {
    merge_records(parts, merged, [](const Record&) {});
  } catch (const RecordFileError& wrong) {
    CHECK_FALSE(fs::exists(merged));
    CHECK_FALSE(fs::exists(merged.string() + ".merging"));
    return wrong.what();
  }
  return "";
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
  // Header 32; a block of three and one of two records of 8 + 16 bytes, each with 8 bytes before it.
  CHECK(text.size() == 32 + 8 + 3 * 24 + 8 + 2 * 24);
  CHECK(text.substr(0, 8) == "bidestd4");
  CHECK(text[8] == '\x88');
  CHECK(text[16] == '\x99');
  CHECK(text[24] == '\x10');
  CHECK(text[32] == '\x03');
  CHECK(text[32 + 8 + 24] == '\x01');  // sample 1
  // Nothing but the file itself: no other name that a link could stand under.
  CHECK(std::distance(fs::directory_iterator(folder.path), fs::directory_iterator()) == 1);
  {
    RecordWriter writer(folder / "a", kind, 3);
    writer.finish({5, 9});
  }
  const std::string ended = text_of(folder / "a");
  CHECK(ended.substr(0, text.size()) == text);
  CHECK(ended.size() == text.size() + 24);
  CHECK(ended.substr(text.size(), 4) == std::string(4, '\0'));
  CHECK(ended[text.size() + 8] == '\x05');
  CHECK(ended[text.size() + 16] == '\x09');
}

TEST_CASE("an end mark stays while nothing is added, gives way to what is, and is found again") {
  const Folder folder;
  {
    RecordWriter writer(folder / "a", kind, 3);
    for (std::uint64_t k = 0; k < 3; ++k) writer.add(k, payload(k));
    writer.finish({3, 6});
    CHECK_THROWS_AS(writer.finish({2, 6}), std::invalid_argument);  // sample 2 is there
    CHECK_THROWS_AS(writer.finish({7, 6}), std::invalid_argument);
  }
  const std::string ended = text_of(folder / "a");
  {
    RecordWriter writer(folder / "a", kind, 3);
    writer.finish({3, 6});
  }
  CHECK(text_of(folder / "a") == ended);
  {
    RecordWriter writer(folder / "a", kind, 3);
    for (std::uint64_t k = 3; k < 6; ++k) writer.add(k, payload(k));
    writer.finish({6, 6});
  }
  RecordReader reader(folder / "a");
  for (std::uint64_t k = 0; k < 6; ++k) CHECK(reader.next()->sample == k);
  CHECK_FALSE(reader.next());
  CHECK(reader.end_mark() == EndMark{6, 6});
  reader.expect_whole();
  // The same bytes as made at once.
  {
    RecordWriter writer(folder / "b", kind, 3);
    for (std::uint64_t k = 0; k < 6; ++k) writer.add(k, payload(k));
    writer.finish({6, 6});
  }
  CHECK(text_of(folder / "a") == text_of(folder / "b"));
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
  for (std::size_t at = 0; at < 32; ++at) {
    std::string turned = text;
    turned[at] = static_cast<char>(turned[at] ^ 0x10);
    put_text(folder / "b", turned);
    CHECK_THROWS_AS(RecordReader(folder / "b"), RecordFileError);
  }
}

TEST_CASE("a header cut short holds nothing and is made anew; a foreign file stays as it is") {
  const Folder folder;
  write(folder / "a", 0, 6, 1, 3);
  const std::string text = text_of(folder / "a");
  for (std::size_t cut = 0; cut < 32; ++cut) {
    for (const std::string& begun : {text.substr(0, cut), std::string(cut, '\0')}) {
      put_text(folder / "b", begun);
      write(folder / "b", 0, 6, 1, 3);
      CHECK(text_of(folder / "b") == text);
    }
    CHECK_THROWS_AS(RecordReader((put_text(folder / "b", text.substr(0, cut)), folder / "b")),
                    RecordFileError);
  }
  for (const char* foreign : {"x", "some notes", "a much longer file that is no file of records"}) {
    put_text(folder / "b", foreign);
    CHECK_THROWS_AS(RecordWriter(folder / "b", kind), RecordFileError);
    CHECK(text_of(folder / "b") == foreign);
  }
  fs::create_symlink(folder / "elsewhere", folder / "link");
  CHECK_THROWS_AS(RecordWriter(folder / "link", kind), RecordFileError);
  CHECK_FALSE(fs::exists(folder / "elsewhere"));
  // Nor through one that leads to the records of another study of the same kind, or to an empty file.
  for (const std::string& held : {text, std::string()}) {
    put_text(folder / "elsewhere", held);
    CHECK_THROWS_AS(RecordWriter(folder / "link", kind), RecordFileError);
    CHECK(text_of(folder / "elsewhere") == held);
  }
  CHECK_THROWS_AS(RecordReader(folder.path), RecordFileError);
}

TEST_CASE("of many that make one new file at once, one writes and the others say who does") {
  const Folder folder;
  constexpr int writers = 6, rounds = 40;
  for (int round = 0; round < rounds; ++round) {
    const fs::path file = folder / std::to_string(round).c_str();
    std::atomic<int> wrote = 0, refused = 0;
    std::barrier start(writers), tried(writers);
    std::vector<std::thread> threads;
    for (int i = 0; i < writers; ++i)
      threads.emplace_back([&] {
        std::unique_ptr<RecordWriter> writer;
        start.arrive_and_wait();
        try {
          writer = std::make_unique<RecordWriter>(file, kind);
          ++wrote;
        } catch (const RecordFileError& wrong) {
          const std::string why = wrong.what();
          const bool fits = why.find(file.string() + ": ") == 0 && why.find("process") != std::string::npos &&
                            why.find("writes to it") != std::string::npos;
          if (fits && wrong.fault() == RecordFileError::Fault::cannot_be_written) ++refused;
        }
        tried.arrive_and_wait();  // nobody lets go before all have tried
      });
    for (std::thread& each : threads) each.join();
    CHECK(wrote == 1);
    CHECK(refused == writers - 1);
    CHECK(samples(file).empty());
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

TEST_CASE("what was made where exp and log round differently is neither gone on with nor merged") {
  const Folder folder;
  write_part(folder / "here", 0, 500, 1);
  const RecordKind elsewhere{kind.study, kind.payload_bytes, kind.math + 1};
  RecordWriter(folder / "there", elsewhere).finish({500, 1000});
  const std::string before = text_of(folder / "here");
  std::string why;
  try {
    const RecordWriter writer(folder / "here", elsewhere);
  } catch (const RecordFileError& wrong) {
    why = wrong.what();
  }
  const std::string made = ": was made where the C library rounds exp, log and the like differently";
  CHECK(why.find((folder / "here").string() + made) == 0);
  CHECK(text_of(folder / "here") == before);
  const std::vector<fs::path> parts{folder / "here", folder / "there"};
  CHECK(refusal(parts, folder / "merged").find((folder / "there").string() + made) == 0);
}

TEST_CASE("parts are merged in sample order, a sample in two parts once") {
  const Folder folder;
  write_part(folder / "0", 0, 1000, 3, 7);
  write_part(folder / "1", 1, 1000, 3);
  write_part(folder / "2", 2, 1000, 3);
  write_part(folder / "again", 0, 1000, 2, 10);
  const std::vector<fs::path> parts{folder / "2", folder / "0", folder / "again", folder / "1"};
  CHECK(merge_records(parts, folder / "merged", [](const Record&) {}) == 1000);
  CHECK(samples(folder / "merged") == counted(1000));
  CHECK_THROWS_AS(merge_records(parts, folder / "merged", [](const Record&) {}),
                  RecordFileError);  // is there already
  // The order of the parts leaves no trace.
  const std::vector<fs::path> turned{folder / "1", folder / "again", folder / "0", folder / "2"};
  merge_records(turned, folder / "other", [](const Record&) {});
  CHECK(text_of(folder / "merged") == text_of(folder / "other"));
  // A record that cannot be is named with its part.
  std::string wrong;
  try {
    merge_records(parts, folder / "third", [](const Record& record) {
      if (record.sample == 400) throw std::invalid_argument("cannot be");
    });
  } catch (const RecordFileError& error) {
    wrong = error.what();
  }
  CHECK(wrong.find("sample 400: cannot be") != std::string::npos);
  CHECK(wrong.find(folder.path.string()) == 0);
  CHECK_FALSE(fs::exists(folder / "third"));
  CHECK_FALSE(fs::exists(folder / "third.merging"));

  {
    RecordWriter writer(folder / "differs", kind);
    writer.add(6, payload(7));
    writer.finish({7, 1000});
  }
  const std::vector<fs::path> clash{folder / "0", folder / "1", folder / "2", folder / "differs"};
  CHECK(refusal(clash, folder / "clash").find("differs: sample 6 has other results") != std::string::npos);
  RecordWriter(folder / "foreign", {1, 16}).finish({0, 0});
  const std::vector<fs::path> mixed{folder / "0", folder / "foreign"};
  CHECK(refusal(mixed, folder / "mixed").find("foreign: holds results of another study") !=
        std::string::npos);
}

TEST_CASE("a part that is cut, damaged or not done is named, and so is what is missing") {
  const Folder folder;
  write_part(folder / "a", 0, 400, 1);
  write_part(folder / "b", 400, 1000, 1);
  const std::vector<fs::path> parts{folder / "a", folder / "b"};
  const std::string text = text_of(folder / "b");
  const std::size_t block = 8 + 64 * 24;
  for (const std::size_t cut :
       {std::size_t{32}, 32 + block / 2, 32 + block, text.size() - 24, text.size() - 1}) {
    CAPTURE(cut);
    put_text(folder / "b", text.substr(0, cut));
    const std::string why = refusal(parts, folder / "merged");
    CHECK(why.find((folder / "b").string() + ": ") == 0);
    CHECK(why.find("run this part again") != std::string::npos);
  }
  put_text(folder / "b", text.substr(0, 32 + block));
  CHECK(refusal(parts, folder / "merged").find("ends after sample 463 without an end mark") !=
        std::string::npos);
  for (std::size_t at = 32; at < text.size(); at += 97) {
    std::string turned = text;
    turned[at] = static_cast<char>(turned[at] ^ 0x10);
    put_text(folder / "b", turned);
    CHECK(refusal(parts, folder / "merged").find((folder / "b").string() + ": ") == 0);
  }
  put_text(folder / "b", text + "more");
  CHECK(refusal(parts, folder / "merged").find("4 bytes from byte") != std::string::npos);
  // Whole parts that are not all.
  put_text(folder / "b", text);
  const std::string lacks = (folder / "merged").string() + ": cannot be made: samples ";
  CHECK(refusal(std::vector<fs::path>{folder / "a"}, folder / "merged") ==
        lacks + "400 to 999 are in none of the parts");
  CHECK(refusal(std::vector<fs::path>{folder / "b"}, folder / "merged") ==
        lacks + "0 to 399 are in none of the parts");
  CHECK(refusal(std::vector<fs::path>{folder / "a", folder / "none"}, folder / "merged")
            .find("none: cannot open") != std::string::npos);
  CHECK(merge_records(parts, folder / "merged", [](const Record&) {}) == 1000);
}
