#include "output.hpp"

#include <fmt/core.h>

#include <cstdio>
#include <filesystem>

#include "arguments.hpp"
#include "files.hpp"
#include "terminal.hpp"

namespace bide::tool {

int put(const std::string& text, const std::string& path, bool force) {
  if (path.empty() || path == "-") {
    const bool written =
        std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0;
    if (!written) fmt::print(stderr, "bide: cannot write to standard output\n");
    return written ? exit_ok : exit_cannot_write;
  }
  std::error_code error;
  if (!force && std::filesystem::exists(path, error)) {
    fmt::print(stderr, "bide: {} exists; give --force to overwrite it\n", path);
    return exit_cannot_write;
  }
  return write_file(path, text);
}

int refuse(const study::Refusal& refusal) {
  complain(refusal.reasons);
  switch (refusal.why) {
    case study::Refusal::Why::input:
      return exit_input_refused;
    case study::Refusal::Why::run:
      return exit_run_failed;
    case study::Refusal::Why::output:
      return exit_cannot_write;
  }
  return exit_run_failed;
}

void complain(const scenario::Diagnostics& diagnostics) {
  for (const scenario::Diagnostic& each : diagnostics) fmt::print(stderr, "{}\n", scenario::to_string(each));
}

}  // namespace bide::tool
