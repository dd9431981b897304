#include "output.hpp"

#include <fmt/core.h>

#include <cstdio>
#include <filesystem>

#include "arguments.hpp"
#include "bide/core/printable.hpp"
#include "files.hpp"
#include "terminal.hpp"

namespace bide::tool {

int put(const std::string& text, const std::string& path, bool force) {
  if (path.empty() || is_output(path)) {
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
  return write_file(path, text);
}

bool is_output(const std::filesystem::path& path) {
  return path == "-";
}

int put_result(const std::string& text, const std::filesystem::path& path) {
  return is_output(path) ? put(text, "", false) : write_file(path, text);
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
  for (const scenario::Diagnostic& each : diagnostics)
    say("{}\n", with_signs(scenario::to_string(each), letters(false)));
}

}  // namespace bide::tool
