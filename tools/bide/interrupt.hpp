// What is said when a long command is interrupted.
#pragma once

#include <string>

namespace bide::tool {

inline constexpr int exit_interrupted = 130;  // as shells have it for SIGINT

// From now on SIGINT, SIGTERM and SIGHUP end the program with these words on standard error and
// exit_interrupted. Files are either whole or not there, and records are kept block by block, so it may end
// anywhere.
void when_interrupted(const std::string& words);

}  // namespace bide::tool
