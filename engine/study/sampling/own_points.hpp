// A user's own points: numbers checked, and read from a file.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "bide/study/sampling/design.hpp"
#include "bide/study/sampling/sampler.hpp"

namespace bide::study {

// Checks one number. A place of 0 or 1 is moved inside by 2^-53, as the ends of a normal distribution are
// infinite; the ends of one with bounds are met to the last digits.
// @param number changed where it is 0 or 1 and a place
// @param factor that it is for
// @param scale  of the points
// @return what was found and what is allowed; empty when nothing is wrong
std::optional<std::string> settle_number(double& number, const Factor& factor, scenario::PointScale scale);

// How many wrong numbers are told of before the rest is left out.
inline constexpr std::size_t most_wrong_numbers = 10;
// More numbers than these, of 8 bytes each, are not held in memory.
inline constexpr std::uint64_t most_held_numbers = std::uint64_t{1} << 24;

struct PointsFile {
  Points points;           // a row for each row of the file, a column for each factor
  std::vector<int> lines;  // of each row in the file, from 1
};

// Reads points from a CSV file. Lines that begin with # are comments, the first other line names the columns;
// these may stand in any order, and none may be missing.
// @param path    of the file
// @param factors that the columns are for
// @param scale   of the numbers
// @return the points, or what is wrong by line
std::variant<PointsFile, scenario::Diagnostics> read_points(const std::filesystem::path& path,
                                                            const std::vector<Factor>& factors,
                                                            scenario::PointScale scale);

}  // namespace bide::study
