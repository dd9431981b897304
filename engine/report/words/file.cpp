#include "bide/report/words/file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <system_error>

namespace bide::report {
namespace {

namespace fs = std::filesystem;

std::string reason(int error) {
  return std::error_code(error, std::generic_category()).message();
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

std::optional<std::string> write_whole(const fs::path& path, std::string_view text) {
  if (written_in_place(path)) {
    const int file = ::open(path.c_str(), O_WRONLY | O_CLOEXEC);
    if (file < 0) return reason(errno);
    const int error = write_all(file, text);
    const int close_error = ::close(file) != 0 ? errno : 0;
    if (error != 0 || close_error != 0) return reason(error != 0 ? error : close_error);
    return {};
  }
  const fs::path folder = folder_of(path);
  std::string fresh = (folder / fmt::format(".{}.XXXXXX", path.filename().string())).string();
  const int file = ::mkostemp(fresh.data(), O_CLOEXEC);
  if (file < 0) return reason(errno);
  int error = write_all(file, text);
  constexpr mode_t readable_by_all = 0644;
  if (error == 0 && ::fchmod(file, readable_by_all) != 0) error = errno;
  if (error == 0 && ::fsync(file) != 0) error = errno;
  if (::close(file) != 0 && error == 0) error = errno;
  if (error == 0 && ::rename(fresh.c_str(), path.c_str()) != 0) error = errno;
  if (error == 0) return {};
  ::unlink(fresh.c_str());
  return reason(error);
}

}  // namespace bide::report
