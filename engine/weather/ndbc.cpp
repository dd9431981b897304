#include "bide/weather/ndbc.hpp"

#include <fmt/format.h>

#include <cmath>

#include "bide/core/csv.hpp"
#include "bide/core/time_utc.hpp"

namespace bide::weather {
namespace {

using Words = std::vector<std::string_view>;

struct Column {
  std::string_view name;
  std::optional<Quantity> quantity;  // none: not used here
  double missing;                    // or any larger number of nines
};

constexpr Column known[] = {
    {"WDIR", std::nullopt, 999},
    {"WD", std::nullopt, 999},
    {"WSPD", Quantity::wind_speed, 99},
    {"GST", std::nullopt, 99},
    {"WVHT", Quantity::wave_height, 99},
    {"DPD", std::nullopt, 99},
    {"APD", Quantity::wave_period, 99},
    {"MWD", std::nullopt, 999},
    {"PRES", Quantity::pressure, 9999},
    {"BAR", Quantity::pressure, 9999},
    {"BARO", Quantity::pressure, 9999},
    {"ATMP", Quantity::air_temperature, 999},
    {"WTMP", Quantity::water_temperature, 999},
    {"DEWP", Quantity::dew_point, 999},
    {"VIS", std::nullopt, 99},
    {"PTDY", std::nullopt, 99},
    {"TIDE", std::nullopt, 99},
};

Words words_of(std::string_view line) {
  constexpr std::string_view blanks = " \t\r\f\v";
  Words words;
  for (std::size_t at = line.find_first_not_of(blanks); at != std::string_view::npos;) {
    const std::size_t end = std::min(line.find_first_of(blanks, at), line.size());
    words.push_back(line.substr(at, end - at));
    at = line.find_first_not_of(blanks, end);
  }
  return words;
}

struct NdbcHeader {
  int line = 0;
  Words names;
  std::size_t time_columns = 0;  // 4, or 5 with minutes
  std::vector<const Column*> columns;
};

bool is_time_header(const Words& names) {
  constexpr std::size_t without_minutes = 4;
  return names.size() > without_minutes && (names[0] == "YY" || names[0] == "YYYY") && names[1] == "MM" &&
         names[2] == "DD" && names[3] == "hh";
}

NdbcHeader read_header(const Words& names, int line, Rows& out) {
  NdbcHeader header{line, names, names[4] == "mm" ? std::size_t{5} : std::size_t{4}, {}};
  for (std::size_t i = header.time_columns; i < names.size(); ++i) {
    const Column* column = nullptr;
    for (const Column& candidate : known)
      if (candidate.name == names[i]) column = &candidate;
    if (column == nullptr)
      out.notes.push_back(fmt::format("line {}: column \"{}\" is unknown and not used", line, names[i]));
    for (const Column* earlier : header.columns)
      if (column != nullptr && earlier != nullptr && column->quantity &&
          earlier->quantity == column->quantity)
        out.problems.push_back(fmt::format("line {}: columns \"{}\" and \"{}\" hold the same quantity", line,
                                           earlier->name, column->name));
    header.columns.push_back(column);
  }
  return header;
}

bool is_missing(std::string_view word, double value, const Column& column) {
  if (value < column.missing) return false;
  for (char c : word.substr(0, word.find('.')))
    if (c != '9') return false;
  return true;
}

std::optional<double> read_time(const Words& words, std::size_t time_columns) {
  int fields[5] = {0, 0, 0, 0, 0};
  for (std::size_t i = 0; i < time_columns; ++i) {
    const std::optional<double> number = parse_number(words[i]);
    constexpr double largest = 9999;
    if (!number || *number != std::floor(*number) || *number < 0 || *number > largest) return std::nullopt;
    fields[i] = static_cast<int>(*number);
  }
  constexpr int century = 100, first_of_1900s = 70;
  if (words[0].size() <= 2) fields[0] += fields[0] >= first_of_1900s ? 19 * century : 20 * century;
  return unix_s_from_civil({fields[0], fields[1], fields[2], fields[3], fields[4], 0});
}

// One data line into `out`.
void read_row(const Words& words, int line, const NdbcHeader& header, Rows& out) {
  if (words.size() != header.names.size()) {
    out.problems.push_back(fmt::format("line {}: {} columns, the header on line {} has {}", line,
                                       words.size(), header.line, header.names.size()));
    return;
  }
  const std::optional<double> time = read_time(words, header.time_columns);
  if (!time) {
    std::string date;
    for (std::size_t i = 0; i < header.time_columns; ++i) {
      if (i > 0) date += ' ';
      date += words[i];
    }
    out.problems.push_back(fmt::format("line {}: \"{}\" is no date and time", line, date));
    return;
  }
  Row row;
  row.unix_s = *time;
  row.line = line;
  for (std::size_t i = header.time_columns; i < words.size(); ++i) {
    const Column* column = header.columns[i - header.time_columns];
    if (column == nullptr || words[i] == "MM") continue;
    const std::optional<double> value = parse_number(words[i]);
    if (!value) {
      out.problems.push_back(fmt::format("line {}: {} \"{}\" is no number", line, column->name, words[i]));
      continue;
    }
    if (!column->quantity || is_missing(words[i], *value, *column)) continue;
    if (const auto problem = implausible(*column->quantity, *value))
      out.problems.push_back(fmt::format("line {}: {}", line, *problem));
    else
      row.value[index(*column->quantity)] = value;
  }
  out.rows.push_back(row);
}

}  // namespace

Rows parse_ndbc(std::string_view text) {
  Rows out;
  std::optional<NdbcHeader> header;
  int line = 0;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    std::string_view content = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    ++line;
    const bool marked = content.find_first_not_of(" \t") != std::string_view::npos &&
                        content[content.find_first_not_of(" \t")] == '#';
    if (marked) content.remove_prefix(content.find('#') + 1);
    const Words words = words_of(content);
    if (words.empty()) continue;
    if (is_time_header(words)) {
      if (!header) {
        header = read_header(words, line, out);
      } else if (header->names != words) {
        out.problems.push_back(
            fmt::format("line {}: the header differs from that on line {}", line, header->line));
        return out;
      }
    } else if (!header) {
      out.problems.push_back(
          fmt::format("line {}: no header; expected names as \"YY MM DD hh mm WDIR WSPD ...\"", line));
      return out;
    } else if (!marked) {  // a marked line is the one of units
      read_row(words, line, *header, out);
    }
  }
  return out;
}

}  // namespace bide::weather
