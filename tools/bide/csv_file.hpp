// CSV files and their notice: comment lines at the head of the table, or a file beside it.
#pragma once

#include <filesystem>
#include <string>

namespace bide::tool {

// Where the notice of a plain table goes: "out.csv" -> "out.csv.notice.txt"; nothing where it stays in the
// table, there is no table, or it goes to standard output.
std::filesystem::path notice_of(const std::filesystem::path& table, bool plain);

// Writes a table, to standard output where the path is "-".
// @param text  CSV that begins with its comment lines
// @param plain the header is the first line of the table; the comment lines are a file beside it, or go to
//              standard error
// @return an exit code; what is wrong is said on standard error
int write_csv(const std::filesystem::path& path, const std::string& text, bool plain);

}  // namespace bide::tool
