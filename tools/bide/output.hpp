// Where a command's text goes: standard output, or a file that is never overwritten unless asked.
#pragma once

#include <filesystem>
#include <string>

#include "bide/study/ensemble/refusal.hpp"

namespace bide::tool {

// "" or "-" is standard output, through the gate of core/printable.hpp, which leaves JSON the same JSON.
// Returns exit_ok or exit_cannot_write (and says why on standard error).
int put(const std::string& text, const std::string& path, bool force);

// Among the files of a command, a table or JSON named "-" goes to standard output, and nothing else does.
bool is_output(const std::filesystem::path& path);
// A result as a whole file, on standard output, or, without a name, nowhere. Returns as put().
int put_result(const std::string& text, const std::filesystem::path& path);

// Says why a question has no answer; the exit code for it.
int refuse(const study::Refusal& refusal);

// Each on a line of standard error.
void complain(const scenario::Diagnostics& diagnostics);

}  // namespace bide::tool
