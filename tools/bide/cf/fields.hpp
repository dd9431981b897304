// The variables that weather is made of: how files name them, and how their units become ours.
//
// States: none. Inputs: names, the attributes `standard_name` and `units`. Validity: a variable is known by
// its name in the common layouts of reanalyses and climate models, else by its standard name; a unit that is
// not listed is refused. Source: CF standard names and the names of the reanalysis layouts, as public
// programs that read them have them (second hand).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bide::tool::cf {

enum class Field {
  air_temperature,
  dew_point,
  relative_humidity,
  sea_temperature,
  wind_east,
  wind_north,
  wind_speed,
  pressure,
  cloud,
  rain_rate,
  rain_amount,
  wave_height,
  wave_period,        // mean zero-crossing
  wave_period_energy  // from the moments -1 and 0 of the spectrum
};

struct FieldFacts {
  Field field;
  const char* words;
  const char* unit;                     // after reading
  std::vector<std::string_view> names;  // of variables, the preferred first
  std::vector<std::string_view> standard_names;
  double lowest_height_m, highest_height_m;  // at which it may be given, where a file states a height
};

// Every field, in the order of Field.
const std::vector<FieldFacts>& fields();
const FieldFacts& facts(Field);

// value * factor + offset is in the field's unit.
struct Linear {
  double factor = 1, offset = 0;
};

// Reads a unit. Throws Refused.
// @param units the attribute; nothing where the variable has none, which is allowed for a share alone
Linear read_units(Field, const std::optional<std::string>& units);

}  // namespace bide::tool::cf
