// From what a variable stores to values: what stands for a missing value, then scale and offset.
//
// States: none. Inputs: the attributes _FillValue, missing_value, valid_min, valid_max, valid_range,
// scale_factor and add_offset. Validity: the test for a missing value is on what is stored, before it is
// unpacked; without _FillValue what the library writes where nothing was written is missing; NaN always is.
// `_Unsigned` is refused. Source: CF conventions 1.10, sections 2.5.1 and 8.1; NetCDF user's guide, appendix
// A.
#pragma once

#include <limits>
#include <vector>

#include "file.hpp"

namespace bide::tool::cf {

struct Packing {
  double scale = 1, offset = 0;
  std::vector<double> missing;  // stored values that stand for none
  bool single = false;          // stored as float: a missing value is compared as one
  // Outside is missing: of what is stored, or of the value where the range is real and the storage whole.
  double lowest = -std::numeric_limits<double>::infinity();
  double highest = std::numeric_limits<double>::infinity();
  bool range_of_values = false;
};

// Throws Refused.
Packing read_packing(const File& file, const Head& variable);

// @param stored as the file holds it
// @return the value in the file's unit; NaN when it is missing
double unpack(const Packing& packing, double stored);

}  // namespace bide::tool::cf
