#include "bide/core/file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <system_error>

namespace bide {
namespace {

namespace fs = std::filesystem;

std::string reason(int error) {
  return std::error_code(error, std::generic_category()).message();
}

[[noreturn]] void fail(int error = errno) {
  throw std::system_error(error, std::generic_category());
}

fs::path folder_of(const fs::path& path) {
  const fs::path folder = path.parent_path();
  return folder.empty() ? fs::path(".") : folder;
}

// A device or a pipe cannot be replaced by renaming: it is written to directly.
bool written_in_place(const fs::path& path) {
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  return !error && fs::exists(status) && !fs::is_regular_file(status);
}

// The errno of the first failure, 0 when all of it is on the disk.
int write_all(int file, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(file, text.data(), text.size());
    if (written < 0) {
      if (errno == EINTR) continue;
      return errno;
    }
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return 0;
}

}  // namespace

std::optional<std::string> why_not_writable(const fs::path& path) {
  std::error_code error;
  if (path.filename().empty() || fs::is_directory(path, error)) return "it is a folder";
  if (written_in_place(path)) {
    if (::access(path.c_str(), W_OK) != 0) return reason(errno);
    return {};
  }
  const fs::path folder = folder_of(path);
  if (!fs::exists(folder, error)) return fmt::format("the folder {} does not exist", folder.string());
  if (!fs::is_directory(folder, error)) return fmt::format("{} is not a folder", folder.string());
  if (::access(folder.c_str(), W_OK | X_OK) != 0) {
    return fmt::format("the folder {}: {}", folder.string(), reason(errno));
  }
  return {};
}

NewFile::NewFile(const fs::path& path) : path_(path) {
  if (written_in_place(path)) fail(ENOTSUP);
  std::string name = (folder_of(path) / fmt::format(".{}.XXXXXX", path.filename().string())).string();
  const int file = ::mkostemp(name.data(), O_CLOEXEC);
  if (file < 0) fail();
  beside_ = name;
  constexpr mode_t readable_by_all = 0644;
  const int error = ::fchmod(file, readable_by_all) != 0 ? errno : 0;
  ::close(file);
  if (error == 0) return;
  ::unlink(beside_.c_str());
  fail(error);
}

NewFile::~NewFile() {
  if (!beside_.empty()) ::unlink(beside_.c_str());
}

void NewFile::keep() {
  const int file = ::open(beside_.c_str(), O_RDONLY | O_CLOEXEC);
  if (file < 0) fail();
  const int error = ::fsync(file) != 0 ? errno : 0;
  ::close(file);
  if (error != 0) fail(error);
  if (::rename(beside_.c_str(), path_.c_str()) != 0) fail();
  beside_.clear();
}

std::optional<std::string> write_whole(const fs::path& path, std::string_view text) {
  const auto write = [&](const fs::path& to) {
    const int file = ::open(to.c_str(), O_WRONLY | O_CLOEXEC);
    if (file < 0) fail();
    const int error = write_all(file, text);
    const int close_error = ::close(file) != 0 ? errno : 0;
    if (error != 0 || close_error != 0) fail(error != 0 ? error : close_error);
  };
  try {
    if (written_in_place(path)) {
      write(path);
      return {};
    }
    NewFile fresh(path);
    write(fresh.beside());
    fresh.keep();
  } catch (const std::system_error& error) {
    return error.code().message();
  }
  return {};
}

}  // namespace bide
