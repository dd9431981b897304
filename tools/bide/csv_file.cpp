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
  if (!plain || table.empty()) return {};
  std::filesystem::path out = table;
  return out += ".notice.txt";
}

int write_csv(const std::filesystem::path& path, const std::string& text, bool plain) {
  if (!plain) return write_file(path, text);
  const Parts parts = parts_of(text);
  const int code = write_file(notice_of(path, plain), parts.notice);
  return code == exit_ok ? write_file(path, parts.table) : code;
}

int put_csv(const std::string& text, bool plain) {
  if (!plain) return put(text, "", false);
  const Parts parts = parts_of(text);
  say_text(parts.notice);
  return put(parts.table, "", false);
}

}  // namespace bide::tool
