#include "bide/scenario/text_of_file.hpp"

#include <fmt/format.h>

#include <fstream>

#include "bide/scenario/document.hpp"

namespace bide::scenario {

std::optional<std::string> text_of_file(const std::filesystem::path& path, const char* what,
                                        Diagnostics& wrong) {
  const auto refuse = [&](std::string message) {
    wrong.push_back({path.string(), "", std::move(message)});
    return std::nullopt;
  };
  std::error_code error;
  if (!std::filesystem::exists(path, error))
    return refuse(fmt::format("found no such file; allowed {}", what));
  if (std::filesystem::is_directory(path, error))
    return refuse(fmt::format("found a folder; allowed {}", what));
  std::ifstream stream(path, std::ios::binary);
  if (!stream) return refuse("cannot be opened for reading");
  std::string text(largest_file_bytes + 1, '\0');
  stream.read(text.data(), static_cast<std::streamsize>(text.size()));
  if (stream.bad()) return refuse("cannot be read");
  text.resize(static_cast<std::size_t>(stream.gcount()));
  if (text.size() > largest_file_bytes)
    return refuse(fmt::format("found more than {} bytes; allowed at most that", largest_file_bytes));
  return text;
}

}  // namespace bide::scenario
