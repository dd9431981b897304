// The files of a command: what it reads and what it writes are kept apart.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "bide/scenario/validate.hpp"

namespace bide::tool {

struct Files {
  std::vector<std::filesystem::path> read;
  std::vector<std::filesystem::path> written;  // those without a name are passed over
};

// Sees to it, before anything runs, that no output is an input or another output, under whatever name or
// link, and that each can be written. Devices and pipes are never the same.
// @return exit_ok, exit_usage or exit_cannot_write; what is wrong is said on standard error
int check(const Files& files);

// The scenario's own file and every weather file it may use, drawn ones too.
std::vector<std::filesystem::path> files_of(const scenario::ValidScenario& scenario);

// Writes a file as a whole or not at all; one without a name is passed over.
// @return exit_ok or exit_cannot_write; what is wrong is said on standard error
int write_file(const std::filesystem::path& path, std::string_view text);

}  // namespace bide::tool
