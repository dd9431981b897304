// The limits that end ability or life: which quantity, on which side, and what passing one means.
//
// States: none. Inputs: the limits in force, lane by lane. Source: levels from constants/limits, or the
// scenario's own.
#pragma once

#include <array>
#include <cstddef>
#include <optional>

#include "bide/system/compiled.hpp"

namespace bide::timeline {

enum class Limit : unsigned char {
  able_core_low,
  able_core_high,
  able_water_deficit,
  able_co2,
  unconscious_core,
  lethal_core_low,
  lethal_core_high,
  lethal_water_deficit,
  lethal_osmolality,
  lethal_co2,
  lethal_fat,
  lethal_protein,
  lost_airway,  // no level of its own: unconscious, with the sea over the mouth
  none
};
inline constexpr std::size_t level_count = 12;  // those with a level

// "able_core_low"; empty for none.
const char* name_of(Limit limit);

enum class Meaning { unable, unconscious, lethal };
enum Quantity : int { core, deficit, osmolality, co2, fat, protein_used, quantity_count };

struct LevelKind {
  Meaning meaning;
  Quantity quantity;
  bool bad_above;
  double normal;  // value of a well person, for margins
};
// In the order of Limit.
inline constexpr std::array<LevelKind, level_count> level_kinds{{
    {Meaning::unable, core, false, 37},
    {Meaning::unable, core, true, 37},
    {Meaning::unable, deficit, true, 0},
    {Meaning::unable, co2, true, 0},
    {Meaning::unconscious, core, false, 37},
    {Meaning::lethal, core, false, 37},
    {Meaning::lethal, core, true, 37},
    {Meaning::lethal, deficit, true, 0},
    {Meaning::lethal, osmolality, true, 287},
    {Meaning::lethal, co2, true, 0},
    {Meaning::lethal, fat, false, 10},
    {Meaning::lethal, protein_used, true, 0},
}};

template <class T>
using Levels = std::array<T, level_count>;

template <class T>
Levels<T> levels_of(const system::LimitValues<T>& l) {
  return {l.able_core_low_degC,    l.able_core_high_degC,      l.able_water_deficit_pct,
          l.able_co2_fraction,     l.unconscious_core_degC,    l.lethal_core_low_degC,
          l.lethal_core_high_degC, l.lethal_water_deficit_pct, l.lethal_osmolality_mOsm_kg,
          l.lethal_co2_fraction,   l.lethal_fat_kg_left,       l.lethal_protein_fraction_used};
}

// One person's: the limits of the cold are shifted by what is said of the person.
template <class T>
Levels<T> levels_of(const system::LimitValues<T>& l, const body::Build<T>& person) {
  Levels<T> levels = levels_of(l);
  for (const Limit limit : {Limit::able_core_low, Limit::unconscious_core, Limit::lethal_core_low})
    levels[static_cast<std::size_t>(limit)] += person.core_limit_shift_K;
  return levels;
}

// A quantity passing a limit inside a step.
struct Passing {
  int person = -1;
  Limit limit = Limit::none;
  double time_s = 0;
  double slope_per_h = 0;
  bool grazing = false;  // so flat that the time is poorly determined
  bool upward = false;
};

// Empty optionals: not reached within the horizon.
struct Fate {
  std::optional<double> able_until_s, alive_until_s, unconscious_s;
  Limit able_cause = Limit::none, alive_cause = Limit::none;
  double nearest_margin_fraction = 0;  // of the way from the normal value to the next limit, still left
  Limit next_cause = Limit::none;
};

}  // namespace bide::timeline
