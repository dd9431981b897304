// NDBC standard meteorological text: blank-separated columns under a header line.
//
// States: none. Inputs: the file's text, in any of its layouts: header with or without '#', a second '#' line
// of units, years of two or four digits (70 to 99 are 19xx), with or without a minutes column, the older
// names WD and BAR. Missing values are `MM` or filled with nines. Used: WSPD, WVHT, APD, PRES (BAR), ATMP,
// WTMP, DEWP; the other columns are checked to be numbers. Rows may be in any order. Units as the layout has
// them: m/s, m, s, hPa, degC. Validity: none of the problems that `Rows::problems` lists, each with its line.
// Source: National Data Buoy Center, description of the measurements and of the historical data files.
#pragma once

#include <string_view>

#include "bide/weather/observations.hpp"

namespace bide::weather {

// Reads the text of a file in the NDBC standard meteorological format.
Rows parse_ndbc(std::string_view text);

}  // namespace bide::weather
