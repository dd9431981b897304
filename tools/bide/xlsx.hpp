// Sheets as a workbook (XLSX), where libxlsxwriter is installed when the program is built.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "bide/report/words/sheet.hpp"

namespace bide::tool {

// Why this program writes no workbooks; empty where it does.
std::optional<std::string> why_no_xlsx();

// Every text is written as text: nothing in it is a formula or a link. Written beside `path` and renamed when
// it is whole. The reason when it fails.
// @param made_unix_s what the file says of when it was made: the same input gives the same bytes
std::optional<std::string> write_xlsx(const std::vector<report::Sheet>& sheets,
                                      const std::filesystem::path& path, double made_unix_s);

}  // namespace bide::tool
