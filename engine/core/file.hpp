// Output files, whole or not at all.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace bide {

// Why a file could not be written, found without touching it: its folder is missing or not writable, or the
// path is itself a folder.
// @return empty when it can be written
std::optional<std::string> why_not_writable(const std::filesystem::path& path);

// A new file beside `path`, under a name that nobody can have planted; it takes the name `path` when it is
// kept, so that a reader sees the old file or the new one, and is gone when it is not.
class NewFile {
 public:
  // Throws std::system_error when it cannot be made, or `path` is a device or a pipe.
  explicit NewFile(const std::filesystem::path& path);
  ~NewFile();
  NewFile(const NewFile&) = delete;
  NewFile& operator=(const NewFile&) = delete;

  // Its name until it is kept, for whoever writes it.
  const std::filesystem::path& beside() const { return beside_; }
  // Flushes it to the disk and renames it over `path`. Throws std::system_error.
  void keep();

 private:
  std::filesystem::path path_, beside_;
};

// Writes a file as a whole or not at all.
// @return empty when done; else the reason, and no new file is left behind
std::optional<std::string> write_whole(const std::filesystem::path& path, std::string_view text);

}  // namespace bide
