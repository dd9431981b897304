// Output files, whole or not at all.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace bide::report {

// Why a file at `path` could not be written, found without touching it: its folder is missing or not
// writable, or it is itself a folder. Nothing when it can.
std::optional<std::string> why_not_writable(const std::filesystem::path& path);

// Writes a new file beside `path`, flushes it to the disk and renames it over `path`, so that a reader sees
// the old text or the new one. The reason when it fails; nothing is left behind then.
std::optional<std::string> write_whole(const std::filesystem::path& path, std::string_view text);

}  // namespace bide::report
