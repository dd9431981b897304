// What a weather file holds: dated values of named quantities, sorted, each time once.
//
// States: none. Inputs: rows as a reader found them. Validity: a value outside its plausible range is a
// problem, not data; two rows of one time must agree where both speak. Source: none; the ranges are ours,
// wide enough for any sea.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace bide::weather {

enum class Quantity {
  air_temperature,
  water_temperature,
  dew_point,
  relative_humidity,
  wind_speed,
  pressure,
  cloud_cover,
  rain,
  wave_height,
  wave_period
};
inline constexpr std::size_t quantity_count = 10;
inline constexpr std::size_t index(Quantity q) {
  return static_cast<std::size_t>(q);
}

struct QuantityFacts {
  const char* words;   // in messages
  const char* column;  // in our own CSV
  const char* unit;
  double lowest, highest;  // plausible
};
const QuantityFacts& facts(Quantity);

// "air temperature 512 degC is outside -70 to 60", or nothing when plausible.
std::optional<std::string> implausible(Quantity, double value);

using Problems = std::vector<std::string>;

struct Row {
  double unix_s = 0;
  int line = 0;
  std::array<std::optional<double>, quantity_count> value{};
};

struct Rows {
  std::vector<Row> rows;
  Problems problems;               // each names its line
  std::vector<std::string> notes;  // columns left unused and the like
};

// One quantity's values, times ascending.
struct Samples {
  std::vector<double> unix_s, value;
};

struct Observations {
  std::vector<double> row_unix_s;
  std::array<Samples, quantity_count> of;
  double usual_step_s = 0;  // median time between rows
  std::vector<std::string> notes;

  const Samples& operator[](Quantity q) const { return of[index(q)]; }
};

// Sorts, merges rows of one time that agree (with a note), and refuses rows of one time that contradict each
// other, an empty file, and whatever the reader refused. At most 20 problems are listed, the rest counted.
std::variant<Observations, Problems> observations(Rows rows);

}  // namespace bide::weather
