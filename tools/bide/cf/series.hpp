// Values of a variable at one place over time.
//
// States: none. Inputs: a variable of a file, a place, a span. Validity: the cell is the nearest one, along
// the great circle, within a stated reach; for variables that only the sea has, the nearest one that has a
// value. Source: ours.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "bide/climate/climate.hpp"
#include "variable.hpp"

namespace bide::tool::cf {

using climate::distance_km;
using Place = climate::Point;  // of a grid's cell, its longitude as the file has it, [-180, 360]

struct Span {
  double begin_unix_s = 0, end_unix_s = 0;
};

struct Cell {
  std::size_t row = 0, column = 0;  // along latitude and longitude
  Place centre;
  double distance_km = 0;  // from the place asked for
};

// The nearest cells of a variable, nearest first.
// @param reach_km  none farther than that
std::vector<Cell> cells_near(const Variable& variable, const Place& place, double reach_km);

// Times of a variable for a span: from the last at or before its begin to the first at or after its end, as
// far as it has them; none when it ends before the span or begins after it.
struct Times {
  std::size_t first = 0, count = 0;
};
Times times_for(const std::vector<double>& unix_s, const Span& span);

// Called before each piece of reading, so that whoever watches sees progress.
using Progress = std::function<void()>;

// The nearest cell that has a value at the first of the times at which any cell within reach has one.
// @return nothing when none has
std::optional<Cell> nearest_with_value(const File& file, const Variable& variable, const Place& place,
                                       double reach_km, const Times& times, const Progress& progress);

struct Series {
  Field field = Field::air_temperature;
  std::string file, variable, units;  // where it comes from, and in which unit it was
  std::optional<Cell> cell;
  std::vector<double> unix_s, value;  // in the field's unit, NaN where missing
  std::vector<double> interval_s;     // that each value stands for, where the file says so
  std::size_t preliminary = 0;        // values of another version than the final one
  double rounding = 0;                // step of the packing, in the field's unit
  Span held;                          // first and last time of the variable
};

// Reads a variable at a cell.
Series read_series(const File& file, const Variable& variable, const Cell& cell, const Times& times,
                   const Progress& progress);

}  // namespace bide::tool::cf
