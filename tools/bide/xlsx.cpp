#include "xlsx.hpp"

#ifdef BIDE_XLSX
#include <xlsxwriter.h>

#include <cmath>
#include <ctime>
#include <system_error>

#include "bide/core/file.hpp"
#include "bide/core/notice.hpp"
#endif

namespace bide::tool {

#ifdef BIDE_XLSX

namespace {

struct Looks {
  lxw_format *notes, *heading;
};

void fill(lxw_worksheet* to, const report::Sheet& sheet, const Looks& looks) {
  lxw_row_t row = 0;
  const auto text = [&](lxw_col_t column, const std::string& words, lxw_format* look) {
    worksheet_write_string(to, row, column, words.c_str(), look);
  };
  for (const std::string& note : sheet.notes) {
    text(0, note, looks.notes);
    ++row;
  }
  for (std::size_t i = 0; i < sheet.columns.size(); ++i)
    text(static_cast<lxw_col_t>(i), sheet.columns[i], looks.heading);
  ++row;
  worksheet_freeze_panes(to, row, 1);
  for (const std::vector<report::SheetCell>& cells : sheet.rows) {
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const auto column = static_cast<lxw_col_t>(i);
      if (const auto* words = std::get_if<std::string>(&cells[i]))
        text(column, *words, nullptr);
      else if (const double number = std::get<double>(cells[i]); std::isfinite(number))
        worksheet_write_number(to, row, column, number, nullptr);
    }
    ++row;
  }
  constexpr double letters = 22;
  worksheet_set_column(to, 0, static_cast<lxw_col_t>(sheet.columns.size()), letters, nullptr);
}

}  // namespace

std::optional<std::string> why_no_xlsx() {
  return std::nullopt;
}

std::optional<std::string> write_xlsx(const std::vector<report::Sheet>& sheets,
                                      const std::filesystem::path& path, double made_unix_s) try {
  NewFile fresh(path);
  lxw_workbook* book = workbook_new(fresh.beside().c_str());
  if (book == nullptr) return "out of memory";
  lxw_doc_properties about{};
  std::string notice(standing_notice);
  about.comments = notice.data();
  about.created = static_cast<std::time_t>(made_unix_s);
  workbook_set_properties(book, &about);
  const Looks looks{workbook_add_format(book), workbook_add_format(book)};
  format_set_italic(looks.notes);
  format_set_bold(looks.heading);
  for (const report::Sheet& sheet : sheets)
    fill(workbook_add_worksheet(book, sheet.name.c_str()), sheet, looks);
  if (const lxw_error wrong = workbook_close(book); wrong != LXW_NO_ERROR) return lxw_strerror(wrong);
  fresh.keep();
  return std::nullopt;
} catch (const std::system_error& error) {
  return error.code().message();
}

#else

std::optional<std::string> why_no_xlsx() {
  return "this program was built without libxlsxwriter";
}

std::optional<std::string> write_xlsx(const std::vector<report::Sheet>& /*sheets*/,
                                      const std::filesystem::path& /*path*/, double /*made_unix_s*/) {
  return why_no_xlsx();
}

#endif

}  // namespace bide::tool
