// Files of records as the system sees them: bytes at places, one writer at a time, what went wrong with which
// file.
//
// States: none. Inputs: paths, descriptors, places in bytes. Validity: Linux and other systems with flock.
#pragma once

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <span>
#include <stdexcept>
#include <string>
#include <utility>

namespace bide::study {

// What went wrong with which file.
class RecordFileError : public std::runtime_error {
 public:
  enum class Fault { cannot_be_used, cannot_be_written };
  RecordFileError(const std::filesystem::path& file, const std::string& what,
                  Fault fault = Fault::cannot_be_used);
  Fault fault() const { return fault_; }

 private:
  Fault fault_;
};

// Closes itself.
class Descriptor {
 public:
  explicit Descriptor(int number = -1) : number_(number) {}
  ~Descriptor();
  Descriptor(Descriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}
  Descriptor& operator=(Descriptor&& other) noexcept;
  int get() const { return number_; }

 private:
  int number_;
};

// An ordinary file for reading. Throws RecordFileError for anything else.
Descriptor open_to_read(const std::filesystem::path& file);

// For writing, made when it is not there, by one process at a time: of several that ask at once, one gets it.
// Throws RecordFileError for the others, naming the process that writes where the system tells.
Descriptor open_alone(const std::filesystem::path& file);

std::uint64_t bytes_in(const std::filesystem::path& file, const Descriptor& descriptor);

// Up to out.size() bytes from place `at`; fewer only at the end of the file.
std::size_t read_at(const std::filesystem::path& file, const Descriptor& descriptor, std::uint64_t at,
                    std::span<std::byte> out);
void write_at(const std::filesystem::path& file, const Descriptor& descriptor, std::uint64_t at,
              std::span<const std::byte> bytes);
void cut_to(const std::filesystem::path& file, const Descriptor& descriptor, std::uint64_t bytes);
// Waits until it is on the disk.
void sync(const std::filesystem::path& file, const Descriptor& descriptor);
// So that a new name outlives a power cut.
void sync_folder_of(const std::filesystem::path& file);

}  // namespace bide::study
