// A small file of records with every byte changed and cut at every length, its sums put right again so that
// they hide nothing: reading it ends in results that are whole or in a refusal, never in a read beyond them.
#include <doctest/doctest.h>
#include <unistd.h>

#include <boost/crc.hpp>
#include <cstring>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

#include "bide/study/questions/outputs.hpp"
#include "bide/study/records/record_file.hpp"
#include "bide/study/records/sample_bytes.hpp"

using namespace bide;
namespace fs = std::filesystem;

namespace {

constexpr std::size_t persons = 2;

std::uint32_t number_at(const std::string& text, std::size_t at) {
  std::uint32_t value = 0;
  std::memcpy(&value, text.data() + at, sizeof value);  // both little-endian
  return value;
}

void put_sum(std::string& text, std::size_t at, std::initializer_list<std::string> parts) {
  boost::crc_32_type crc;
  for (const std::string& part : parts) crc.process_bytes(part.data(), part.size());
  const std::uint32_t sum = crc.checksum();
  std::memcpy(text.data() + at, &sum, sizeof sum);
}

// Puts the sum of the header right, and of every block and end mark as the changed lengths have them.
void put_sums_right(std::string& text) {
  if (text.size() < 32) return;
  put_sum(text, 28, {text.substr(0, 28)});
  const std::uint64_t record = 8 + std::uint64_t{number_at(text, 24)};
  for (std::size_t at = 32; at + 8 <= text.size();) {
    const std::uint64_t records = number_at(text, at), bytes = records == 0 ? 16 : records * record;
    if (bytes > text.size() - at - 8) return;
    put_sum(text, at + 4, {text.substr(at, 4), text.substr(at + 8, bytes)});
    at += 8 + bytes;
  }
}

std::string small_file(const fs::path& file) {
  study::RecordWriter writer(file, {7, static_cast<std::uint32_t>(study::sample_bytes(persons))}, 2);
  std::vector<std::byte> bytes(study::sample_bytes(persons));
  for (std::uint64_t k = 0; k < 3; ++k) {
    study::SampleResult result;
    result.horizon_s = 86400;
    result.persons.resize(persons);
    result.persons[1].able_until_s = 3600;
    if (k == 1) result.failure = "made to fail";
    study::write_sample(result, bytes);
    writer.add(k, bytes);
  }
  writer.finish({3, 3});
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

// Reads the file as a study does, figure by figure; how many samples it gave. Whoever sorts and sums them
// takes for granted that no time is below zero and that a person's figures are numbers.
int read_all(const fs::path& file) {
  int given = 0;
  try {
    study::RecordReader reader(file);
    while (const study::Record* record = reader.next()) {
      const study::SampleResult result = study::read_sample(record->sample, persons, record->payload);
      ++given;
      CHECK(result.failure.empty() == (result.persons.size() == persons));
      if (!result.failure.empty()) continue;
      for (const study::Output& output : study::outputs(persons)) {
        const double figure = output.of(result);
        const bool as_granted = (!output.is_time || figure >= 0) && (output.person < 0 || figure == figure);
        CHECK_MESSAGE(as_granted, output.name << " is " << figure);
      }
    }
    reader.expect_whole();
  } catch (const study::RecordFileError&) {
  } catch (const std::invalid_argument&) {
  }
  return given;
}

struct Folder {
  fs::path path = fs::temp_directory_path() / ("bide_record_fuzz_" + std::to_string(::getpid()));
  Folder() { fs::create_directories(path); }
  ~Folder() { fs::remove_all(path); }
};

}  // namespace

TEST_CASE("whatever a file of records holds, reading it ends in whole results or in a refusal") {
  const Folder folder;
  const fs::path changed = folder.path / "changed";
  const std::string text = small_file(folder.path / "small");
  REQUIRE(text.size() > 32 + 3 * study::sample_bytes(persons));
  const auto read = [&](std::string bytes, bool sums_right) {
    if (sums_right) put_sums_right(bytes);
    std::ofstream(changed, std::ios::binary | std::ios::trunc) << bytes;
    return read_all(changed);
  };
  CHECK(read(text, false) == 3);
  for (std::size_t at = 0; at < text.size(); ++at)
    for (const int mask : {0x01, 0x03, 0x80, 0xFF}) {
      std::string turned = text;
      turned[at] = static_cast<char>(turned[at] ^ mask);
      CAPTURE(at);
      CAPTURE(mask);
      CHECK(read(turned, true) <= 4);
      CHECK(read(turned, false) <= 3);
    }
  for (std::size_t cut = 0; cut <= text.size(); ++cut) {
    CAPTURE(cut);
    CHECK(read(text.substr(0, cut), true) <= 3);
  }
}

TEST_CASE("a record that failed for no reason, and one with a time that is none, are refused") {
  std::vector<std::byte> bytes(study::sample_bytes(persons));
  const auto why = [&] {
    try {
      study::read_sample(0, persons, bytes);
    } catch (const std::invalid_argument& wrong) {
      return std::string(wrong.what());
    }
    return std::string();
  };
  bytes[0] = std::byte{2};
  CHECK(why() == "it failed for no reason");
  bytes[1] = std::byte{'x'}, bytes[9] = std::byte{1};
  CHECK(why() == "something stands after the reason of its failure");
  study::SampleResult result;
  result.persons.resize(persons);
  result.persons[1].able_until_s = study::not_there;
  study::write_sample(result, bytes);
  CHECK(why().find("as a time") != std::string::npos);
  result.persons[1].able_until_s = -1;
  study::write_sample(result, bytes);
  CHECK(why().find("found -1 s as a time") == 0);
}
