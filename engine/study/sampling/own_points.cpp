#include "bide/study/sampling/own_points.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <fstream>

#include "bide/core/csv.hpp"
#include "bide/core/random.hpp"
#include "bide/scenario/document.hpp"
#include "bide/scenario/nearest.hpp"

namespace bide::study {
namespace {

// Reads the file line by line, so that only numbers are held.
struct PointsReader {
  const std::vector<Factor>& factors;
  scenario::PointScale scale;
  std::string file;
  scenario::Diagnostics wrong{};
  std::vector<std::size_t> column_of{};  // by place in the line
  std::vector<double> numbers{};
  std::vector<int> lines{};

  void report(int line, const std::string& message) {
    if (wrong.size() < most_wrong_numbers)
      wrong.push_back({file, "", fmt::format("line {}: {}", line, message)});
  }

  void header(int line, const std::vector<std::string>& names) {
    std::vector<std::string_view> known;
    for (const Factor& each : factors) known.push_back(each.name);
    std::vector<bool> seen(factors.size());
    for (const std::string& name : names) {
      const auto found =
          static_cast<std::size_t>(std::find(known.begin(), known.end(), name) - known.begin());
      column_of.push_back(found);
      if (found == known.size())
        report(line, fmt::format("found the column {}; allowed what varies{}", scenario::in_quotes(name),
                                 scenario::did_you_mean(name, known)));
      else if (seen[found])
        report(line, fmt::format("found the column {} twice; allowed once", scenario::in_quotes(name)));
      else
        seen[found] = true;
    }
    for (std::size_t i = 0; i < seen.size(); ++i)
      if (!seen[i])
        report(line, fmt::format("the column {} is missing; every input that varies needs one",
                                 scenario::in_quotes(known[i])));
  }

  void row(int line, const std::vector<std::string>& fields) {
    if (fields.size() != column_of.size())
      return report(line, fmt::format("found {} fields; allowed {}, as in the line of names", fields.size(),
                                      column_of.size()));
    const std::size_t start = numbers.size();
    numbers.resize(start + factors.size());
    for (std::size_t i = 0; i < fields.size(); ++i) {
      const Factor& factor = factors[column_of[i]];
      auto number = parse_number(fields[i]);
      if (!number) {
        report(line,
               fmt::format("found {} for {}; allowed a number", scenario::in_quotes(fields[i]), factor.name));
        continue;
      }
      if (const auto why = settle_number(*number, factor, scale)) report(line, *why);
      numbers[start + column_of[i]] = *number;
    }
    lines.push_back(line);
  }

  void read(std::ifstream& in) {
    std::string text;
    for (int line = 1; wrong.empty() && std::getline(in, text); ++line) {
      if (text.starts_with('#')) continue;
      const auto parsed = parse_csv(text);
      if (const auto* error = std::get_if<CsvError>(&parsed)) return report(line, error->message);
      const auto& rows = std::get<std::vector<CsvRow>>(parsed);
      if (rows.empty()) continue;
      if (rows.size() > 1) return report(line, "found line ends of CR alone; allowed LF or CR LF");
      if (column_of.empty())
        header(line, rows.front().fields);
      else
        row(line, rows.front().fields);
      if (numbers.size() > most_held_numbers)
        return report(line,
                      fmt::format("found more than {} numbers; allowed at most that", most_held_numbers));
    }
    if (in.bad()) wrong.push_back({file, "", "cannot be read"});
    if (wrong.empty() && lines.empty()) wrong.push_back({file, "", "found no points; allowed 1 or more"});
  }
};

}  // namespace

std::optional<std::string> settle_number(double& number, const Factor& factor, scenario::PointScale scale) {
  if (scale == scenario::PointScale::natural && factor.has_value) {
    if (std::isfinite(number)) return std::nullopt;
    return fmt::format("found {} for {}; allowed a finite number", number, factor.name);
  }
  if (!(number >= 0 && number <= 1))
    return fmt::format("found {} for {}; allowed 0 to 1, its place in the distribution", number, factor.name);
  number = std::clamp(number, least_uniform, 1 - least_uniform);
  return std::nullopt;
}

std::variant<PointsFile, scenario::Diagnostics> read_points(const std::filesystem::path& path,
                                                            const std::vector<Factor>& factors,
                                                            scenario::PointScale scale) {
  const auto refused = [&](const char* why) { return scenario::Diagnostics{{path.string(), "", why}}; };
  std::error_code error;
  if (!std::filesystem::is_regular_file(path, error))
    return refused("found no such file; allowed a CSV file of points");
  std::ifstream in(path, std::ios::binary);
  if (!in) return refused("cannot be opened for reading");
  PointsReader reader{factors, scale, path.string()};
  reader.read(in);
  if (!reader.wrong.empty()) return std::move(reader.wrong);
  const auto rows = static_cast<Eigen::Index>(reader.lines.size()),
             columns = static_cast<Eigen::Index>(factors.size());
  return PointsFile{Eigen::Map<const Points>(reader.numbers.data(), rows, columns), std::move(reader.lines)};
}

}  // namespace bide::study
