#include "bide/weather/csv.hpp"

#include <fmt/format.h>

#include "bide/core/csv.hpp"
#include "bide/core/time_utc.hpp"
#include "bide/scenario/nearest.hpp"

namespace bide::weather {
namespace {

constexpr std::string_view time_column = "time_utc";

// The text with comment lines made empty, so that the lines keep their numbers.
std::string without_comments(std::string_view text) {
  constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF", line_ends = "\n\r";
  if (text.substr(0, byte_order_mark.size()) == byte_order_mark) text.remove_prefix(byte_order_mark.size());
  std::string out;
  out.reserve(text.size());
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of(line_ends), text.size());
    if (text.front() != '#') out += text.substr(0, end);
    if (end < text.size()) out += text[end];
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return out;
}

struct CsvHeader {
  std::optional<std::size_t> time;                  // position of time_utc
  std::vector<std::optional<Quantity>> quantities;  // by position
};

std::vector<std::string_view> known_names() {
  std::vector<std::string_view> names{time_column};
  for (std::size_t q = 0; q < quantity_count; ++q) names.push_back(facts(static_cast<Quantity>(q)).column);
  return names;
}

CsvHeader read_header(const CsvRow& row, Problems& problems) {
  CsvHeader header;
  std::array<bool, quantity_count> seen{};
  for (std::size_t i = 0; i < row.fields.size(); ++i) {
    const std::string& name = row.fields[i];
    header.quantities.push_back(std::nullopt);
    bool known = false, repeated = false;
    if (name == time_column) {
      known = true;
      repeated = header.time.has_value();
      header.time = i;
    }
    for (std::size_t q = 0; q < quantity_count; ++q) {
      if (name != facts(static_cast<Quantity>(q)).column) continue;
      known = true;
      repeated = seen[q];
      seen[q] = true;
      header.quantities.back() = static_cast<Quantity>(q);
    }
    if (!known)
      problems.push_back(fmt::format("line {}: unknown column \"{}\"{}", row.line, name,
                                     scenario::did_you_mean(name, known_names())));
    if (repeated) problems.push_back(fmt::format("line {}: column \"{}\" twice", row.line, name));
  }
  if (!header.time) problems.push_back(fmt::format("line {}: no column \"{}\"", row.line, time_column));
  if (seen[index(Quantity::dew_point)] && seen[index(Quantity::relative_humidity)])
    problems.push_back(
        fmt::format("line {}: both dew_point_degC and relative_humidity_pct; keep one", row.line));
  return header;
}

void read_row(const CsvRow& fields, const CsvHeader& header, Rows& out) {
  if (fields.fields.size() != header.quantities.size()) {
    out.problems.push_back(fmt::format("line {}: {} fields, the header has {}", fields.line,
                                       fields.fields.size(), header.quantities.size()));
    return;
  }
  const std::string& time_text = fields.fields[*header.time];
  const std::optional<double> time = parse_time_utc(time_text);
  if (!time) {
    out.problems.push_back(fmt::format(
        "line {}: time_utc \"{}\" is no ISO 8601 time such as 2031-02-03T18:00:00Z", fields.line, time_text));
    return;
  }
  Row row;
  row.unix_s = *time;
  row.line = fields.line;
  for (std::size_t i = 0; i < fields.fields.size(); ++i) {
    if (!header.quantities[i] || fields.fields[i].empty()) continue;
    const Quantity q = *header.quantities[i];
    const std::optional<double> value = parse_number(fields.fields[i]);
    if (!value)
      out.problems.push_back(
          fmt::format("line {}: {} \"{}\" is no number", fields.line, facts(q).column, fields.fields[i]));
    else if (const auto problem = implausible(q, *value))
      out.problems.push_back(fmt::format("line {}: {}", fields.line, *problem));
    else
      row.value[index(q)] = value;
  }
  out.rows.push_back(row);
}

}  // namespace

Rows parse_weather_csv(std::string_view text) {
  Rows out;
  const std::variant<std::vector<CsvRow>, CsvError> parsed = parse_csv(without_comments(text));
  if (const CsvError* error = std::get_if<CsvError>(&parsed)) {
    out.problems.push_back(fmt::format("line {}: {}", error->line, error->message));
    return out;
  }
  const auto& rows = std::get<std::vector<CsvRow>>(parsed);
  if (rows.empty()) return out;
  const CsvHeader header = read_header(rows.front(), out.problems);
  if (!out.problems.empty()) return out;
  for (std::size_t i = 1; i < rows.size(); ++i) read_row(rows[i], header, out);
  return out;
}

}  // namespace bide::weather
