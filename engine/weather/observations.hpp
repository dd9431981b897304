// Content of a weather file: dated values of named quantities, sorted, each time once.
//
// States: none. Inputs: rows as a reader found them. Validity: a value outside its plausible range is a
// problem, not data; two rows of one time must agree on every quantity that both give. Source: none; the
// ranges are ours, wide enough for any sea.
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
// Place of a quantity in the arrays below.
inline constexpr std::size_t index(Quantity q) {
  return static_cast<std::size_t>(q);
}

struct QuantityFacts {
  const char* words;   // in messages
  const char* column;  // in our own CSV
  const char* unit;
  double lowest, highest;  // plausible range, in that unit
};
// Name, unit and plausible range of a quantity.
const QuantityFacts& facts(Quantity);

// "air temperature 512 degC is outside -70 to 60", or nothing when plausible. A wave period of 0 passes here:
// whether it is one is seen from the height beside it, in observations().
std::optional<std::string> implausible(Quantity, double value);

using Problems = std::vector<std::string>;

struct Row {
  double unix_s = 0;
  int line = 0;                                               // in the file, from 1
  std::array<std::optional<double>, quantity_count> value{};  // in each quantity's unit; empty: missing
};

struct Rows {
  std::vector<Row> rows;
  Problems problems;               // each names its line
  std::vector<std::string> notes;  // for example columns that are not used
};

// One quantity's values, times ascending.
struct Samples {
  std::vector<double> unix_s, value;
};

struct Observations {
  std::vector<double> row_unix_s;  // ascending, without repeats
  std::array<Samples, quantity_count> of;
  double usual_step_s = 0;  // median time between rows
  std::vector<std::string> notes;

  const Samples& operator[](Quantity q) const { return of[index(q)]; }
};

// Sorts rows and merges those of one time that agree (with a note). Rows of one time that contradict each
// other, an empty file and the reader's own problems are refused.
// @param rows as a reader found them, in any order
// @return the observations, or the problems: at most 20 are listed, the rest counted
std::variant<Observations, Problems> observations(Rows rows);

}  // namespace bide::weather
