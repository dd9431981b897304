// The variables of a file that weather is made of, with the times and places of their values.
//
// States: none. Inputs: a file by the CF conventions, in either layout of the common reanalyses (dimension
// `time` or `valid_time`, with or without `expver`), of climate models, or one point of either. Validity:
// latitude and longitude in one dimension each; every other dimension of length one, but `expver`. Rotated,
// curvilinear and unstructured grids, several members or levels, levels of pressure and other heights than
// near the surface are refused. Source: CF conventions 1.10, chapters 4 and 5.
#pragma once

#include <vector>

#include "fields.hpp"
#include "file.hpp"
#include "packing.hpp"

namespace bide::tool::cf {

enum class Role { time, latitude, longitude, version, single };

struct Variable {
  Field field;
  Head head;
  std::string units;               // as the file says
  std::vector<Role> roles;         // of its dimensions
  std::vector<double> unix_s;      // ascending
  std::vector<double> interval_s;  // that each time stands for, where the file has bounds of time
  std::vector<double> latitude_deg, longitude_deg;  // along their dimensions, or one of each
  std::vector<int> versions;                        // along `expver`; empty without that dimension
  std::vector<bool> preliminary;                    // by time, where the file marks times so; else empty
  Packing packing;
  Linear to_field;  // from the file's unit
};

// One variable for each field that the file holds, at most. Throws Refused.
std::vector<Variable> variables(const File& file);

}  // namespace bide::tool::cf
