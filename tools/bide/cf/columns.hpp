// Series of fields to the columns of our own weather table.
//
// States: none. Inputs: series of one or more files. Validity: series of one field are put together, and may
// not contradict each other; they must cover the span. Wind comes from its speed, else from its components at
// the same times; a rate of rain is taken before amounts, dew point before relative humidity, the
// zero-crossing period of waves before the energy period. A value outside the plausible range of its quantity
// is refused; one beyond the range by no more than rounding is set to the range's end. Source: ours.
#pragma once

#include <string>
#include <vector>

#include "bide/weather/observations.hpp"
#include "rain.hpp"
#include "series.hpp"

namespace bide::tool::cf {

struct Column {
  weather::Quantity quantity;
  weather::Samples samples;         // of values that are not missing
  std::vector<std::string> origin;  // one line for each series: variable, file, unit, cell
};

struct Columns {
  std::vector<Column> columns;  // in the order of Quantity
  std::vector<std::string> notes;
};

// Throws Refused, with the files' names in the message.
Columns columns_of(const std::vector<Series>& series, const Span& span, const RainRule& rain);

// A buoy's file.
struct Buoy {
  std::string file;
  weather::Observations observations;
};

// Puts buoys' records in the place of columns: each quantity that they give over the whole span, without a
// gap longer than a scenario bridges by default, is taken from them throughout. Throws Refused when two files
// contradict each other.
// @param wind_height_m at which their wind was measured, m, [1, 20]; the wind is brought to 10 m
void take_buoys(Columns& columns, const std::vector<Buoy>& buoys, double wind_height_m, const Span& span);

// The table as text: comment lines, then the columns, a row for each time of any of them.
// @param comments one line each
std::string to_csv(const Columns& columns, const std::vector<std::string>& comments);

// What a scenario must state because the columns do not give it, one sentence each.
std::vector<std::string> left_to_the_scenario(const Columns& columns);

}  // namespace bide::tool::cf
