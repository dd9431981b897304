#include "csv_file.hpp"

#include "arguments.hpp"
#include "files.hpp"
#include "output.hpp"
#include "terminal.hpp"

namespace bide::tool {
namespace {

struct Parts {
  std::string notice, table;
};

Parts parts_of(const std::string& text) {
  std::size_t at = 0;
  while (at < text.size() && text[at] == '#') at = text.find('\n', at) + 1;
  return {text.substr(0, at), text.substr(at)};
}

}  // namespace

std::filesystem::path notice_of(const std::filesystem::path& table, bool plain) {
  if (!plain || table.empty() || is_output(table)) return {};
  std::filesystem::path out = table;
  return out += ".notice.txt";
}

int write_csv(const std::filesystem::path& path, const std::string& text, bool plain) {
  if (!plain) return put_result(text, path);
  const Parts parts = parts_of(text);
  if (is_output(path)) say_text(parts.notice);
  const int code = write_file(notice_of(path, plain), parts.notice);
  return code == exit_ok ? put_result(parts.table, path) : code;
}

}  // namespace bide::tool
