// Where a command's text goes: standard output, or a file that is never overwritten unless asked.
#pragma once

#include <string>

#include "bide/study/ensemble/refusal.hpp"

namespace bide::tool {

// "" or "-" is standard output, through the gate of core/printable.hpp, which leaves JSON the same JSON.
// Returns exit_ok or exit_cannot_write (and says why on standard error).
int put(const std::string& text, const std::string& path, bool force);

// Says why a question has no answer; the exit code for it.
int refuse(const study::Refusal& refusal);

// Each on a line of standard error.
void complain(const scenario::Diagnostics& diagnostics);

}  // namespace bide::tool
