#include "validation/judge/conditions.hpp"

#include <cmath>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <variant>

#include "bide/body/region.hpp"
#include "bide/core/csv.hpp"

namespace bide::validation {

namespace {

constexpr const char* file = BIDE_SOURCE_DIR "/validation/judge/conditions.csv";

[[noreturn]] void refuse(int line, const std::string& what) {
  throw std::runtime_error(std::string(file) + ":" + std::to_string(line) + ": " + what);
}

double number_in(const CsvRow& row, std::size_t column) {
  const auto number = parse_number(row.fields[column]);
  if (!number) refuse(row.line, "found \"" + row.fields[column] + "\"; allowed a number");
  return *number;
}

PlacedRow placed(const CsvRow& row) {
  using constants::Dress, constants::Medium;
  constexpr std::size_t columns = 9;
  if (row.fields.size() != columns) refuse(row.line, "allowed nine fields");
  PlacedRow out;
  out.topic = row.fields[0];
  out.about = row.fields[1];
  const std::string &medium = row.fields[2], &dress = row.fields[4];
  if (medium != "water" && medium != "air") refuse(row.line, medium + ": allowed water or air");
  if (dress != "bare" && dress != "clothed" && dress != "suit")
    refuse(row.line, dress + ": allowed bare, clothed or suit");
  out.at.medium = medium == "water" ? Medium::water : Medium::air;
  out.at.dress = dress == "bare" ? Dress::bare : dress == "suit" ? Dress::suit : Dress::clothed;
  out.at.degC = number_in(row, 3);
  out.hours = number_in(row, 5);
  out.at.fat_pct = number_in(row, 6);
  out.at.age_years = number_in(row, 7);
  out.quantity = row.fields[8];
  return out;
}

}  // namespace

std::vector<PlacedRow> placed_rows() {
  std::ifstream in(file);
  if (!in) throw std::runtime_error(std::string(file) + ": cannot be read");
  const auto parsed = parse_csv(std::string(std::istreambuf_iterator<char>(in), {}));
  if (const auto* wrong = std::get_if<CsvError>(&parsed)) refuse(wrong->line, wrong->message);
  const auto& rows = std::get<std::vector<CsvRow>>(parsed);
  std::vector<PlacedRow> out;
  for (std::size_t i = 1; i < rows.size(); ++i) out.push_back(placed(rows[i]));
  return out;
}

bool JudgedRow::two_sided() const {
  constexpr double at_an_end = 0.02;  // of the interval
  return row.published - row.low > at_an_end * half() && row.high - row.published > at_an_end * half();
}

double JudgedRow::error(double value) const {
  if (two_sided()) {
    const double side = value > row.published ? row.high - row.published : row.published - row.low;
    return std::abs(value - row.published) / side;
  }
  const double whole = row.high - row.low, outside = std::max(row.low - value, value - row.high);
  return outside > 0 ? 1 + outside / whole : std::abs(value - row.published) / whole;
}

std::vector<JudgedRow> judged(const std::vector<Row>& rows, const std::vector<PlacedRow>& table) {
  std::vector<JudgedRow> out;
  for (const PlacedRow& each : table) {
    bool found = false;
    for (const Row& row : rows) {
      if (row.topic != each.topic || row.quantity != each.quantity) continue;
      found = true;
      if (row.kind == Kind::measured && !row.calibrated)
        out.push_back(
            {row, each.about, each.at, each.hours, body::region_of(each.at), body::span_of(each.hours)});
    }
    if (!found) throw std::runtime_error(std::string(file) + ": no row " + each.topic + ": " + each.quantity);
  }
  return out;
}

}  // namespace bide::validation
