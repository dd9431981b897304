#include "output.hpp"

#include <fmt/core.h>

#include <cstdio>
#include <filesystem>
#include <fstream>

#include "arguments.hpp"
#include "bide/core/printable.hpp"
#include "terminal.hpp"

namespace bide::tool {

int put(const std::string& text, const std::string& path, bool force) {
  if (path.empty() || path == "-") {
    const std::string shown = printable_lines(text);
    const bool written =
        std::fwrite(shown.data(), 1, shown.size(), stdout) == shown.size() && std::fflush(stdout) == 0;
    if (!written) say("bide: cannot write to standard output\n");
    return written ? exit_ok : exit_cannot_write;
  }
  std::error_code error;
  if (!force && std::filesystem::exists(path, error)) {
    say("bide: {} exists; give --force to overwrite it\n", path);
    return exit_cannot_write;
  }
  std::ofstream stream(path, std::ios::binary | std::ios::trunc);
  stream << text;
  stream.close();
  if (stream) return exit_ok;
  say("bide: cannot write {}\n", path);
  return exit_cannot_write;
}

void complain(const scenario::Diagnostics& diagnostics) {
  for (const scenario::Diagnostic& each : diagnostics) say("{}\n", scenario::to_string(each));
}

}  // namespace bide::tool
