// Output files, whole or not at all.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace bide::report {

// Why a file could not be written, found without touching it: its folder is missing or not writable, or the
// path is itself a folder.
// @return empty when it can be written
std::optional<std::string> why_not_writable(const std::filesystem::path& path);

// Writes a new file beside `path`, flushes it to the disk and renames it over `path`, so that a reader sees
// the old text or the new one.
// @return empty when done; else the reason, and no new file is left behind
std::optional<std::string> write_whole(const std::filesystem::path& path, std::string_view text);

}  // namespace bide::report
