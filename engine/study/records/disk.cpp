#include "bide/study/records/disk.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <sys/sysmacros.h>
#include <unistd.h>

#include <cerrno>
#include <fstream>
#include <sstream>
#include <system_error>

namespace bide::study {
namespace {

using Path = std::filesystem::path;
using Fault = RecordFileError::Fault;

[[noreturn]] void fail(const Path& file, const std::string& doing, Fault fault) {
  throw RecordFileError(file, doing + ": " + std::generic_category().message(errno), fault);
}

struct stat status_of(const Path& file, const Descriptor& descriptor) {
  struct stat status {};
  if (::fstat(descriptor.get(), &status) != 0) fail(file, "cannot read", Fault::cannot_be_used);
  return status;
}

// The process that holds the lock, as Linux lists it: "3: FLOCK  ADVISORY  WRITE 1234 08:02:4711 0 EOF".
std::string writer_of(const struct stat& status) {
  const std::string wanted =
      fmt::format("{:02x}:{:02x}:{}", major(status.st_dev), minor(status.st_dev), status.st_ino);
  std::ifstream locks("/proc/locks");
  for (std::string line; std::getline(locks, line);) {
    std::istringstream words(line);
    std::string number, kind, advisory, mode, process, place;
    if (words >> number >> kind >> advisory >> mode >> process >> place && kind == "FLOCK" && place == wanted)
      return "process " + process;
  }
  return "another process";
}

// Whether the name still stands for the file that was opened: it may have been renamed or deleted meanwhile.
bool still_named(const Path& file, const struct stat& opened) {
  struct stat named {};
  return ::stat(file.c_str(), &named) == 0 && named.st_dev == opened.st_dev && named.st_ino == opened.st_ino;
}

}  // namespace

RecordFileError::RecordFileError(const Path& file, const std::string& what, Fault fault)
    : std::runtime_error(file.string() + ": " + what), fault_(fault) {}

Descriptor::~Descriptor() {
  if (number_ >= 0) ::close(number_);
}

Descriptor& Descriptor::operator=(Descriptor&& other) noexcept {
  std::swap(number_, other.number_);
  return *this;
}

Descriptor open_to_read(const Path& file) {
  // Without waiting: a pipe would keep the program for ever.
  Descriptor descriptor(::open(file.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
  if (descriptor.get() < 0) fail(file, "cannot open", Fault::cannot_be_used);
  if (!S_ISREG(status_of(file, descriptor).st_mode)) throw RecordFileError(file, "is no ordinary file");
  return descriptor;
}

Descriptor open_alone(const Path& file) {
  constexpr int attempts = 100;
  for (int i = 0; i < attempts; ++i) {
    // Through no link: it may lead to the results of another study.
    Descriptor descriptor(::open(file.c_str(), O_RDWR | O_CLOEXEC | O_NONBLOCK | O_NOFOLLOW));
    if (descriptor.get() < 0 && errno == ELOOP)
      throw RecordFileError(file, "is a link; allowed an ordinary file", Fault::cannot_be_written);
    if (descriptor.get() < 0 && errno == ENOENT) {
      descriptor = Descriptor(::open(file.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0644));
      if (descriptor.get() < 0 && errno == EEXIST) continue;
    }
    if (descriptor.get() < 0) fail(file, "cannot open for writing", Fault::cannot_be_written);
    const struct stat status = status_of(file, descriptor);
    if (!S_ISREG(status.st_mode))
      throw RecordFileError(file, "is no ordinary file", Fault::cannot_be_written);
    if (::flock(descriptor.get(), LOCK_EX | LOCK_NB) != 0) {
      if (errno != EWOULDBLOCK) fail(file, "cannot be locked", Fault::cannot_be_written);
      throw RecordFileError(file, writer_of(status) + " writes to it", Fault::cannot_be_written);
    }
    if (still_named(file, status)) return descriptor;
  }
  throw RecordFileError(file, "cannot open for writing", Fault::cannot_be_written);
}

std::uint64_t bytes_in(const Path& file, const Descriptor& descriptor) {
  return static_cast<std::uint64_t>(status_of(file, descriptor).st_size);
}

std::size_t read_at(const Path& file, const Descriptor& descriptor, std::uint64_t at,
                    std::span<std::byte> out) {
  std::size_t done = 0;
  while (done < out.size()) {
    const auto got =
        ::pread(descriptor.get(), out.data() + done, out.size() - done, static_cast<off_t>(at + done));
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) fail(file, "cannot read", Fault::cannot_be_used);
    if (got == 0) break;
    done += static_cast<std::size_t>(got);
  }
  return done;
}

void write_at(const Path& file, const Descriptor& descriptor, std::uint64_t at,
              std::span<const std::byte> bytes) {
  std::size_t done = 0;
  while (done < bytes.size()) {
    const auto put =
        ::pwrite(descriptor.get(), bytes.data() + done, bytes.size() - done, static_cast<off_t>(at + done));
    if (put < 0 && errno == EINTR) continue;
    if (put < 0) fail(file, "cannot write", Fault::cannot_be_written);
    done += static_cast<std::size_t>(put);
  }
}

void cut_to(const Path& file, const Descriptor& descriptor, std::uint64_t bytes) {
  if (::ftruncate(descriptor.get(), static_cast<off_t>(bytes)) != 0)
    fail(file, "cannot cut", Fault::cannot_be_written);
}

void sync(const Path& file, const Descriptor& descriptor) {
  if (::fdatasync(descriptor.get()) != 0) fail(file, "cannot write", Fault::cannot_be_written);
}

void sync_folder_of(const Path& file) {
  const Path folder = file.has_parent_path() ? file.parent_path() : Path(".");
  const Descriptor descriptor(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (descriptor.get() < 0 || ::fsync(descriptor.get()) != 0)
    fail(folder, "cannot write the folder", Fault::cannot_be_written);
}

}  // namespace bide::study
