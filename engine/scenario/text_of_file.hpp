// The text of an input file, within the size that the reader accepts.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "bide/scenario/validate.hpp"

namespace bide::scenario {

// `what` names what the file should be, for messages: "a scenario file".
std::optional<std::string> text_of_file(const std::filesystem::path& path, const char* what,
                                        Diagnostics& wrong);

}  // namespace bide::scenario
