#include "files.hpp"

#include <fmt/core.h>

#include <system_error>

#include "arguments.hpp"
#include "bide/core/file.hpp"
#include "bide/scenario/weather_files.hpp"
#include "output.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

namespace fs = std::filesystem;

// Device and number of the file where both are there, hard and soft links followed; else the place where it
// would be.
bool same_file(const fs::path& a, const fs::path& b) {
  std::error_code error;
  const auto special = [&](const fs::path& path) {
    const fs::file_status status = fs::status(path, error);
    return fs::exists(status) && !fs::is_regular_file(status);
  };
  if (special(a) || special(b)) return false;
  if (fs::exists(a, error) && fs::exists(b, error)) return fs::equivalent(a, b, error);
  const auto place = [&](const fs::path& path) {
    return fs::weakly_canonical(fs::absolute(path, error), error);
  };
  return place(a) == place(b);
}

int clash(const fs::path& path, const char* what) {
  say("{}: {}\n", report::plain(path.string()), what);
  return exit_usage;
}

}  // namespace

int check(const Files& files) {
  for (std::size_t i = 0; i < files.written.size(); ++i) {
    const fs::path& output = files.written[i];
    if (output.empty()) continue;
    for (const fs::path& input : files.read)
      if (same_file(output, input)) return clash(output, "would overwrite what is read");
    for (std::size_t j = 0; j < i; ++j)
      if (!files.written[j].empty() && same_file(output, files.written[j]))
        return clash(output, "named for two outputs");
  }
  for (const fs::path& output : files.written)
    if (!output.empty() && !is_output(output))
      if (const auto why = why_not_writable(output))
        return cannot_write(output.string(), *why, letters(true));
  return exit_ok;
}

std::vector<fs::path> files_of(const scenario::ValidScenario& scenario) {
  std::vector<fs::path> out{scenario.file};
  for (const std::string& name : scenario::weather_files(scenario)) out.push_back(scenario.folder / name);
  return out;
}

int write_file(const fs::path& path, std::string_view text) {
  if (path.empty()) return exit_ok;
  const auto why = write_whole(path, text);
  return why ? cannot_write(path.string(), *why, letters(true)) : exit_ok;
}

}  // namespace bide::tool
